import { describe, expect, test } from 'vitest';
import { abs, add, complex, div, mul } from '../../src/electrics/index.ts';
import type { Complex } from '../../src/electrics/index.ts';
import type { Conditions } from '../../src/installation/index.ts';
import type { Interval } from '../../src/scenario/index.ts';
import { bakery, runBakery } from './bakery.ts';

/** Nothing but the fault draws current, so that series and parallel by hand are the whole circuit. */
const quiet: Conditions = {
  'mixer running': 'no',
  'oven running': 'no',
  'lamps on': 'no',
  'line touches the case': 'solid',
};

/** One part in a thousand; what is left out are insulations of megohms. */
const CLOSED_FORM = 1e-3;

/** Impedances of branches by name, and Ohm's two rules for them. */
function byHand({ values }: Interval) {
  const of = (name: string): Complex => {
    const branch = bakery.branch(name);
    return complex(values.impedance.re[branch]!, values.impedance.im[branch]!);
  };
  const series = (...names: readonly (string | Complex)[]): Complex =>
    names.reduce<Complex>((sum, name) => add(sum, typeof name === 'string' ? of(name) : name), complex(0));
  const parallel = (one: Complex, other: Complex): Complex => div(mul(one, other), add(one, other));
  // The upper half of the winding alone: its own place in the matrix of the two.
  const winding = complex(values.coupling[0]!.re[0]!, values.coupling[0]!.im[0]!);
  return { series, parallel, winding };
}

/** From the case to where the protective conductor leaves the outlet. */
const cord = ['cord.protective.load – mixer.case', 'cord.protective', 'outlet.protective – cord.protective.supply'];

/** From the winding to the case. */
const out = [
  'transformer.x1 – drop.a.supply',
  'drop.a',
  'drop.a.load – meter.a.supply',
  'meter.a',
  'meter.a.load – main breaker.a.line',
  'main breaker.a',
  'main breaker.a.load – panel.a',
  'panel.a – mixer breaker.line',
  'mixer breaker',
  'mixer breaker.load – gfci.line.supply',
  'gfci.line',
  'gfci.line.load – mixer run.line.supply',
  'mixer run.line',
  'mixer run.line.load – outlet.line',
  'outlet.line – cord.line.supply',
  'cord.line',
  'cord.line.load – mixer.line',
  'line touches the case',
];

/** From the neutral bar into the soil, beside the neutral. */
function electrodes({ series, parallel }: ReturnType<typeof byHand>): Complex {
  return parallel(
    series('panel.neutral bar – service rod', 'service rod'),
    series('panel.neutral bar – water pipe.bond', 'water pipe'),
  );
}

function faultCurrent(interval: Interval): number {
  return abs(interval.fault!.amperes);
}

describe('the fault current by series and parallel', () => {
  test('home through the protective conductor, the bonding jumper and the neutral: hundreds of amperes', () => {
    const struck = runBakery(quiet).intervals[1]!;
    const hand = byHand(struck);
    const metal = hand.series(
      ...out,
      ...cord,
      'mixer run.protective.load – outlet.protective',
      'mixer run.protective',
      'panel.earth bar – mixer run.protective.supply',
      'bonding jumper',
    );
    const neutral = hand.series(
      'transformer.x2 – drop.neutral.supply',
      'drop.neutral',
      'drop.neutral.load – panel.neutral bar',
    );
    const soil = hand.series(electrodes(hand), 'transformer.x2 – pole rod', 'pole rod');
    const expected = 120 / abs(add(hand.winding, add(metal, hand.parallel(neutral, soil))));
    expect(expected).toBeGreaterThan(400);
    expect(Math.abs(faultCurrent(struck) / expected - 1)).toBeLessThan(CLOSED_FORM);
  });

  test('home through 25 Ω of soil: under 5 A, and the case stands near the whole voltage', () => {
    const struck = runBakery({ ...quiet, 'protective conductor to its own rod': 'yes' }).intervals[1]!;
    const hand = byHand(struck);
    const fromCase = hand.series(...cord, 'protective conductor to its own rod', 'own rod');
    // Out of the soil by the pole's rod, or by the electrodes of the service and back along the neutral.
    const home = hand.parallel(
      hand.series('transformer.x2 – pole rod', 'pole rod'),
      hand.series(
        electrodes(hand),
        'drop.neutral.load – panel.neutral bar',
        'drop.neutral',
        'transformer.x2 – drop.neutral.supply',
      ),
    );
    const expected = 120 / abs(add(hand.winding, add(hand.series(...out), add(fromCase, home))));
    expect(expected).toBeLessThan(120 / 25);
    expect(Math.abs(faultCurrent(struck) / expected - 1)).toBeLessThan(CLOSED_FORM);
    const { re, im } = struck.solution.volts;
    const node = bakery.node('mixer.case');
    const caseVolts = Math.hypot(re[node]!, im[node]!);
    expect(Math.abs(caseVolts / (expected * abs(fromCase)) - 1)).toBeLessThan(CLOSED_FORM);
    expect(caseVolts).toBeGreaterThan(0.85 * 120);
  });
});
