import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { installationJsonSchema } from '../../src/installation/index.ts';
import { partKind, partKindNames, partSchema, type Part } from '../../src/installation/parts/index.ts';

const surroundings = { region: 'north-america', frequency_Hz: 60 } as const;

/** One part of every kind, with as little written as it needs. */
const least: readonly object[] = [
  { kind: 'centre-tapped-transformer', rating_VA: 25000, impedance_percent: 2, x_over_r: 1 },
  { kind: 'three-phase-transformer', rating_VA: 300000, secondary_V: 208, impedance_percent: 2, x_over_r: 3 },
  { kind: 'generator', rating_VA: 3000, neutral: 'floating', connection: 'three-phase' },
  { kind: 'inverter', rating_VA: 3000, neutral: 'bonded', connection: 'split-phase' },
  { kind: 'source', emf_V: 120 },
  { kind: 'impedance', resistance_ohm: 1 },
  { kind: 'capacitance', capacitance_F: 4.7e-9 },
  { kind: 'switch' },
  {
    kind: 'coupled-windings',
    windings: ['primary', 'secondary'],
    reactance_ohm: [
      [10, 4],
      [4, 8],
    ],
  },
  { kind: 'ideal-transformer', windings: { primary: 10, secondary: 1 } },
  { kind: 'harmonic-source', currents: [{ order: 3, current_A: 5 }] },
  { kind: 'fixed-body', between: ['panel.a', 'panel.b'] },
  { kind: 'cable', length_m: 1, cores: { line: '12 AWG Cu', neutral: '12 AWG Cu', protective: '12 AWG Cu' } },
  { kind: 'rod', resistance_ohm: 25 },
  { kind: 'rods', count: 2, spacing_m: 3, length_m: 3, diameter_m: 0.016, soil_ohm_m: 100 },
  { kind: 'strip', length_m: 10, width_m: 0.03, depth_m: 0.6, soil: 'clay and loam' },
  { kind: 'ring', diameter_m: 12, wire_diameter_m: 0.008, depth_m: 0.6, soil_ohm_m: 100 },
  { kind: 'plate', side_m: 0.6, depth_m: 1.5, soil_ohm_m: 100 },
  { kind: 'grid', resistance_ohm: 0.5 },
  {
    kind: 'soil',
    soil_ohm_m: 100,
    electrodes: { rod: { kind: 'rod', length_m: 2.4, diameter_m: 0.016, at: [0, 0] } },
    places: { 'left foot': { at: [1, 0], feet: 1 } },
  },
  { kind: 'pipe', earth_resistance_ohm: 3, resistance_ohm: 0.001 },
  { kind: 'structural-steel', earth_resistance_ohm: 2, resistance_ohm: 0.001 },
  { kind: 'breaker', rating_A: 20, poles: 2 },
  { kind: 'adjustable-breaker', rating_A: 400 },
  { kind: 'fuse', rating_A: 16 },
  { kind: 'device-by-points', holds_A: 10, opens: [{ at_A: 15, within_s: 3600 }] },
  { kind: 'residual-device' },
  { kind: 'rcbo', rating_A: 16 },
  { kind: 'afci', rating_A: 20 },
  { kind: 'insulation-monitor' },
  { kind: 'service-panel' },
  { kind: 'panel', lines: 3 },
  { kind: 'transfer-switch', neutral: 'switched' },
  {
    kind: 'isolating-transformer',
    connection: 'delta-wye',
    rating_VA: 45000,
    primary_V: 480,
    secondary_V: 208,
    impedance_percent: 3,
    x_over_r: 2,
  },
  { kind: 'meter' },
  { kind: 'outlet' },
  { kind: 'appliance', power_W: 100 },
  { kind: 'fitting' },
  { kind: 'joint', between: ['panel.a', 'panel.b'] },
  { kind: 'floor', of: 'wet concrete' },
  { kind: 'person', 'right hand': 'panel.a', feet: 'slab' },
];

