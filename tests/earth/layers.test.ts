import { describe, expect, test } from 'vitest';
import {
  buriedResistance_ohm,
  bury,
  inSeason,
  rodWires,
  ringWires,
  seasonFactors,
  transfer_ohm,
  wenner,
  wennerReading_ohm,
  wennerResistivity_ohm_m,
  type Ground,
} from '../../src/earth/index.ts';

const layered = (upper_ohm_m: number, lower_ohm_m: number, thickness_m: number): Ground => ({
  kind: 'layered',
  upper_ohm_m,
  lower_ohm_m,
  thickness_m,
});

// What makes a potential the right one: it is smooth across the surface and the boundary, with the current that crosses it the
// same on both sides. The images are not used here.
describe.each([
  ['a good soil under a bad one', 300, 30],
  ['a bad soil under a good one', 30, 300],
  ['rock under loam', 40, 5000],
])('%s', (_, upper, lower) => {
  const ground = layered(upper, lower, 2);
  const step = 1e-4;
  describe.each([
    ['above', 0.8],
    ['below', 3.1],
  ])('an electrode %s the boundary', (__, depth) => {
    const buried = bury([ringWires(1, 0.01, depth)], ground);
    const at = (x: number, z: number) => transfer_ohm(buried, 0, { x, y: 0.4, z });
    test.each([0.7, 2, 9])('%d m away: nothing goes into the air', (x) => {
      const slope = (at(x, step) - at(x, 0)) / step;
      expect(Math.abs(slope)).toBeLessThan((1e-2 * at(x, 0)) / x);
    });

    test.each([0.7, 2, 9])('%d m away: volts and current go through the boundary unbroken', (x) => {
      expect(at(x, 2 + 1e-6) / at(x, 2)).toBeCloseTo(1, 4);
      const above = (at(x, 2) - at(x, 2 - step)) / (step * upper);
      const below = (at(x, 2 + 2 * step) - at(x, 2 + step)) / (step * lower);
      expect(Math.abs(above - below)).toBeLessThan(0.02 * Math.abs(above));
    });
  });
});

test('two layers of one soil are even soil', () => {
  const rod = rodWires(3, 0.008);
  const even = buriedResistance_ohm(rod, { kind: 'even', soil_ohm_m: 100 });
  expect(buriedResistance_ohm(rod, layered(100, 100, 1.5)) / even).toBeCloseTo(1, 2);
  expect(buriedResistance_ohm(rod, layered(100, 100 + 1e-9, 50)) / even).toBeCloseTo(1, 6);
});

test('a rod that does not reach the good soil has little of it; one that does has nearly all', () => {
  const ground = layered(500, 50, 2);
  const short = buriedResistance_ohm(rodWires(1.5, 0.008), ground);
  const long = buriedResistance_ohm(rodWires(4, 0.008), ground);
  expect(short).toBeGreaterThan(200);
  expect(long).toBeLessThan(35);
});

test('the deeper the bad soil begins, the less a rod has; between the two soils alone', () => {
  const rod = rodWires(2.4, 0.008);
  const ohm = [0.2, 0.5, 1, 2, 4, 20].map((thick) => buriedResistance_ohm(rod, layered(100, 1000, thick)));
  expect(ohm).toEqual(ohm.toSorted((a, b) => b - a));
  expect(ohm[0]).toBeLessThan(404);
  expect(ohm.at(-1)).toBeGreaterThan(39.5);
  expect(ohm.at(-1)).toBeLessThan(42);
});

// Tagg's series for four pins, summed as it is printed: ρ₁(1 + 4ΣKⁿ(1/√(1 + (2nh/a)²) − 1/√(4 + (2nh/a)²))).
// Tagg, Earth Resistances (1964); IEEE Std 81; from memory.
test.each([
  [0.5, 0.5],
  [1, 1.5],
  [2, 2],
  [8, 2],
])('four pins %d m apart over a boundary at %d m read what the series says', (spacing, thick) => {
  for (const lower of [20, 900]) {
    const k = (lower - 100) / (lower + 100);
    let sum = 1;
    for (let n = 1; n < 4000; n++) {
      const far = (2 * n * thick) / spacing;
      sum += 4 * k ** n * (1 / Math.hypot(1, far) - 1 / Math.hypot(2, far));
    }
    const read = wennerResistivity_ohm_m(spacing, wennerReading_ohm(layered(100, lower, thick), spacing));
    expect(read / (100 * sum)).toBeCloseTo(1, 4);
  }
});

test('dry sand a hand deep on wet clay, or the other way round: every reflection counts, though there are thousands', () => {
  for (const [upper, lower] of [
    [5000, 1],
    [1, 20_000],
  ] as const) {
    const k = (lower - upper) / (lower + upper);
    const [thick, spacing] = [0.1, 30];
    let sum = 1;
    for (let n = 1; n < 300_000; n++) {
      const far = (2 * n * thick) / spacing;
      sum += 4 * k ** n * (1 / Math.hypot(1, far) - 1 / Math.hypot(2, far));
    }
    const ground = layered(upper, lower, thick);
    expect(Math.abs(wenner(ground, spacing, 3).reading / (upper * sum) - 1)).toBeLessThan(0.001);
  }
});

test('four pins near one another know nothing of the soil that the rod will meet', () => {
  const ground = layered(200, 20, 2);
  expect(wenner(ground, 0.5, 3).error).toBeGreaterThan(2.5);
  expect(wenner(ground, 0.5, 3).reading).toBeCloseTo(200, -1);
  expect(wenner(ground, 100, 3).reading).toBeCloseTo(20, 0);
  expect(wenner({ kind: 'even', soil_ohm_m: 80 }, 0.5, 3).error).toBeCloseTo(0, 9);
});

test('pins as long as their spacing have far more resistivity than the short formula says', () => {
  expect(wennerResistivity_ohm_m(1, 10) / wennerResistivity_ohm_m(1, 10, 0.05)).toBeCloseTo(1, 2);
  expect(wennerResistivity_ohm_m(1, 10, 1)).toBeGreaterThan(1.6 * wennerResistivity_ohm_m(1, 10));
  expect(wennerResistivity_ohm_m(1, 10, 100)).toBeCloseTo(4 * Math.PI * 10, 0);
});

test('a dry summer raises a strip near the surface more than a rod that begins below it', () => {
  const [strip, deep] = [seasonFactors(0.5, 'flat'), seasonFactors(3, 'upright')];
  expect(strip.from).toBeGreaterThan(deep.to);
  expect(seasonFactors(0.9, 'upright')).toMatchObject({ from: 1.15, to: 1.3 });
  expect(() => seasonFactors(-1, 'flat')).toThrow('A depth of -1 m');
  const summer = inSeason(layered(100, 60, 1), 1.4);
  expect(summer).toMatchObject({ upper_ohm_m: 140, lower_ohm_m: 60 });
});

test('half a metre of frost costs a rod of 3 m a fifth, a rod of 1 m more than half', () => {
  const worse = (length: number) =>
    buriedResistance_ohm(rodWires(length, 0.008), layered(2000, 100, 0.5)) /
    buriedResistance_ohm(rodWires(length, 0.008), { kind: 'even', soil_ohm_m: 100 });
  expect(worse(3)).toBeLessThan(1.25);
  expect(worse(1)).toBeGreaterThan(1.5);
});
