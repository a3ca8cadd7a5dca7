import { describe, expect, test } from 'vitest';
import { createSolver } from '../../src/electrics/index.ts';
import { compile, initialConditions, readInstallation } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { built } from './places.ts';

/** Solves an installation as it opens and wants a number everywhere; the largest current of its sources. */
function answered(text: string): number {
  const build = built(`place: Silly\nregion: iec\n${text}`);
  const { volts, amperes } = createSolver(build.network).solve(build.values({}, new Set()));
  for (const list of [volts.re, volts.im, amperes.re, amperes.im])
    for (const value of list) expect(Number.isFinite(value)).toBe(true);
  expect(run(build, initialConditions(build.installation)).intervals.length).toBeGreaterThan(0);
  return Math.max(0, ...build.sources.map((at) => Math.hypot(amperes.re[at] ?? NaN, amperes.im[at] ?? NaN)));
}

const refused = (text: string): readonly string[] => {
  const reading = readInstallation(`place: Silly\nregion: iec\n${text}`, 'silly.yaml');
  return reading.ok ? [] : reading.diagnostics.map(({ code, message }) => `${code}: ${message}`);
};

const nothing = (winding: string): string => `{ ${winding}, resistance_ohm: 0, reactance_ohm: 0 }`;

describe('what is well written and makes no sense gets an answer', () => {
  test('a source and nothing else', () => {
    expect(
      answered(
        'parts: { supply: { kind: three-phase-transformer, rating_VA: 1000, secondary_V: 400, impedance_percent: 4, x_over_r: 1 } }',
      ),
    ).toBeLessThan(1e-6);
  });

  test.each(['delta-wye', 'wye-wye', 'delta', 'high-leg-delta'])(
    'a %s without any impedance of its own, shorted',
    (connection) => {
      const kind = nothing(
        `kind: three-phase-transformer, connection: ${connection}, rating_VA: 1000, secondary_V: 400`,
      );
      expect(
        answered(`
parts: { supply: ${kind}, star: { kind: fitting }, load: { kind: impedance, between: [supply.a, supply.b], resistance_ohm: 10 } }
joins:
  - { between: [supply.a, star], resistance_ohm: 0 }
  - { between: [supply.b, star], resistance_ohm: 0 }
  - { between: [supply.c, star], resistance_ohm: 0 }`),
      ).toBeGreaterThan(1e5);
    },
  );

  test('two transformers in parallel with two phases exchanged', () => {
    const kind =
      '{ kind: three-phase-transformer, rating_VA: 1000, secondary_V: 400, impedance_percent: 4, x_over_r: 1 }';
    // √3·U0 round two windings of 6.4 Ω each.
    expect(
      answered(`
parts: { one: ${kind}, other: ${kind} }
joins: [[one.a, other.b], [one.b, other.a], [one.c, other.c], [one.neutral, other.neutral]]`),
    ).toBeCloseTo(400 / 12.8, 1);
  });

  test('two sources in parallel, half a turn apart', () => {
    expect(
      answered(`
parts: { one: { kind: source, emf_V: 230, resistance_ohm: 1 }, other: { kind: source, emf_V: 230, angle_deg: 180, resistance_ohm: 1 } }
joins: [[one.plus, other.plus], [one.minus, other.minus]]`),
    ).toBeCloseTo(230, 0);
  });

  test('a ring of superconductors, given as 0 Ω', () => {
    expect(
      answered(`
parts: { supply: { kind: source, emf_V: 230 }, one: { kind: fitting }, two: { kind: fitting } }
joins:
  - { between: [supply.plus, one], resistance_ohm: 0 }
  - { between: [one, two], resistance_ohm: 0 }
  - { between: [two, supply.plus], resistance_ohm: 0 }
  - { between: [two, supply.minus], resistance_ohm: 0 }`),
    ).toBeGreaterThan(1e6);
  });

  test('all switches open', () => {
    expect(
      answered(`
parts:
  supply: { kind: source, emf_V: 230 }
  switch: { kind: transfer-switch, lines: 1, neutral: switched }
  load: { kind: appliance, power_W: 100 }
joins: [[supply.plus, switch.a.alternative], [supply.minus, switch.neutral.alternative], [switch.a.load, load.line], [switch.neutral.load, load.neutral]]`),
    ).toBeLessThan(1e-3);
  });

  test.each(['single-phase', 'centre-tapped', 'delta-wye'])(
    'a %s transformer fed from its own secondary',
    (connection) => {
      const third = connection === 'delta-wye' ? ', [own.secondary.c, own.primary.c]' : '';
      expect(
        answered(`
parts:
  supply: { kind: source, emf_V: 230 }
  own: { kind: isolating-transformer, connection: ${connection}, rating_VA: 1000, primary_V: 230, secondary_V: 230, impedance_percent: 4, x_over_r: 1 }
joins: [[supply.plus, own.primary.a], [supply.minus, own.primary.b], [own.secondary.a, own.primary.a], [own.secondary.b, own.primary.b]${third}]`),
      ).toBeLessThan(1e4);
    },
  );

  test('a transformer with both ends of its primary on one bar, and one with its secondary shorted', () => {
    const kind =
      '{ kind: isolating-transformer, rating_VA: 1000, primary_V: 100000, secondary_V: 1, impedance_percent: 4, x_over_r: 1 }';
    expect(
      answered(`
parts: { supply: { kind: source, emf_V: 230 }, own: ${kind}, other: ${kind} }
joins: [[supply.plus, own.primary.a], [supply.plus, own.primary.b], [supply.plus, other.primary.a], [supply.minus, other.primary.b], [other.secondary.a, other.secondary.b]]`),
    ).toBeLessThan(10);
  });

  test('a generator, an inverter and the utility on one bar, all out of step', () => {
    expect(
      answered(`
parts:
  utility: { kind: source, emf_V: 230, resistance_ohm: 0.1 }
  set: { kind: generator, rating_VA: 3000, neutral: bonded, angle_deg: 120 }
joins: [[utility.plus, set.a], [utility.minus, set.neutral]]`),
    ).toBeGreaterThan(10);
  });
});

