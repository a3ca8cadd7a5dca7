import fc from 'fast-check';
import { expect, test } from 'vitest';
import { heartCurrent_A } from '../../src/body/index.ts';

const amperes = fc.double({ min: 0, max: 1, noNaN: true });

test('a right hand on the case with the left on the sink counts more for the way down to the feet than for the way across', () => {
  const { amperes: heart, factor, path } = heartCurrent_A({ 'right hand': 0.1, 'left hand': 0.06, feet: 0.04 });
  expect(heart).toBeCloseTo(0.4 * 0.06 + 0.8 * 0.04, 12);
  expect(factor).toBeCloseTo(heart / 0.1, 12);
  expect(path).toBe('right hand to left hand and feet');
  expect(heartCurrent_A({ 'right hand': 0.1, 'left hand': 0.04, feet: 0.06 }).path).toBe(path);
});

test('a left hand on the case with the right on the sink counts the way down in full', () => {
  const { amperes: heart, path } = heartCurrent_A({ 'left hand': 0.1, 'right hand': 0.06, feet: 0.04 });
  expect(heart).toBeCloseTo(0.4 * 0.06 + 1.0 * 0.04, 12);
  expect(path).toBe('left hand to right hand and feet');
  expect(heartCurrent_A({ 'left hand': 0.1, 'right hand': 0.04, feet: 0.06 }).path).toBe(path);
});

test('where both hands lead to the feet, the right counts as much as the left does', () => {
  const { amperes: heart, path } = heartCurrent_A({ 'left hand': 0.03, 'right hand': 0.07, feet: 0.1 });
  expect(heart).toBeCloseTo(0.03 + 0.03 + 0.8 * 0.04, 12);
  expect(path).toBe('both hands to feet');
});

test('a third limb that carries next to nothing changes neither the name of the path nor the current', () => {
  const { amperes: heart, path } = heartCurrent_A({ 'right hand': 0.1, 'left hand': 1e-6, feet: 0.1 });
  expect(heart).toBeCloseTo(0.08, 5);
  expect(path).toBe('right hand to feet');
  expect(heartCurrent_A({ 'left hand': 0.1, 'right hand': 1e-6, feet: 0.1 }).path).toBe('left hand to feet');
  expect(heartCurrent_A({ 'left hand': 0.1, 'right hand': 0.1, feet: 1e-6 }).path).toBe('left hand to right hand');
});

test('no current is no path, and a limb whose current goes nobody knows where counts in full', () => {
  expect(heartCurrent_A({})).toEqual({ amperes: 0, factor: 0, path: 'none' });
  expect(heartCurrent_A({ 'right hand': 0, feet: 0 }).path).toBe('none');
  expect(heartCurrent_A({ 'right hand': 0.02 })).toEqual({ amperes: 0.02, factor: 1, path: 'unknown' });
});

test('the heart current is at least two fifths of the whole, grows with every limb’s and never jumps', () => {
  fc.assert(
    fc.property(amperes, amperes, amperes, (right, left, share) => {
      // Three limbs' currents close a triangle: the feet carry between the difference and the sum of the hands.
      const feet = Math.abs(right - left) + share * (right + left - Math.abs(right - left));
      const limbs = { 'right hand': right, 'left hand': left, feet };
      const { amperes: heart, factor } = heartCurrent_A(limbs);
      const whole = Math.max(right, left, feet);
      expect(heart).toBeGreaterThanOrEqual(0.4 * whole - 1e-12);
      if (whole > 0) expect(factor * whole).toBeCloseTo(heart, 12);
      const nudged = heartCurrent_A({ ...limbs, feet: feet + 1e-9 }).amperes;
      expect(Math.abs(nudged - heart)).toBeLessThan(2e-9);
      expect(heartCurrent_A({ 'right hand': 2 * right, 'left hand': 2 * left, feet: 2 * feet }).amperes).toBeCloseTo(
        2 * heart,
        12,
      );
    }),
    { numRuns: 2000, seed: 8 },
  );
});
