import fc from 'fast-check';
import { expect, test } from 'vitest';
import { residualOperation } from '../../src/protection/index.ts';
import type { Tolerance } from '../../src/protection/index.ts';

const gfci = { family: 'ul943-class-a' } as const;
const tolerance = fc.constantFrom<Tolerance>('fast', 'middle', 'slow');
const residual_A = fc.oneof(
  fc.double({ min: 0, max: 0.02, noNaN: true }),
  fc.double({ min: 0, max: 500, noNaN: true }),
  fc.constantFrom(0.004, 0.005, 0.006, 0.264),
);

test('opening lies between earliest and latest, and more current never opens it later', () => {
  fc.assert(
    fc.property(residual_A, residual_A, tolerance, (one, other, which) => {
      const { at_s, earliest_s, latest_s, region } = residualOperation(gfci, one, which);
      expect(earliest_s).toBeLessThanOrEqual(at_s);
      expect(at_s).toBeLessThanOrEqual(latest_s);
      expect(region === 'none').toBe(at_s === Infinity);
      const [low, high] = [Math.min(one, other), Math.max(one, other)];
      expect(residualOperation(gfci, high, which).at_s).toBeLessThanOrEqual(residualOperation(gfci, low, which).at_s);
    }),
    { numRuns: 2000, seed: 943 },
  );
});

test.each([
  ['fast', 0.004],
  ['middle', 0.005],
  ['slow', 0.006],
] as const)('a %s device opens from %d A on', (which, from_A) => {
  expect(residualOperation(gfci, from_A, which).region).toBe('residual');
  expect(residualOperation(gfci, from_A * (1 - 1e-9), which).region).toBe('none');
  expect(residualOperation(gfci, from_A, which).certain).toBe(from_A >= 0.006);
  expect(residualOperation(gfci, 3 * from_A, which).multiple).toBeCloseTo(3, 12);
});

test('a device in the middle takes the geometric mean of 25 ms and the longest time', () => {
  const { at_s, earliest_s, latest_s } = residualOperation(gfci, 0.02);
  expect(earliest_s).toBeCloseTo(0.025, 4);
  expect(latest_s).toBeCloseTo(1, 12);
  expect(at_s ** 2).toBeCloseTo(earliest_s * latest_s, 12);
});

test.each([NaN, -0.01, Infinity])('a residual current of %d A is refused by name', (amperes) => {
  expect(() => residualOperation(gfci, amperes)).toThrow(`residual current is ${amperes}`);
});
