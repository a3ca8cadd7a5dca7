import { describe, expect, test } from 'vitest';
import {
  bury,
  clampReading,
  fallCurve,
  fallOfPotential,
  gridWires,
  rodWires,
  SIXTY_TWO_PERCENT,
} from '../../src/earth/index.ts';

const loam = { kind: 'even', soil_ohm_m: 100 } as const;
const rod = bury([rodWires(3, 0.008)], loam);
const mat = { length_m: 20, width_m: 20, lengthwise: 5, crosswise: 5, depth_m: 0.6, wire_radius_m: 0.005 };
const grid = bury([gridWires(mat)], loam);

describe('fall of potential', () => {
  test('the rule is where 1/D + 1/x = 1/(D − x): 61.8 % of the way', () => {
    const x = SIXTY_TWO_PERCENT;
    expect(1 + 1 / x - 1 / (1 - x)).toBeCloseTo(0, 12);
  });

  test('a rod of 3 m with the current pin at 30 m reads right at 62 % of the way', () => {
    expect(Math.abs(fallOfPotential(rod, 30).error)).toBeLessThan(0.001);
    expect(fallOfPotential(rod, 30).truth).toBe(rod.resistance_ohm[0]?.[0]);
  });

  test('with the pin halfway it reads too little, near the current pin far too much', () => {
    expect(fallOfPotential(rod, 30, 15).error).toBeLessThan(-0.01);
    expect(fallOfPotential(rod, 30, 27).error).toBeGreaterThan(0.1);
  });

  test('a grid of 20 m with the current pin at 20 m hides a tenth of its resistance even at 62 %', () => {
    expect(fallOfPotential(grid, 20).error).toBeLessThan(-0.08);
    expect(Math.abs(fallOfPotential(grid, 100).error)).toBeLessThan(0.002);
  });

  test('counted from the edge of the grid instead of its middle, the pin is misplaced and reads 5 % and more too much', () => {
    const half = mat.length_m / 2;
    const from = (current: number) => fallOfPotential(grid, current, half + SIXTY_TWO_PERCENT * (current - half));
    expect(from(50).error).toBeGreaterThan(0.05);
    expect(from(400).error).toBeLessThan(from(50).error / 4);
  });

  test('the level stretch of the curve is there only if the current pin is far', () => {
    const slope = (current: number) => {
      const [before, after] = fallCurve(rod, current, [0.52 * current, 0.72 * current]);
      return ((after?.reading ?? NaN) - (before?.reading ?? NaN)) / rod.resistance_ohm[0]![0]!;
    };
    expect(slope(6)).toBeGreaterThan(0.15);
    expect(slope(60)).toBeLessThan(0.03);
    expect(fallCurve(rod, 30, [6, 12, 18]).map(({ potential_m }) => potential_m)).toEqual([6, 12, 18]);
  });

  test('over rock the rule of 62 % reads too little unless the pin is very far', () => {
    const ground = { kind: 'layered', upper_ohm_m: 200, lower_ohm_m: 1000, thickness_m: 2 } as const;
    const over = bury([rodWires(3, 0.008)], ground);
    expect(fallOfPotential(over, 20).error).toBeLessThan(-0.02);
    expect(Math.abs(fallOfPotential(over, 120).error)).toBeLessThan(0.002);
  });

  test.each([
    [30, 30],
    [30, 40],
    [30, 0],
    [Infinity, 3],
  ])('a current pin at %d m and a potential pin at %d m are refused', (current, potential) => {
    expect(() => fallOfPotential(rod, current, potential)).toThrow('the potential pin stands between');
  });
});

describe('a clamp on the conductor of an electrode', () => {
  test('reads the loop: a pole’s rod in a network of many is nearly right', () => {
    const network = clampReading({ electrode_ohm: 20, returns_ohm: Array.from({ length: 40 }, () => 25) });
    expect(network.error).toBeCloseTo(25 / 40 / 20, 12);
    expect(network.error).toBeGreaterThan(0);
  });

  test('of two equal rods it reads twice the one', () => {
    expect(clampReading({ electrode_ohm: 25, returns_ohm: [25] })).toMatchObject({ reading: 50, truth: 25, error: 1 });
  });

  test('of a single rod it reads no end: there is no loop', () => {
    expect(clampReading({ electrode_ohm: 25 }).reading).toBe(Infinity);
  });

  test('where metal closes the loop it reads the metal, and a bad rod looks perfect', () => {
    const { reading, error } = clampReading({ electrode_ohm: 2000, returns_ohm: [5], metal_ohm: 0.2 });
    expect(reading).toBeCloseTo(0.2, 3);
    expect(error).toBeLessThan(-0.99);
  });
});
