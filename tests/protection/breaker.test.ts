import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakerAfter, overcurrentBand, breakerOperation } from '../../src/protection/index.ts';
import type { BreakerSettings, Tolerance } from '../../src/protection/index.ts';

const bakery: BreakerSettings = { family: 'ul489', rating_A: 20 };
const cold = { heat: 0 };

const tolerance = fc.constantFrom<Tolerance>('fast', 'middle', 'slow');
const breaker: fc.Arbitrary<BreakerSettings> = fc.record({
  family: fc.constantFrom('ul489', 'iec60898-b', 'iec60898-c', 'iec60898-d'),
  rating_A: fc.constantFrom(6, 13, 15, 20, 32, 40, 63, 100, 125, 200, 600),
});
const multiple = fc.oneof(
  fc.double({ min: 0, max: 3, noNaN: true }),
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.constantFrom(1, 1.13, 1.35, 1.45, 2, 3, 5, 10, 20),
);
const heat = fc.double({ min: 0, max: 4, noNaN: true });
const seconds = fc.double({ min: 0, max: 5000, noNaN: true });

describe('the magnetic band of a 20 A breaker that may act from 5 and must act at 20 times', () => {
  test('at 5 times, 100 A, only the bimetal opens it', () => {
    expect(breakerOperation(bakery, cold, 100, 'fast')).toMatchObject({ region: 'thermal', certain: true });
    expect(overcurrentBand(bakery, 5).earliest_s).toBeGreaterThan(1);
  });
  test('between, the earliest is magnetic, the latest thermal, and nothing is certain', () => {
    const operation = breakerOperation(bakery, cold, 150, 'middle');
    expect(operation.certain).toBe(false);
    expect(operation.earliest_s).toBe(1 / 120);
    expect(operation.latest_s).toBeGreaterThan(5);
    expect(operation.multiple).toBe(7.5);
  });
  test.each([
    ['fast', 101, 99.9],
    ['middle', 200, 199.9],
    ['slow', 400, 399.9],
  ] as const)('a %s device acts magnetically from %d A, not yet at %d A', (which, acts_A, not_A) => {
    expect(breakerOperation(bakery, cold, acts_A, which).region).toBe('magnetic');
    expect(breakerOperation(bakery, cold, not_A, which).region).toBe('thermal');
  });
  test('at 20 times, 400 A, every device opens within one cycle', () => {
    const operation = breakerOperation(bakery, cold, 400, 'slow');
    expect(operation).toMatchObject({ region: 'magnetic', certain: true, multiple: 20 });
    expect(operation.earliest_s).toBeCloseTo(0.5 / 60, 12);
    expect(operation.latest_s).toBeCloseTo(1 / 60, 12);
    expect(breakerOperation(bakery, cold, 400, 'middle').at_s).toBeCloseTo(0.75 / 60, 12);
  });
  test('a known band replaces the careful one', () => {
    const known: BreakerSettings = { ...bakery, magneticFrom: 8, magneticTo: 9 };
    expect(breakerOperation(known, cold, 160, 'fast').region).toBe('thermal');
    expect(breakerOperation(known, cold, 180, 'slow')).toMatchObject({ region: 'magnetic', certain: true });
    expect(breakerOperation({ ...bakery, magneticFrom: 8 }, cold, 159, 'fast').region).toBe('thermal');
    expect(breakerOperation({ ...bakery, magneticTo: 9 }, cold, 180, 'slow').region).toBe('magnetic');
    const sharp: BreakerSettings = { ...bakery, magneticFrom: 10, magneticTo: 10 };
    expect(breakerOperation(sharp, cold, 199, 'fast')).toMatchObject({ region: 'thermal', certain: true });
    expect(breakerOperation(sharp, cold, 200, 'slow')).toMatchObject({ region: 'magnetic', certain: true });
  });
});

test('an overload between what a breaker must hold and must open is not certain', () => {
  expect(breakerOperation(bakery, cold, 24, 'slow')).toMatchObject({ at_s: Infinity, region: 'none', certain: false });
  expect(breakerOperation(bakery, cold, 24, 'fast')).toMatchObject({
    latest_s: Infinity,
    region: 'thermal',
    certain: false,
  });
  expect(breakerOperation(bakery, cold, 27, 'slow')).toMatchObject({ region: 'thermal', certain: true });
});

test('a breaker warm from its load opens sooner than a cold one', () => {
  const warm = breakerAfter(bakery, cold, 19, 3600);
  expect(warm.heat).toBeCloseTo(0.95 ** 2, 6);
  expect(breakerOperation(bakery, warm, 40).at_s).toBeLessThan(0.7 * breakerOperation(bakery, cold, 40).at_s);
});

