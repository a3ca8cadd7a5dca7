import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bury,
  inSeason,
  marginPercent,
  moved,
  plateWires,
  ringWires,
  rodResistance_ohm,
  rodWires,
  stripWires,
  standingResistance_ohm,
  surfaceDerating,
  surfacePotential_V,
  surfaceProfile,
  tolerableStep_V,
  tolerableTouch_V,
  type Buried,
  type ProfilePoint,
} from '../../src/earth/index.ts';

const loam = { kind: 'even', soil_ohm_m: 100 } as const;
const pole = bury([rodWires(3, 0.008)], loam);
const own = ({ resistance_ohm }: Buried) => resistance_ohm[0]?.[0] ?? NaN;
const first = (points: readonly ProfilePoint[]): ProfilePoint => {
  const [point] = points;
  if (point === undefined) throw new Error('an empty profile');
  return point;
};

test('at the electrode the soil stands at R·I, and a known resistance keeps the shape of the profile', () => {
  expect(surfacePotential_V(pole, 0, { x: 0, y: 0 }, 10)).toBeCloseTo(10 * own(pole), 9);
  const dwight = rodResistance_ohm(3, 0.008, 100);
  expect(surfacePotential_V(pole, 0, { x: 0, y: 0 }, 10, dwight)).toBeCloseTo(10 * dwight, 9);
  const share = (ohm?: number) =>
    surfacePotential_V(pole, 0, { x: 2, y: 0 }, 1, ohm) / surfacePotential_V(pole, 0, { x: 0, y: 0 }, 1, ohm);
  expect(share(dwight)).toBeCloseTo(share(), 12);
});

test('at the head of a rod the segments agree with R·I within 2 %, where an even leak stands 4 % above', () => {
  const fine = bury([rodWires(3, 0.008, { pieces: 40 })], loam);
  const beside = 0.0081;
  expect(Math.abs(surfacePotential_V(fine, 0, { x: beside, y: 0 }, 1) / own(fine) - 1)).toBeLessThan(0.02);
  const even = (100 / (2 * Math.PI * 3)) * Math.asinh(3 / beside);
  expect(even / rodResistance_ohm(3, 0.008, 100)).toBeGreaterThan(1.04);
});

test('the soil falls away from an electrode everywhere, and far away it is that of a point', () => {
  const place = fc.double({ min: 0.05, max: 60, noNaN: true });
  fc.assert(
    fc.property(place, place, (one, other) => {
      const [near, far] = [Math.min(one, other), Math.max(one, other)];
      const volts = (x: number) => surfacePotential_V(pole, 0, { x, y: 0 }, 1);
      expect(volts(near)).toBeGreaterThanOrEqual(volts(far));
      expect(volts(far)).toBeGreaterThan(0);
    }),
    { numRuns: 200, seed: 3 },
  );
  expect(surfacePotential_V(pole, 0, { x: 300, y: 0 }, 1)).toBeCloseTo(100 / (2 * Math.PI * 300), 4);
});

