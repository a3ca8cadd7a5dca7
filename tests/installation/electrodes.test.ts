import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createSolver } from '../../src/electrics/index.ts';
import {
  gridWires,
  buriedResistance_ohm,
  plateResistance_ohm,
  ringResistance_ohm,
  rodResistance_ohm,
  rodsResistance_ohm,
  stripResistance_ohm,
  wireResistance_ohm,
} from '../../src/earth/index.ts';
import { compile, installationSchema, printDiagnostics, readInstallation } from '../../src/installation/index.ts';
import { partKind, partSchema } from '../../src/installation/parts/index.ts';

const surroundings = { region: 'iec', frequency_Hz: 50 } as const;

function ohms(written: object): number {
  const part = partSchema.parse(written);
  const [branch] = partKind(part.kind).plan('it', part, surroundings).branches;
  if (branch === undefined) throw new Error(`${part.kind} has no branch`);
  expect(branch).toMatchObject({ name: 'it', from: 'it.top', to: 'earth', role: 'electrode', medium: 'soil' });
  return branch.resistance_ohm;
}

function complaints(part: string): string {
  const text = `place: A yard\nregion: iec\nparts:\n  supply: { kind: source, emf_V: 230 }\n  it: ${part}\njoins:\n  - [supply.minus, earth]\n`;
  const reading = readInstallation(text, 'yard.yaml');
  return reading.ok ? '' : printDiagnostics(reading.diagnostics, text);
}

const ELECTRODES = {
  rod: { kind: 'rod', length_m: 3, diameter_m: 0.016 },
  rods: { kind: 'rods', count: 4, spacing_m: 3, arrangement: 'square', length_m: 3, diameter_m: 0.016 },
  strip: { kind: 'strip', length_m: 20, width_m: 0.03, depth_m: 0.6 },
  wire: { kind: 'strip', length_m: 20, diameter_m: 0.008, depth_m: 0.6 },
  ring: { kind: 'ring', diameter_m: 12, wire_diameter_m: 0.01, depth_m: 0.6 },
  plate: { kind: 'plate', side_m: 0.6, depth_m: 1.5 },
} as const;

const FORMULAS: Readonly<Record<keyof typeof ELECTRODES, number>> = {
  rod: rodResistance_ohm(3, 0.008, 100),
  rods: rodsResistance_ohm(4, 3, 'square', 3, 0.008, 100),
  strip: stripResistance_ohm(20, 0.03, 0.003, 0.6, 100),
  wire: wireResistance_ohm(20, 0.004, 0.6, 100),
  ring: ringResistance_ohm(12, 0.01, 0.6, 100),
  plate: plateResistance_ohm(0.6, 1.5, 'upright', 100),
};

describe.each(Object.entries(ELECTRODES))('a %s', (name, written) => {
  test('in even soil has what its published formula says', () => {
    expect(ohms({ ...written, soil_ohm_m: 100 })).toBe(FORMULAS[name as keyof typeof ELECTRODES]);
  });

  test('over another soil changes smoothly from there, towards the other', () => {
    const over = (below: number) => ohms({ ...written, soil_ohm_m: 100, below: { from_m: 2, soil_ohm_m: below } });
    const even = ohms({ ...written, soil_ohm_m: 100 });
    expect(over(100) / even).toBeCloseTo(1, 2);
    expect(over(20)).toBeLessThan(even);
    expect(over(500)).toBeGreaterThan(even);
  });

  test('in a dry season has its factor more; a measured one too', () => {
    const even = ohms({ ...written, soil_ohm_m: 100 });
    expect(ohms({ ...written, soil_ohm_m: 100, seasonal_factor: 1.4 }) / even).toBeCloseTo(1.4, 12);
    expect(ohms({ kind: written.kind, resistance_ohm: 20, seasonal_factor: 1.4 })).toBeCloseTo(28, 12);
    const layered = { ...written, soil_ohm_m: 100, below: { from_m: 1, soil_ohm_m: 30 } };
    const worse = ohms({ ...layered, seasonal_factor: 2 }) / ohms(layered);
    expect(worse).toBeGreaterThan(1);
    expect(worse).toBeLessThan(2);
  });
});

test('a grid has what the numeric method says', () => {
  const wires = gridWires({
    length_m: 20,
    width_m: 10,
    lengthwise: 3,
    crosswise: 5,
    depth_m: 0.6,
    wire_radius_m: 0.005,
  });
  const size = { length_m: 20, width_m: 10, wires_lengthwise: 3, wires_crosswise: 5, wire_diameter_m: 0.01 };
  expect(ohms({ kind: 'grid', ...size, depth_m: 0.6, soil_ohm_m: 100 })).toBe(
    buriedResistance_ohm(wires, { kind: 'even', soil_ohm_m: 100 }),
  );
});