test('a breaker that is past its limit already opens as soon as its contacts can', () => {
  expect(breakerOperation(bakery, { heat: 3 }, 0, 'slow').at_s).toBeCloseTo(1 / 60, 12);
});

test('opening lies between earliest and latest, whatever the breaker, its heat and the current', () => {
  fc.assert(
    fc.property(breaker, heat, multiple, tolerance, (settings, before, times, which) => {
      const { at_s, earliest_s, latest_s, region } = breakerOperation(
        settings,
        { heat: before },
        times * settings.rating_A,
        which,
      );
      expect(earliest_s).toBeGreaterThan(0);
      expect(earliest_s).toBeLessThanOrEqual(at_s);
      expect(at_s).toBeLessThanOrEqual(latest_s);
      expect(region === 'none').toBe(at_s === Infinity);
    }),
    { numRuns: 2000, seed: 489 },
  );
});

test('more current, or more heat, never opens a breaker later', () => {
  fc.assert(
    fc.property(breaker, heat, heat, multiple, multiple, tolerance, (settings, one, other, low, high, which) => {
      const time = (state: number, times: number): number =>
        breakerOperation(settings, { heat: state }, times * settings.rating_A, which).at_s;
      const [cool, warm] = [Math.min(one, other), Math.max(one, other)];
      const [less, more] = [Math.min(low, high), Math.max(low, high)];
      expect(time(cool, more)).toBeLessThanOrEqual(time(cool, less));
      expect(time(warm, less)).toBeLessThanOrEqual(time(cool, less));
    }),
    { numRuns: 2000, seed: 60_898 },
  );
});

test('heat after two stretches at one current is the heat after both together', () => {
  fc.assert(
    fc.property(breaker, heat, multiple, seconds, seconds, tolerance, (settings, before, times, one, two, which) => {
      const amperes = times * settings.rating_A;
      const halfway = breakerAfter(settings, { heat: before }, amperes, one, which);
      const stepped = breakerAfter(settings, halfway, amperes, two, which).heat;
      const whole = breakerAfter(settings, { heat: before }, amperes, one + two, which).heat;
      expect(Math.abs(stepped - whole)).toBeLessThanOrEqual(1e-12 * (1 + before + times * times));
    }),
    { numRuns: 1000, seed: 1 },
  );
});

test('a breaker watched halfway still opens at the same instant', () => {
  fc.assert(
    fc.property(
      breaker,
      fc.double({ min: 1.5, max: 2.9, noNaN: true }),
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      tolerance,
      (settings, times, share, which) => {
        const amperes = times * settings.rating_A;
        const whole = breakerOperation(settings, cold, amperes, which).at_s;
        const halfway = breakerAfter(settings, cold, amperes, share * whole, which);
        const rest = breakerOperation(settings, halfway, amperes, which).at_s;
        expect((share * whole + rest) / whole).toBeCloseTo(1, 9);
      },
    ),
    { numRuns: 1000, seed: 2 },
  );
});

test('the drawn band is that of a cold fast and a cold slow device', () => {
  for (const times of [1, 1.2, 1.5, 3, 7, 25]) {
    const band = overcurrentBand(bakery, times);
    expect(band.earliest_s).toBe(breakerOperation(bakery, cold, 20 * times, 'fast').at_s);
    expect(band.latest_s).toBe(breakerOperation(bakery, cold, 20 * times, 'slow').at_s);
  }
});

test('without a word about the device it is one in the middle of its band', () => {
  const { at_s } = breakerOperation(bakery, cold, 40);
  expect(at_s).toBe(breakerOperation(bakery, cold, 40, 'middle').at_s);
  expect(breakerAfter(bakery, cold, 40, 10).heat).toBe(breakerAfter(bakery, cold, 40, 10, 'middle').heat);
});

test.each([
  ['a rating of zero', () => breakerOperation({ family: 'ul489', rating_A: 0 }, cold, 1), 'rated 0 A'],
  ['a rating without end', () => overcurrentBand({ family: 'ul489', rating_A: Infinity }, 1), 'rated Infinity A'],
  ['a band upside down', () => overcurrentBand({ ...bakery, magneticFrom: 12, magneticTo: 8 }, 1), 'from 12 to 8'],
  ['a current that is not a number', () => breakerOperation(bakery, cold, NaN), 'current through a breaker is NaN'],
  ['a negative current', () => breakerAfter(bakery, cold, -1, 1), 'current through a breaker is -1'],
  ['a negative time', () => breakerAfter(bakery, cold, 1, -1), '-1 s'],
  ['a negative multiple', () => overcurrentBand(bakery, -2), 'multiple of the rating is -2'],
])('%s is refused by name', (_, act, words) => {
  expect(act).toThrow(RangeError);
  expect(act).toThrow(words);
});
