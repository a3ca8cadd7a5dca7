import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depict, stripPosition, stripTime } from '../../src/depiction/index.ts';
import { anyConditions, pictured, runOf } from './pictured.ts';

test('a position on the strip names a moment, and that moment lies at that position', () => {
  fc.assert(
    fc.property(anyConditions, fc.double({ min: 0, max: 1, noNaN: true }), (conditions, position) => {
      const { strip } = depict(runOf(conditions), 0, 'iec');
      expect(stripPosition(strip, stripTime(strip, position))).toBeCloseTo(position, 9);
    }),
    { numRuns: 60, seed: 21 },
  );
});

test('later is further right', () => {
  fc.assert(
    fc.property(
      anyConditions,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (conditions, a, b) => {
        const { strip } = depict(runOf(conditions), 0, 'iec');
        if (a < b) expect(stripTime(strip, a)).toBeLessThanOrEqual(stripTime(strip, b));
      },
    ),
    { numRuns: 60, seed: 22 },
  );
});

test('the strip is whole: segments follow each other from 0 to 1 without a gap', () => {
  fc.assert(
    fc.property(anyConditions, (conditions) => {
      const { segments } = depict(runOf(conditions), 0, 'iec').strip;
      expect(segments[0]?.from).toBe(0);
      expect(segments.at(-1)?.to).toBe(1);
      segments.forEach((segment, i) => {
        expect(segment.to).toBeGreaterThan(segment.from);
        if (i > 0) expect([segment.from, segment.from_s]).toEqual([segments[i - 1]?.to, segments[i - 1]?.to_s]);
      });
    }),
    { numRuns: 40, seed: 23 },
  );
});

test('a few milliseconds of fault are wide enough to scrub in', () => {
  const { strip } = pictured(0, { 'line touches the case': 'solid' });
  const fault = strip.segments.find(({ kind }) => kind === 'fault');
  expect((fault?.to ?? 0) - (fault?.from ?? 0)).toBeGreaterThan(0.25);
  expect(strip.marks.map(({ kind }) => kind)).toEqual(['normal', 'fault', 'device']);
});

test('a fault that nothing ends is shown to the end of what is looked at', () => {
  const { strip } = pictured(0, { 'line touches the case': 'solid', 'protective conductor to its own rod': 'yes' });
  expect(strip.marks.at(-1)?.kind).toBe('end');
  expect(strip.segments.at(-1)?.to_s).toBe(runOf().horizon_s);
});
