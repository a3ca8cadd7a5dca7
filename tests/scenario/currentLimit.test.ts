import { describe, expect, test } from 'vitest';
import { createSolver } from '../../src/electrics/index.ts';
import { initialConditions } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { limited } from '../../src/scenario/currentLimit.ts';
import { steadyState } from '../../src/scenario/steadyState.ts';
import { built } from '../installation/places.ts';

/** A supply on its own: 3 kVA, 120 V, at most 1.5 × 25 A, on a 20 A breaker and 20 m of 12 AWG. */
const alone = (kind: string) =>
  built(`
place: A supply on its own
region: north-america
parts:
  supply: ${kind}
  breaker: { kind: breaker, rating_A: 20 }
  run: { kind: cable, length_m: 20, cores: { line: 12 AWG Cu, neutral: 12 AWG Cu, protective: 12 AWG Cu } }
  heater: { kind: appliance, power_W: 600, case: metal }
  slab: { kind: floor, resistance_ohm: 100 }
  somebody: { kind: person, right hand: heater.case, feet: slab }
joins:
  - [supply.a, breaker.line]
  - [breaker.load, run.line.supply]
  - [supply.neutral, run.neutral.supply]
  - [supply.frame, run.protective.supply]
  - [supply.frame, earth]
  - [run.line.load, heater.line]
  - [run.neutral.load, heater.neutral]
  - [run.protective.load, heater.case]
conditions:
  fault: { kind: insulation-fault, between: [heater.line, heater.case], resistance_ohm: { solid: 0.01 } }
  protective conductor open: { kind: open, at: run.protective }
`);

const INVERTER = '{ kind: inverter, rating_VA: 3000, neutral: bonded }';
const GENERATOR = '{ kind: generator, rating_VA: 30000, impedance_percent: 10, neutral: bonded }';

const state = (build: ReturnType<typeof built>, chosen: Record<string, string>, touching: readonly string[] = []) =>
  steadyState(
    build,
    createSolver(build.network),
    { ...initialConditions(build.installation), ...chosen },
    new Set(),
    new Set(touching),
  );

const amperes = (build: ReturnType<typeof built>, chosen: Record<string, string>, branch: string): number => {
  const { solution } = state(build, chosen);
  const at = build.branch(branch);
  return Math.hypot(solution.amperes.re[at] ?? NaN, solution.amperes.im[at] ?? NaN);
};

describe('a source that folds back', () => {
  test('below its limit is its EMF behind its impedance', () => {
    // 600 W at 120 V is 24 Ω; with the filter, the breaker and 20 m of 12 AWG twice the loop is 24.37 Ω.
    expect(amperes(alone(INVERTER), {}, 'breaker')).toBeCloseTo(120 / 24.37, 1);
  });

  test('holds a bolted fault at its limit, 1.5 × 25 A', () => {
    expect(amperes(alone(INVERTER), { fault: 'solid' }, 'supply.a')).toBeCloseTo(37.5, 9);
  });

  test('leaves the case at the limit times the ohms of the protective conductor', () => {
    const build = alone(INVERTER);
    const { solution } = state(build, { fault: 'solid' });
    const at = build.node('heater.case');
    // 20 m of 12 AWG solid at 75 °C by NEC chapter 9 table 8: 1.93 Ω/kft; reactance is a fortieth of it.
    const protective_ohm = (1.93 / 304.8) * 20;
    const case_V = Math.hypot(solution.volts.re[at] ?? NaN, solution.volts.im[at] ?? NaN);
    expect(case_V / (37.5 * protective_ohm)).toBeGreaterThan(0.95);
    expect(case_V / (37.5 * protective_ohm)).toBeLessThan(1.05);
  });

  test('never opens a 20 A breaker by its magnet; the same fault on a generating set does', () => {
    const opening = (kind: string) => {
      const build = alone(kind);
      const conditions = { ...initialConditions(build.installation), fault: 'solid' };
      return run(build, conditions).intervals.flatMap(({ because }) =>
        because.kind === 'device-operated' ? [because.operation] : [],
      )[0];
    };
    expect(opening(INVERTER)?.region).not.toBe('magnetic');
    expect(opening(GENERATOR)?.region).toBe('magnetic');
  });

  test('is solved together with a person: Ohm’s law holds in the body with the EMF as it is held', () => {
    const build = alone(INVERTER);
    const { solution, limb_ohm, touches } = state(build, { fault: 'solid' }, ['somebody']);
    const hand = build.branch('somebody.right hand');
    const feet = build.branch('somebody.feet');
    const body_ohm = (limb_ohm.get(hand) ?? NaN) + (limb_ohm.get(feet) ?? NaN);
    const body_A = Math.hypot(solution.amperes.re[hand] ?? NaN, solution.amperes.im[hand] ?? NaN);
    expect((body_A * body_ohm) / (touches[0]?.touch_V ?? NaN)).toBeCloseTo(1, 6);
    const supply = build.branch('supply.a');
    expect(Math.hypot(solution.amperes.re[supply] ?? NaN, solution.amperes.im[supply] ?? NaN)).toBeCloseTo(37.5, 6);
  });

  test('with three phases folds back as a whole: the largest line stays at the limit', () => {
    const build = built(`
place: Three phases
region: iec
parts:
  supply: { kind: inverter, rating_VA: 30000, connection: three-phase, neutral: bonded, limit: 2 }
  short: { kind: impedance, between: [supply.a, supply.b], resistance_ohm: 0.01, as: fault }
  load: { kind: impedance, between: [supply.c, supply.neutral], resistance_ohm: 23 }
joins: [[supply.frame, earth]]
`);
    const rated = 30000 / 3 / 230;
    expect(amperes(build, {}, 'supply.a')).toBeCloseTo(2 * rated, 6);
    expect(amperes(build, {}, 'supply.b')).toBeCloseTo(2 * rated, 6);
    expect(amperes(build, {}, 'supply.c')).toBeLessThan(1);
  });

  test('that another source drives beyond its limit is refused by name', () => {
    const build = built(`
place: Two in parallel, out of phase
region: iec
parts:
  grid: { kind: source, emf_V: 230, resistance_ohm: 0.1 }
  ups: { kind: source, emf_V: 230, angle_deg: 180, resistance_ohm: 0.1, limit_A: 10 }
joins: [[grid.plus, ups.plus], [grid.minus, ups.minus], [grid.minus, earth]]
`);
    const solver = createSolver(build.network);
    expect(() => limited(build, solver, build.values({}, new Set()))).toThrow(/ups cannot keep to its limit of 10 A/);
  });

  test('two alike side by side share a fault and each keeps to its limit', () => {
    const build = built(`
place: Two alike
region: iec
parts:
  one: { kind: source, emf_V: 230, resistance_ohm: 0.1, limit_A: 20 }
  other: { kind: source, emf_V: 230, resistance_ohm: 0.1, limit_A: 20 }
  fault: { kind: impedance, between: [one.plus, one.minus], resistance_ohm: 0.5, as: fault }
joins: [[one.plus, other.plus], [one.minus, other.minus], [one.minus, earth]]
`);
    expect(amperes(build, {}, 'one')).toBeCloseTo(20, 6);
    expect(amperes(build, {}, 'other')).toBeCloseTo(20, 6);
    expect(amperes(build, {}, 'fault')).toBeCloseTo(40, 6);
  });
});