describe('who stands where', () => {
  test('a pole: at arm’s length a hand on it has 7 tenths of its rise, two paces away a step has a twentieth', () => {
    const [at1, at2] = surfaceProfile(pole, 0, 1, [1, 2]);
    expect((at1?.touch_V ?? 0) / own(pole)).toBeCloseTo(0.72, 1);
    expect((at2?.step_V ?? 1) / own(pole)).toBeLessThan(0.06);
  });

  test('a pump: a ring round it lifts the ground on which one stands, so that a touch has half of that on a rod', () => {
    const ring = bury([ringWires(3, 0.004, 0.6)], loam);
    const share = (buried: Buried) => first(surfaceProfile(buried, 0, 1, [1])).touch_V / own(buried);
    expect(share(ring)).toBeLessThan(0.42);
    expect(share(pole)).toBeGreaterThan(0.7);
    // Outside the ring the soil falls off steeply: the step that was taken from the touch is there.
    const steps = surfaceProfile(ring, 0, 1, [0, 1.5, 4]).map(({ step_V }) => step_V / own(ring));
    expect(steps[1]).toBeGreaterThan(5 * Math.abs(steps[0] ?? 1));
  });

  test('a fence on a buried strip: touching it is worse at its end than in its middle', () => {
    const fence = bury([stripWires(30, 0.005, 0.3, { pieces: 30 })], loam);
    const middle = first(surfaceProfile(fence, 0, 1, [1], { bearing_rad: Math.PI / 2 }));
    const end = first(surfaceProfile(fence, 0, 1, [1], { from: { x: 15, y: 0 } }));
    expect(end.touch_V).toBeGreaterThan(1.05 * middle.touch_V);
  });

  test('a fence near a pole is lifted by it without being joined: a touch of what lies between fence and feet', () => {
    const fence = moved(stripWires(10, 0.005, 0.3), { x: 2, y: 0 }, Math.PI / 2);
    const { resistance_ohm } = bury([rodWires(3, 0.008), fence], loam);
    const lifted = (resistance_ohm[1]?.[0] ?? 0) / (resistance_ohm[0]?.[0] ?? 1);
    expect(lifted).toBeGreaterThan(0.1);
    expect(lifted).toBeLessThan(0.2);
  });

  test('a pontoon: in fresh water over mud a swimmer near a plate is lifted with it, one stroke farther out is not', () => {
    const water = { kind: 'layered', upper_ohm_m: 50, lower_ohm_m: 20, thickness_m: 3 } as const;
    const hull = bury([plateWires(1, 0.6, 'flat')], water);
    const [beside, off] = surfaceProfile(hull, 0, 1, [0.5, 3], { pace_m: 2 });
    expect((beside?.surface_V ?? 0) / own(hull)).toBeGreaterThan(0.4);
    expect((off?.surface_V ?? 1) / own(hull)).toBeLessThan(0.16);
    expect(beside?.step_V).toBeGreaterThan(5 * (off?.step_V ?? 1));
  });

  test('dry soil under the feet raises the rise of an electrode as much as its resistance', () => {
    const dry = bury([rodWires(3, 0.008)], inSeason(loam, 1.4));
    expect(own(dry) / own(pole)).toBeCloseTo(1.4, 9);
  });
});

// What rock below adds under a foot is C_s of IEEE Std 80 read the other way round: its series with K above zero.
test('feet over rock have more than on loam alone, over a good soil less; two less than half of one', () => {
  const over = (lower_ohm_m: number, feet: 1 | 2) =>
    standingResistance_ohm({ kind: 'layered', upper_ohm_m: 100, lower_ohm_m, thickness_m: 0.2 }, feet);
  expect(standingResistance_ohm(loam, 1)).toBe(300);
  expect(standingResistance_ohm(loam, 2)).toBe(150);
  expect(over(5000, 1)).toBeGreaterThan(450);
  expect(over(100, 1)).toBeCloseTo(300, 9);
  expect(over(5, 1)).toBeLessThan(270);
  expect(over(5000, 1) - over(5000, 2)).toBeCloseTo(150, 9);
});

describe('what IEEE Std 80 tolerates', () => {
  const bare = { mass_kg: 50, time_s: 0.5, surface_ohm_m: 100 } as const;

  test('crushed rock lets three times the voltage pass', () => {
    const derating = surfaceDerating(100, 3000, 0.1);
    expect(tolerableTouch_V({ ...bare, surface_ohm_m: 3000, derating }) / tolerableTouch_V(bare)).toBeGreaterThan(3);
    expect(surfaceDerating(100, 100, 0.1)).toBe(1);
    expect(surfaceDerating(100, 3000, 10)).toBeCloseTo(1, 1);
  });

  test('four times as long is half as much, and a heavier body bears more', () => {
    expect(tolerableStep_V({ ...bare, time_s: 2 }) / tolerableStep_V(bare)).toBeCloseTo(0.5, 12);
    expect(tolerableStep_V({ ...bare, mass_kg: 70 }) / tolerableStep_V(bare)).toBeCloseTo(157 / 116, 12);
  });

  test('a pole with 10 A for half a second is above what may be touched and far below what may be stepped over', () => {
    const at1 = first(surfaceProfile(pole, 0, 10, [1]));
    expect(marginPercent(tolerableTouch_V(bare), at1.touch_V)).toBeLessThan(0);
    expect(marginPercent(tolerableStep_V(bare), at1.step_V)).toBeGreaterThan(80);
  });

  test.each([0.01, 5, NaN])('a shock of %d s is outside what was measured, and refused', (time_s) => {
    expect(() => tolerableTouch_V({ ...bare, time_s })).toThrow('hold from 0.03 s to 3 s');
  });
});
