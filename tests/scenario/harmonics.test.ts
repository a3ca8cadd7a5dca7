import { describe, expect, test } from 'vitest';
import { initialConditions } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { built } from '../installation/places.ts';

/** Three electronic loads on a star: fundamental and odd harmonics, the same on each phase. */
const office = (currents: string, breakers = ''): string => `place: An office
region: iec
parts:
  phase one: { kind: source, emf_V: 230 }
  phase two: { kind: source, emf_V: 230, angle_deg: -120 }
  phase three: { kind: source, emf_V: 230, angle_deg: 120 }
  riser: { kind: cable, length_m: 20, cores: { one: 16 mm² Cu, two: 16 mm² Cu, three: 16 mm² Cu, neutral: 16 mm² Cu } }
  desks one: { kind: harmonic-source, between: [riser.one.load, riser.neutral.load], currents: ${currents} }
  desks two: { kind: harmonic-source, between: [riser.two.load, riser.neutral.load], currents: ${currents}, shift_deg: -120 }
  desks three: { kind: harmonic-source, between: [riser.three.load, riser.neutral.load], currents: ${currents}, shift_deg: 120 }
${breakers}
joins:
  - [phase one.minus, phase two.minus]
  - [phase two.minus, phase three.minus]
  - [phase one.minus, earth]
  - [phase one.plus, riser.one.supply]
  - [phase two.plus, riser.two.supply]
  - [phase three.plus, riser.three.supply]
  - [phase one.minus, riser.neutral.supply]
`;

const total = (text: string, branch: string): number => {
  const build = built(text);
  const [interval] = run(build, initialConditions(build.installation)).intervals;
  const at = build.branch(branch);
  const all = [interval?.solution, ...(interval?.harmonics ?? []).map(({ solution }) => solution)];
  return Math.hypot(...all.flatMap((each) => [each?.amperes.re[at] ?? NaN, each?.amperes.im[at] ?? NaN]));
};

describe('harmonics in the neutral', () => {
  const currents = '[{ order: 1, current_A: 10 }, { order: 3, current_A: 6 }, { order: 5, current_A: 3 }]';

  test('the third harmonics of three equal phases add in the neutral, everything else cancels', () => {
    expect(total(office(currents), 'riser.neutral')).toBeCloseTo(18, 3);
    expect(total(office(currents), 'riser.one')).toBeCloseTo(Math.hypot(10, 6, 3), 3);
  });

  test('without triplens the neutral of equal phases carries nothing', () => {
    const odd = '[{ order: 1, current_A: 10 }, { order: 5, current_A: 6 }, { order: 7, current_A: 3 }]';
    expect(total(office(odd), 'riser.neutral')).toBeLessThan(1e-3);
  });

  test('orders that flow are known to the build', () => {
    expect(built(office(currents)).harmonics).toEqual([3, 5]);
  });

  test('a breaker feels the harmonics too', () => {
    const text = `place: A shop
region: iec
parts:
  supply: { kind: source, emf_V: 230 }
  breaker: { kind: breaker, rating_A: 16 }
  lamps: { kind: harmonic-source, between: [breaker.load, supply.minus], currents: [{ order: 1, current_A: 20 }, { order: 3, current_A: 15 }] }
joins:
  - [supply.plus, breaker.line]
  - [supply.minus, earth]
`;
    const build = built(text);
    const { intervals } = run(build, {});
    expect(intervals[0]?.devices[0]?.amperes).toBeCloseTo(Math.hypot(20, 15), 4);
    // And once it is open, what it fed takes nothing.
    const last = intervals.at(-1);
    expect(last?.devices[0]?.state).toBe('open');
    const at = build.branch('lamps');
    expect(Math.abs(last?.solution.amperes.re[at] ?? NaN)).toBeLessThan(1e-5);
    expect(Math.max(...(last?.solution.volts.re ?? [NaN]).map(Math.abs))).toBeLessThan(300);
  });

  test('who is switched off takes no harmonics either', () => {
    const text = (running: string) => `place: A shop
region: iec
parts:
  supply: { kind: source, emf_V: 230 }
  lamps: { kind: harmonic-source, between: [supply.plus, supply.minus], currents: [{ order: 3, current_A: 13 }] }
conditions:
  lamps on: { kind: running, appliance: lamps, initially: ${running} }
`;
    expect(total(text('"yes"'), 'supply')).toBeCloseTo(13, 6);
    expect(total(text('"no"'), 'supply')).toBeLessThan(1e-5);
  });
});
