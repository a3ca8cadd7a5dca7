import { expect, test } from 'vitest';
import { footResistance_ohm, rodResistance_ohm, soils } from '../../src/earth/index.ts';

const INCH_m = 0.0254;
const FOOT_m = 0.3048;

// Dwight, AIEE Trans. 55 (1936), single rod; computed from the formula and rounded as printed. Diameter m, length m, Ω in soil of
// 10, 50, 100, 300 and 1000 Ω·m, soil for 25 Ω.
const rods: readonly (readonly [string, number, number, readonly string[], number])[] = [
  ['1/2 in × 8 ft', 0.5 * INCH_m, 8 * FOOT_m, ['4.14', '20.7', '41.4', '124', '414'], 60.4],
  ['5/8 in × 8 ft', 0.625 * INCH_m, 8 * FOOT_m, ['3.99', '20.0', '39.9', '119.7', '399'], 62.6],
  ['5/8 in × 10 ft', 0.625 * INCH_m, 10 * FOOT_m, ['3.31', '16.5', '33.1', '99.3', '331'], 75.6],
  ['3/4 in × 10 ft', 0.75 * INCH_m, 10 * FOOT_m, ['3.21', '16.1', '32.1', '96.4', '321'], 77.8],
  ['5/8 in × 20 ft', 0.625 * INCH_m, 20 * FOOT_m, ['1.84', '9.18', '18.35', '55.1', '183.5'], 136],
  ['16 mm × 1.2 m', 0.016, 1.2, ['7.16', '35.8', '71.6', '215', '716'], 34.9],
  ['16 mm × 2.4 m', 0.016, 2.4, ['4.04', '20.2', '40.4', '121', '404'], 61.9],
  ['16 mm × 3 m', 0.016, 3, ['3.35', '16.7', '33.5', '100.5', '335'], 74.6],
];

test.each(rods)('a rod of %s has the tabled resistance in five soils', (_, diameter_m, length_m, printed, for25ohm) => {
  [10, 50, 100, 300, 1000].forEach((soil_ohm_m, column) => {
    const digits = printed[column] ?? '';
    const places = digits.split('.')[1]?.length ?? 0;
    const resistance_ohm = rodResistance_ohm(length_m, diameter_m / 2, soil_ohm_m);
    expect(Math.abs(resistance_ohm - Number(digits))).toBeLessThanOrEqual(0.5001 * 10 ** -places);
  });
  expect(Math.abs(rodResistance_ohm(length_m, diameter_m / 2, for25ohm) - 25)).toBeLessThan(0.1);
});

test('a rod of 3/4 in × 10 ft in 100 Ω·m has 32 Ω (MIL-HDBK-419A, nomograph, seen in a copy)', () => {
  expect(rodResistance_ohm(10 * FOOT_m, 0.375 * INCH_m, 100)).toBeCloseTo(32.14, 2);
  expect(Math.round(rodResistance_ohm(10 * FOOT_m, 0.375 * INCH_m, 100))).toBe(32);
});

test('a rod of 1 in × 10 ft in 10 Ω·m at 20 kA rises to 61.3 kV (MIL-HDBK-419A example, its rise computed by Dwight)', () => {
  const resistance_ohm = rodResistance_ohm(10 * FOOT_m, 0.5 * INCH_m, 10);
  expect(resistance_ohm).toBeCloseTo(3.063, 3);
  // The handbook prints a step of 41 400 V, 0.68 of the rise: within 1 %.
  expect(Math.abs((0.68 * 20_000 * resistance_ohm) / 41_400 - 1)).toBeLessThan(0.01);
});

// IEEE Std 80-2013: one foot 3ρ; two side by side 1.5ρ and one after the other 6ρ, as in its touch and step formulas. From memory.
test.each([
  [100, 300, 150, 600],
  [2500, 7500, 3750, 15_000],
])('feet on %d Ω·m have %d Ω each, %d Ω side by side, %d Ω in a step', (resistivity_ohm_m, one, touch, step) => {
  expect(footResistance_ohm(resistivity_ohm_m)).toBe(one);
  expect(footResistance_ohm(resistivity_ohm_m) / 2).toBe(touch);
  expect(footResistance_ohm(resistivity_ohm_m) * 2).toBe(step);
});

// NBS Technologic Paper 108, seen second-hand: least, mean, most, Ω·m.
test.each([
  ['ashes and cinders', 5.9, 23.7, 70],
  ['clay and loam', 3.4, 40.6, 163],
  ['clay with sand and gravel', 10.2, 158, 1350],
  ['sand and gravel', 590, 940, 4580],
] as const)('%s has the resistivity that was measured', (name, least, mean, most) => {
  expect(soils[name]).toMatchObject({ from_ohm_m: least, typical_ohm_m: mean, to_ohm_m: most });
});

// IEEE Std 80-2013 table 7, wet concrete, from memory.
test('wet concrete has the resistivity that was measured', () => {
  expect(soils['wet concrete']).toMatchObject({ from_ohm_m: 21, to_ohm_m: 200 });
});