describe('what cannot be is refused by name', () => {
  test('no source', () => {
    expect(
      refused(
        'parts: { own: { kind: isolating-transformer, rating_VA: 1000, primary_V: 230, secondary_V: 230, impedance_percent: 4, x_over_r: 1 } }',
      ),
    ).toContain('no-source: nothing here drives a current');
  });

  test('a transformer on direct current', () => {
    expect(
      refused(
        'frequency_Hz: 0\nparts: { supply: { kind: three-phase-transformer, rating_VA: 1000, secondary_V: 400, impedance_percent: 4, x_over_r: 1 } }',
      ),
    ).toEqual([expect.stringMatching(/^wrong-target: .*alternating current only/)]);
  });

  test('a winding told in two ways, and in none', () => {
    const parts = (more: string) =>
      `parts: { supply: { kind: three-phase-transformer, rating_VA: 1000, secondary_V: 400${more} } }`;
    expect(refused(parts(', impedance_percent: 4, x_over_r: 1, resistance_ohm: 1')).join()).toMatch(
      /needs its impedance in one way/,
    );
    expect(refused(parts('')).join()).toMatch(/needs its impedance in one way/);
  });

  test('a condition that moves a switch that is none', () => {
    expect(
      refused(
        'parts: { supply: { kind: source, emf_V: 230 }, load: { kind: impedance, resistance_ohm: 1 } }\njoins: [[supply.plus, load.a], [supply.minus, load.b]]\nconditions: { moved: { kind: transfer, switch: load } }',
      ),
    ).toEqual(['wrong-target: load is of kind impedance, not transfer-switch']);
  });
});

describe('direct current', () => {
  test('meets resistance only: an inductance is wire, a capacitance a gap', () => {
    const direct = (reactance: string) =>
      answered(`
frequency_Hz: 0
parts: { supply: { kind: source, emf_V: 48 }, load: { kind: impedance, resistance_ohm: 12, reactance_ohm: ${reactance} } }
joins: [[supply.plus, load.a], [supply.minus, load.b]]`);
    expect(direct('100')).toBeCloseTo(4, 2);
    expect(direct('-1')).toBeLessThan(1e-6);
  });
});

test('every supply is compiled in the same way twice', () => {
  const build = built(
    'place: Twice\nregion: iec\nparts: { supply: { kind: generator, rating_VA: 3000, neutral: floating } }',
  );
  expect(compile(build.installation).supplies).toEqual(build.supplies);
});