test('a kind of part is a file in its folder and a line in its list', () => {
  const files = readdirSync(new URL('../../src/installation/parts', import.meta.url))
    .filter((file) => file !== 'index.ts')
    .map((file) => file.replace('.ts', '').replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`));
  expect(files.sort()).toEqual([...partKindNames].sort());
  expect(least.map((part) => partSchema.parse(part).kind)).toEqual(partKindNames);
});

test('the JSON Schema tells the terminals of every kind, and that a join has a resistance of its own', () => {
  const schema = JSON.stringify(installationJsonSchema());
  expect(schema).toContain('Every join is a joint of 0.0005 ohm');
  for (const part of least.map((written) => partSchema.parse(written))) {
    const { ends, terminals } = partKind(part.kind);
    expect(schema, part.kind).toContain(`"description":"terminals: ${ends}"`);
    for (const terminal of terminals(part)) expect(ends, part.kind).toMatch(new RegExp(`\\b${terminal}\\b`));
  }
});

describe('every kind of part', () => {
  test.each(least.map((written): [string, Part] => [partSchema.parse(written).kind, partSchema.parse(written)]))(
    '%s: branches run between its own terminals, those it is fixed to, and earth',
    (name, part) => {
      const kind = partKind(part.kind);
      const terminals = kind.terminals(part).map((terminal) => `${name}.${terminal}`);
      expect(new Set(terminals).size).toBe(terminals.length);
      const reach = new Set([...terminals, 'earth', ...(kind.touches?.(part) ?? []).map(({ terminal }) => terminal)]);
      const plan = kind.plan(name, part, surroundings);
      for (const branch of plan.branches) {
        expect(reach).toContain(branch.from);
        expect(reach).toContain(branch.to);
        expect(branch.from).not.toBe(branch.to);
        expect(branch.name === name || branch.name.startsWith(`${name}.`)).toBe(true);
        expect(branch.resistance_ohm).toBeGreaterThanOrEqual(0);
        expect(Number.isFinite(branch.resistance_ohm + branch.reactance_ohm)).toBe(true);
      }
      const named = plan.branches.map((branch) => branch.name);
      expect(new Set(named).size).toBe(named.length);
      for (const end of kind.mustJoin?.(part) ?? []) expect(terminals).toContain(`${name}.${end}`);
      for (const pole of [...(plan.device?.poles ?? []), ...(plan.device?.residual ?? [])])
        expect(named).toContain(pole);
      for (const branch of plan.winding?.branches ?? []) expect(named).toContain(branch);
      if (kind.source === true) expect(plan.branches.some(({ emf_V = 0 }) => emf_V > 0)).toBe(true);
      else expect(plan.branches.every(({ emf_V = 0 }) => emf_V === 0)).toBe(true);
    },
  );

  test('there is none called toString', () => {
    expect(() => partKind('toString')).toThrow(/no kind of part called "toString"/);
  });
});

describe('geometry', () => {
  const ohms = (written: object, branch = 'it'): number => {
    const part = partSchema.parse(written);
    const found = partKind(part.kind)
      .plan('it', part, surroundings)
      .branches.find(({ name }) => name === branch);
    if (found === undefined) throw new Error(`${part.kind} has no branch ${branch}`);
    return found.resistance_ohm;
  };

  // IEEE Std 142, after Dwight: 5/8 in × 8 ft in 100 Ω·m is 39.9 Ω (computed).
  test('a rod of 5/8 in × 8 ft in 100 Ω·m has 39.9 Ω', () => {
    expect(ohms({ kind: 'rod', length_m: 2.4384, diameter_m: 0.015875, soil_ohm_m: 100 })).toBeCloseTo(39.9, 1);
  });

  test('soil may be named instead of measured: clay and loam, 40.6 Ω·m (NBS Technologic Paper 108)', () => {
    const named = ohms({ kind: 'rod', length_m: 3, diameter_m: 0.016, soil: 'clay and loam' });
    expect(named).toBeCloseTo(ohms({ kind: 'rod', length_m: 3, diameter_m: 0.016, soil_ohm_m: 40.6 }), 12);
  });

  // IEEE Std 80: 3ρ a foot, two feet in parallel.
  test('both feet on 100 Ω·m have 150 Ω', () => {
    expect(ohms({ kind: 'floor', resistivity_ohm_m: 100 })).toBe(150);
  });

  // ρ·l/A at 20 °C: copper 1.7241e-8, steel 1.38e-7 Ω·m; by hand 0.548, 0.289, 0.225 mΩ/m.
  test.each([
    [15, 0.7, 0.548],
    [22, 0.9, 0.289],
    [28, 0.9, 0.225],
  ])('a copper pipe of %d × %d mm has %d mΩ/m', (outside_mm, wall_mm, mohm) => {
    const pipe = { kind: 'pipe', earth_resistance_ohm: 3, material: 'copper', length_m: 1, outside_mm, wall_mm };
    expect(1000 * ohms(pipe, 'it.metal')).toBeCloseTo(mohm, 3);
  });

  // Dwight, ρ/(4πL)·(ln(4L/a) + ln(4L/s) − 2 + …), 2L 30 m, a 14 mm, s/2 0.75 m, by hand 100/(188.5)·(8.363 + 3.689 − 2 + 0.049) = 5.36 Ω.
  test('thirty metres of bare 28 mm pipe 0.75 m deep in 100 Ω·m have 5.36 Ω to earth', () => {
    const pipe = { kind: 'pipe', outside_mm: 28, resistance_ohm: 0.01, buried: { length_m: 30, soil_ohm_m: 100 } };
    expect(ohms(pipe)).toBeCloseTo(5.36, 2);
  });

  test.each([
    [{}, /needs earth_resistance_ohm/],
    [{ earth_resistance_ohm: 3, buried: { length_m: 30, soil_ohm_m: 100 } }, /needs earth_resistance_ohm/],
    [{ buried: { length_m: 30 } }, /needs earth_resistance_ohm/],
    [{ buried: { length_m: 3, soil_ohm_m: 100 } }, /too short/],
  ])('a pipe with %j is refused', (written, reason) => {
    const read = partSchema.safeParse({ kind: 'pipe', outside_mm: 28, resistance_ohm: 0.01, ...written });
    expect(read.error?.issues.map(({ message }) => message).join()).toMatch(reason);
  });

  test('a pole of a breaker loses 2 W at its rating (common practice, no source)', () => {
    expect(ohms({ kind: 'breaker', rating_A: 20 }) * 20 ** 2).toBeCloseTo(2, 12);
    expect(ohms({ kind: 'breaker', rating_A: 20, resistance_ohm: 0.01 })).toBe(0.01);
  });
});
