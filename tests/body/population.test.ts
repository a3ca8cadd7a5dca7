import { describe, expect, test } from 'vitest';
import { limitsAt, population, quantile_A, severity, solveBody, together, zone } from '../../src/body/index.ts';
import type { Body, Contact, People, Tally, TouchedSource } from '../../src/body/index.ts';
import { deviate } from '../../src/body/normal.ts';

const SEED = 60_479;
const source: TouchedSource = { volts: 230, impedance_ohm: { re: 40, im: 15 }, frequency_Hz: 50 };
const alike: People = {
  touches: { 'left hand to feet': 1 },
  skins: { dry: 1 },
  areas: { large: 1 },
  shoe_ohm: { median: 1000, factor: 1 },
  floor_ohm: { median: 150, factor: 1 },
  time_s: { median: 0.4, factor: 1 },
  size: 'adult',
};
const mixed: People = {
  ...alike,
  touches: { 'left hand to feet': 2, 'right hand to feet': 5, 'both hands to feet': 1, 'hand to hand': 2 },
  skins: { dry: 6, 'water-wet': 3, 'salt-wet': 1 },
  areas: { large: 7, medium: 2, small: 1 },
  shoe_ohm: { median: 3000, factor: 30 },
  floor_ohm: { median: 150, factor: 5 },
  time_s: { median: 0.5, factor: 8 },
};
const shares = ({ zones, people }: Tally): number[] => [...zones].map((count) => count / people);

/** What one tabled body of those alike carries, solved as a star. */
function star_A(percentile: Body['percentile'], direct = false): number {
  const contacts: readonly Contact[] = [
    { limb: 'left hand', outside_ohm: 0 },
    { limb: 'feet', outside_ohm: 500 },
  ];
  const { amperes } = solveBody(
    { percentile, skin: 'dry', direct },
    contacts,
    { re: Float64Array.of(230, 0), im: new Float64Array(2) },
    { re: Float64Array.of(40, 0, 0, 150), im: Float64Array.of(15, 0, 0, 0) },
  );
  return Math.hypot(amperes.re[0] ?? NaN, amperes.im[0] ?? NaN);
}

describe('many people who touch one source', () => {
  test('have the 5, 50 and 95 % of the tables where they differ in nothing but their bodies', () => {
    const tally = population(source, alike, SEED, 0, 60_000);
    // The least impedance carries most. 512 bodies and 0.2 % bins stand for everybody.
    expect(quantile_A(tally, 0.95) / star_A(5)).toBeCloseTo(1, 2);
    expect(quantile_A(tally, 0.5) / star_A(50)).toBeCloseTo(1, 2);
    expect(quantile_A(tally, 0.05) / star_A(95)).toBeCloseTo(1, 2);
    const direct = population(
      { ...source, impedance_ohm: { re: 40, im: 15 }, frequency_Hz: 0 },
      alike,
      SEED,
      0,
      200_000,
    );
    expect(quantile_A(direct, 0.5) / star_A(50, true)).toBeCloseTo(1, 2);
  });

  test('are the same people however they are counted, and others with another seed', () => {
    const whole = population(source, mixed, SEED, 0, 30_000);
    const parts = together([
      population(source, mixed, SEED, 17_000, 30_000),
      population(source, mixed, SEED, 0, 17_000),
    ]);
    expect(parts).toEqual(whole);
    expect(whole.zones.reduce((sum, count) => sum + count)).toBe(30_000);
    expect(whole.currents.reduce((sum, count) => sum + count)).toBe(30_000);
    expect(population(source, mixed, SEED + 1, 0, 30_000).currents).not.toEqual(whole.currents);
  });

  test('another seed shifts no share by more than chance does', () => {
    const one = shares(population(source, mixed, 1, 0, 60_000));
    const other = shares(population(source, mixed, 2, 0, 60_000));
    // Three standard deviations of a difference of two shares of 60,000: 0.9 % at most.
    one.forEach((share, index) => expect(Math.abs(share - (other[index] ?? NaN))).toBeLessThan(0.009));
  });

  test('stand in the zone of the standard for their current, its way and its time', () => {
    const factors = { 'left hand to feet': 1, 'right hand to feet': 0.8, 'both hands to feet': 1, 'hand to hand': 0.4 };
    for (const touch of ['left hand to feet', 'right hand to feet', 'both hands to feet', 'hand to hand'] as const)
      for (const [volts, time_s] of [
        [2, 0.07],
        [30, 30],
        [110, 2.5],
        [230, 0.4],
        [1000, 0.012],
      ] as const) {
        const people = { ...alike, touches: { [touch]: 1 }, time_s: { median: time_s, factor: 1 } };
        const one = population({ ...source, volts }, people, SEED, 0, 4000);
        const expected = new Float64Array(6);
        // All who carry the current of a bin are in one zone, but at a boundary.
        one.currents.forEach((count, bin) => {
          const amperes = 1e-6 * Math.exp(((bin + 0.5) / 8192) * Math.log(1e8));
          expected[severity(zone(factors[touch] * amperes, time_s))]! += count;
        });
        one.zones.forEach((count, index) => expect(Math.abs(count - (expected[index] ?? NaN))).toBeLessThan(40));
      }
  });

  test('suffer more of more volts, longer times, thinner shoes and smaller bodies', () => {
    const grave = (of: Partial<People>, volts = 120): number => {
      const [, , , a = 0, b = 0, c = 0] = shares(
        population({ ...source, volts }, { ...mixed, ...of }, SEED, 0, 20_000),
      );
      return a + b + c;
    };
    const usual = grave({});
    expect(usual).toBeGreaterThan(0.05);
    expect(grave({}, 230)).toBeGreaterThan(usual);
    expect(grave({ time_s: { median: 2, factor: 8 } })).toBeGreaterThan(usual);
    expect(grave({ shoe_ohm: { median: 300, factor: 30 } })).toBeGreaterThan(usual);
    expect(grave({ size: 'child' })).toBeGreaterThan(usual);
    expect(grave({ skins: { 'salt-wet': 1 } })).toBeGreaterThan(usual);
  });

  test('those held are those above the let-go limit', () => {
    const everybody = population({ ...source, volts: 500 }, alike, SEED, 0, 1000);
    expect(everybody.held).toBe(1000);
    expect(limitsAt(50).letGo_A).toBe(0.005);
    expect(population({ ...source, volts: 1 }, alike, SEED, 0, 1000).held).toBe(0);
  });
});

test('normal deviates stand where the tables of statistics have them', () => {
  // Common tables of the normal distribution.
  expect(deviate(0.5)).toBe(0);
  expect(deviate(0.975)).toBeCloseTo(1.959964, 6);
  expect(deviate(0.95)).toBeCloseTo(1.644854, 6);
  expect(deviate(0.001)).toBeCloseTo(-3.090232, 6);
});

test.each([
  ['a source without figures', () => population({ ...source, volts: NaN }, alike, 1, 0, 1), 'NaN V'],
  ['shares of nothing', () => population(source, { ...alike, skins: {} }, 1, 0, 1), 'skins'],
  [
    'a spread the wrong way',
    () => population(source, { ...alike, time_s: { median: 1, factor: 0.5 } }, 1, 0, 1),
    '0.5',
  ],
  ['nobody', () => quantile_A(population(source, alike, 1, 0, 0), 0.5), 'nobody'],
])('%s is refused by name', (_, act, words) => {
  expect(act).toThrow(RangeError);
  expect(act).toThrow(words);
});