test.each([
  ['{ kind: ring, diameter_m: 12 }', 'needs wire_diameter_m, depth_m, soil_ohm_m, or a measured resistance_ohm'],
  ['{ kind: plate, side_m: 1, depth_m: 0.3, soil_ohm_m: 100 }', 'less than half its side'],
  ['{ kind: plate, side_m: 1, depth_m: 2, soil_ohm_m: 100, below: { from_m: 1 } }', 'needs soil_ohm_m or soil'],
  ['{ kind: strip, length_m: 20, depth_m: 0.6, soil_ohm_m: 100 }', 'needs one of width_m and diameter_m'],
  ['{ kind: strip, length_m: 20, depth_m: 0.6, width_m: 0.01, thickness_m: 0.01, soil_ohm_m: 100 }', 'flat strip'],
  ['{ kind: strip, length_m: 0.1, depth_m: 0.6, width_m: 0.1, soil_ohm_m: 100 }', 'too short for a strip'],
  [
    '{ kind: rods, count: 6, spacing_m: 3, arrangement: square, length_m: 3, diameter_m: 0.02, soil_ohm_m: 9 }',
    'count: 8',
  ],
  ['{ kind: rods, count: 2, spacing_m: 0.02, length_m: 3, diameter_m: 0.02, soil_ohm_m: 9 }', 'stand in one another'],
  [
    '{ kind: rods, count: 2, spacing_m: 1, length_m: 0.05, diameter_m: 0.02, soil_ohm_m: 9 }',
    'too short for its diameter',
  ],
  ['{ kind: ring, diameter_m: 1, wire_diameter_m: 0.01, depth_m: 2, soil_ohm_m: 9 }', 'wider than deep'],
  ['{ kind: ring, diameter_m: 1, wire_diameter_m: 0.5, depth_m: 2, soil_ohm_m: 9 }', 'too thick for the ring'],
  [
    '{ kind: grid, length_m: 10, width_m: 10, wires_lengthwise: 3, wires_crosswise: 3, wire_diameter_m: 0.5, depth_m: 1, soil_ohm_m: 9 }',
    'too thick for its meshes',
  ],
  ['{ kind: soil, soil_ohm_m: 9, electrodes: {} }', 'needs at least one'],
  ['{ kind: soil, electrodes: { a: { kind: rod, length_m: 3, diameter_m: 0.02, at: [0, 0] } } }', 'soil_ohm_m: 100'],
  [
    '{ kind: soil, soil_ohm_m: 9, electrodes: { a: { kind: rod, length_m: 3, diameter_m: 0.02, at: [0, 0] }, b: { kind: rod, length_m: 3, diameter_m: 0.02, at: [0, 0] } } }',
    'cannot be solved',
  ],
  [
    '{ kind: soil, soil_ohm_m: 9, electrodes: { a: { kind: rod, length_m: 3, diameter_m: 0.02, at: [0, 0] } }, places: { a: { at: [1, 1] } } }',
    'is the name of an electrode already',
  ],
  [
    '{ kind: soil, soil_ohm_m: 9, electrodes: { a: { kind: rod, length_m: 0.1, diameter_m: 0.02, at: [0, 0] } }, places: { b: { at: [0, 0] } } }',
    'a and b stand in one another',
  ],
])('%s is refused in words', (written, words) => {
  expect(complaints(written)).toContain(words);
});

