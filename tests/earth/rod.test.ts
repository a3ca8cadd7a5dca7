import fc from 'fast-check';
import { expect, test } from 'vitest';
import { footResistance_ohm, rodResistance_ohm, soils } from '../../src/earth/index.ts';

const length = fc.double({ min: 0.5, max: 30, noNaN: true });
const soil = fc.double({ min: 1, max: 1e4, noNaN: true });

test('a longer rod, a thicker rod and a better soil each lower the resistance; the length counts most', () => {
  fc.assert(
    fc.property(length, soil, (length_m, soil_ohm_m) => {
      const plain = rodResistance_ohm(length_m, 0.008, soil_ohm_m);
      expect(rodResistance_ohm(2 * length_m, 0.008, soil_ohm_m)).toBeLessThan(0.65 * plain);
      const thicker = rodResistance_ohm(length_m, 0.016, soil_ohm_m);
      expect(thicker).toBeLessThan(plain);
      expect(thicker).toBeGreaterThan(0.75 * plain);
      expect(rodResistance_ohm(length_m, 0.008, 2 * soil_ohm_m)).toBeCloseTo(2 * plain, 8);
    }),
    { numRuns: 500, seed: 11 },
  );
});

test('in most soils a single 8 ft rod stays above 25 ohm', () => {
  const above = Object.values(soils).filter(({ typical_ohm_m }) => rodResistance_ohm(2.44, 0.0079, typical_ohm_m) > 25);
  expect(above.length).toBeGreaterThan(Object.keys(soils).length / 2);
});

test('every soil is typical of its own range', () => {
  for (const { from_ohm_m, typical_ohm_m, to_ohm_m, source } of Object.values(soils)) {
    expect(typical_ohm_m).toBeGreaterThan(from_ohm_m);
    expect(typical_ohm_m).toBeLessThan(to_ohm_m);
    expect(source).not.toBe('');
  }
  expect(soils['wet concrete'].typical_ohm_m).toBeCloseTo(Math.sqrt(21 * 200), 0);
});

test.each([
  ['a rod without length', () => rodResistance_ohm(0, 0.008, 100), 'A rod 0 m long'],
  ['a rod thicker than long', () => rodResistance_ohm(0.01, 0.02, 100), 'radius 0.02 m'],
  ['soil of nothing', () => rodResistance_ohm(2, 0.008, 0), 'Soil of 0'],
  ['soil without end', () => rodResistance_ohm(2, 0.008, Infinity), 'Soil of Infinity'],
  ['a rod without end', () => rodResistance_ohm(Infinity, 0.008, 100), 'A rod Infinity m'],
  ['a rod without thickness', () => rodResistance_ohm(2, 0, 100), 'radius 0 m'],
  ['a floor of nothing', () => footResistance_ohm(0), 'A floor of 0'],
  ['a floor that is not a number', () => footResistance_ohm(NaN), 'A floor of NaN'],
])('%s is refused by name', (_, act, words) => {
  expect(act).toThrow(RangeError);
  expect(act).toThrow(words);
});
