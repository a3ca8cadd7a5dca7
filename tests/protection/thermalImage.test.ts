import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fastestImage, middleImage, openingTime_s, slowestImage } from '../../src/protection/thermalImage.ts';

const point = fc.record({
  multiple: fc.double({ min: 1.6, max: 3, noNaN: true }),
  heat: fc.constant(0),
  within_s: fc.double({ min: 1, max: 300, noNaN: true }),
});
const lowest = fc.record({
  multiple: fc.double({ min: 1.2, max: 1.5, noNaN: true }),
  heat: fc.double({ min: 0, max: 1.2, noNaN: true }),
  within_s: fc.double({ min: 3600, max: 7200, noNaN: true }),
});

test('the slowest image opens in time at every point it was made from and could hardly be slower', () => {
  fc.assert(
    fc.property(lowest, fc.array(point, { minLength: 1, maxLength: 4 }), (low, higher) => {
      const image = slowestImage(low, higher);
      const used = [low, ...higher].map(
        ({ multiple, heat, within_s }) => openingTime_s(image, heat, multiple) / within_s,
      );
      for (const share of used) expect(share).toBeLessThan(1);
      expect(Math.max(...used.slice(1))).toBeGreaterThan(0.98);
    }),
    { numRuns: 1000, seed: 3 },
  );
});

test('the fastest image stays shut long enough at every point it was made from and could hardly be faster', () => {
  fc.assert(
    fc.property(fc.array(point, { minLength: 1, maxLength: 4 }), (points) => {
      const image = fastestImage(
        1.14,
        points.map(({ multiple, within_s }) => ({ multiple, for_s: within_s })),
      );
      const used = points.map(({ multiple, within_s }) => openingTime_s(image, 0, multiple) / within_s);
      for (const share of used) expect(share).toBeGreaterThan(1);
      expect(Math.min(...used)).toBeLessThan(1.02);
      expect(openingTime_s(image, 0, 1.14)).toBe(Infinity);
    }),
    { numRuns: 1000, seed: 4 },
  );
});

test('the middle image holds between the two and takes between their times', () => {
  const fast = { limit: 1.05 ** 2, tau_s: 40 };
  const slow = { limit: 1.35 ** 2, tau_s: 160 };
  const middle = middleImage(fast, slow);
  expect(Math.sqrt(middle.limit)).toBeCloseTo(1.2, 12);
  expect(middle.tau_s).toBeCloseTo(80, 12);
});