// Any form within its bounds is either refused by name or has a finite resistance; the numeric method is asked too.
test('every electrode that is let in has a resistance', () => {
  const size = fc.oneof(
    fc.double({ min: 0.001, max: 1, noNaN: true }),
    fc.double({ min: 0.01, max: 100, noNaN: true }),
  );
  const form = fc.record({
    kind: fc.constantFrom('rod', 'rods', 'strip', 'ring', 'plate', 'grid'),
    length_m: size,
    diameter_m: size,
    width_m: fc.option(size, { nil: undefined }),
    wire_diameter_m: size,
    side_m: size,
    spacing_m: size,
    depth_m: fc.double({ min: 0.01, max: 10, noNaN: true }),
    count: fc.integer({ min: 2, max: 8 }),
    lie: fc.constantFrom('upright', 'flat'),
    wires_lengthwise: fc.integer({ min: 2, max: 4 }),
    wires_crosswise: fc.integer({ min: 2, max: 4 }),
    soil_ohm_m: fc.double({ min: 0.1, max: 1e5, noNaN: true }),
    below: fc.option(
      fc.record({
        from_m: fc.double({ min: 0.1, max: 20, noNaN: true }),
        soil_ohm_m: fc.double({ min: 0.1, max: 1e5, noNaN: true }),
      }),
      { nil: undefined },
    ),
  });
  const KEYS = {
    rod: ['length_m', 'diameter_m'],
    rods: ['length_m', 'diameter_m', 'spacing_m', 'count'],
    strip: ['length_m', 'depth_m', 'width_m', 'diameter_m'],
    ring: ['diameter_m', 'wire_diameter_m', 'depth_m'],
    plate: ['side_m', 'depth_m', 'lie'],
    grid: ['length_m', 'width_m', 'wires_lengthwise', 'wires_crosswise', 'wire_diameter_m', 'depth_m'],
  } as const;
  let accepted = 0;
  fc.assert(
    fc.property(form, (all) => {
      const kind = all.kind as keyof typeof KEYS;
      const keys: readonly string[] = ['kind', 'soil_ohm_m', 'below', ...KEYS[kind]];
      const twice = kind === 'strip' && all.width_m !== undefined;
      const written = Object.fromEntries(
        Object.entries(all).filter(
          ([key, value]) => keys.includes(key) && value !== undefined && !(twice && key === 'diameter_m'),
        ),
      );
      const read = partSchema.safeParse(written);
      if (!read.success) return;
      accepted++;
      const [branch] = partKind(kind).plan('it', read.data, surroundings).branches;
      expect(branch?.resistance_ohm).toBeGreaterThan(0);
      expect(branch?.resistance_ohm).toBeLessThan(1e9);
    }),
    { numRuns: 400, seed: 5 },
  );
  expect(accepted).toBeGreaterThan(60);
});

// IEEE Std 80: 3ρ a foot; a thin layer counts C_s of its own resistivity, 0.7021 for 0.1 m of 2500 Ω·m on 100 Ω·m.
test('a foot on 100 Ω·m has 300 Ω, two have 150, and on crushed rock two have 2633', () => {
  const standing = (feet: number, cover?: object) => {
    const part = partSchema.parse({
      kind: 'soil',
      soil_ohm_m: 100,
      ...(cover === undefined ? {} : { cover }),
      electrodes: { rod: { ...ELECTRODES.rod, at: [0, 0] } },
      places: { here: { at: [2, 0], feet } },
    });
    return partKind('soil').plan('it', part, surroundings).winding?.resistance_ohm.at(-1);
  };
  expect(standing(1)).toBe(300);
  expect(standing(2)).toBe(150);
  expect(standing(2, { soil_ohm_m: 2500, thickness_m: 0.1 })).toBeCloseTo(1.5 * 0.7021 * 2500, -1);
});

test('electrodes and feet anywhere in one soil give off power and never take it in', () => {
  const at = fc.tuple(fc.double({ min: -8, max: 8, noNaN: true }), fc.double({ min: -8, max: 8, noNaN: true }));
  const soil = fc.double({ min: 5, max: 5000, noNaN: true });
  let accepted = 0;
  fc.assert(
    fc.property(soil, soil, at, at, at, at, (upper, lower, rod, ring, one, two) => {
      const yard = {
        kind: 'soil',
        soil_ohm_m: upper,
        below: { from_m: 1.5, soil_ohm_m: lower },
        electrodes: { rod: { ...ELECTRODES.rod, at: rod }, ring: { ...ELECTRODES.ring, diameter_m: 3, at: ring } },
        places: { one: { at: one, feet: 1 }, two: { at: two } },
      };
      const file = {
        place: 'A yard',
        region: 'iec',
        parts: { supply: { kind: 'source', emf_V: 230 }, yard, link: { kind: 'impedance', resistance_ohm: 1e-5 } },
        joins: [
          ['supply.plus', 'yard.rod'],
          ['supply.minus', 'yard.ring'],
          ['link.a', 'yard.one'],
          ['link.b', 'yard.two'],
        ],
      };
      const read = installationSchema.safeParse(file);
      if (!read.success) return;
      accepted++;
      const build = compile(read.data);
      const { amperes, volts } = createSolver(build.network).solve(build.values({}, new Set()));
      const power_W = ['rod', 'ring', 'one', 'two'].reduce((sum, name) => {
        const [branch, node] = [build.branch(`yard.${name}`), build.node(`yard.${name}`)];
        return sum + (amperes.re[branch] ?? NaN) * (volts.re[node] ?? NaN);
      }, 0);
      expect(power_W).toBeGreaterThan(0);
      const earth_A = ['rod', 'ring', 'one', 'two'].map((name) => amperes.re[build.branch(`yard.${name}`)] ?? NaN);
      expect(Math.abs(earth_A.reduce((sum, each) => sum + each, 0))).toBeLessThan(1e-6 * Math.max(...earth_A));
    }),
    { numRuns: 60, seed: 9 },
  );
  expect(accepted).toBeGreaterThan(40);
});
