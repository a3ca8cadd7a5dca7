import { describe, expect, test } from 'vitest';
import { createSolver, phasors, spiceNetlist } from '../../src/electrics/index.ts';
import { built } from '../installation/places.ts';
import { runDecks } from './ngspice.ts';

/** Coils, capacitors, coupled windings, an ideal core and two electronic loads; 50 Hz. */
const FILE = `place: An office with a filter
region: iec
parts:
  supply: { kind: source, emf_V: 230, resistance_ohm: 0.05, reactance_ohm: 0.12 }
  run:
    kind: cable
    length_m: 80
    capacitance_nF_m: 0.3
    cores: { line: 6 mm² Cu, neutral: 6 mm² Cu, protective: 6 mm² Cu }
  desks:
    kind: harmonic-source
    between: [run.line.load, run.neutral.load]
    currents: [{ order: 1, current_A: 8 }, { order: 3, current_A: 6, angle_deg: 20 }, { order: 5, current_A: 3, angle_deg: -70 }]
  lamps: { kind: harmonic-source, between: [run.line.load, run.neutral.load], currents: [{ order: 3, current_A: 2 }], shift_deg: 15 }
  correction: { kind: capacitance, between: [run.line.load, run.neutral.load], capacitance_F: 22.0e-6 }
  heater: { kind: appliance, power_W: 2000, filter_nF: 47 }
  pair: { kind: coupled-windings, windings: [one, other], resistance_ohm: [[2, 0], [0, 1]], reactance_ohm: [[90, 40], [40, 30]] }
  lamp: { kind: impedance, between: [pair.other.dot, pair.other.end], resistance_ohm: 40 }
  bell: { kind: ideal-transformer, windings: { one: { turns: 20, resistance_ohm: 30, reactance_ohm: 12 }, other: 1 } }
  gong: { kind: impedance, between: [bell.other.dot, bell.other.end], resistance_ohm: 4, reactance_ohm: 1 }
joins:
  - [supply.plus, run.line.supply]
  - [supply.minus, run.neutral.supply]
  - [supply.minus, run.protective.supply]
  - [supply.minus, earth]
  - [run.line.load, heater.line]
  - [run.neutral.load, heater.neutral]
  - [run.protective.load, heater.case]
  - [run.line.load, pair.one.dot]
  - [run.neutral.load, pair.one.end]
  - [run.line.load, bell.one.dot]
  - [run.neutral.load, bell.one.end]
`;

describe('ngspice, given the coils in henry and the capacitors in farad', () => {
  const build = built(FILE);
  const fundamental = build.values({}, new Set());

  // Reactances become henry and farad at 50 Hz and are then run at the harmonic, so that our own scaling is not in it.
  test.each(build.harmonics)('finds the same currents at order %d', (order) => {
    const values = build.values({}, new Set(), undefined, order);
    const ours = createSolver(build.network).solve(values);
    const { injection } = values;
    if (injection === undefined) throw new Error('nothing is injected');
    const atRest = { ...fundamental, emf: phasors(build.branches.length), injection };
    const [answer] = runDecks([spiceNetlist(build.network, atRest, 50)], 50 * order);
    const currents = build.branches.map(({ name }, branch) => {
      const [re, im] = answer?.(`i(vm${branch})`) ?? [NaN, NaN];
      const apart = Math.hypot(re - (ours.amperes.re[branch] ?? NaN), im - (ours.amperes.im[branch] ?? NaN));
      return { name, apart, size: Math.hypot(re, im) };
    });
    const largest = Math.max(...currents.map(({ size }) => size));
    expect(largest).toBeGreaterThan(1);
    for (const { name, apart } of currents) expect(apart / largest, name).toBeLessThan(1e-6);
    for (const { name, apart, size } of currents.filter(({ size }) => size > 1e-3))
      expect(apart / size, name).toBeLessThan(1e-5);
  });

  test('orders are those that are written', () => {
    expect(build.harmonics).toEqual([3, 5]);
  });
});
