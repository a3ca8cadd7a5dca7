import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coldOperation, letThrough_A2s, peakFactor, residualOperation } from '../../src/protection/index.ts';
import type { DeviceSettings, Seen, Tolerance } from '../../src/protection/index.ts';

const TOLERANCES: readonly Tolerance[] = ['fast', 'middle', 'slow'];

const adjustable = {
  family: 'adjustable',
  rating_A: 400,
  longDelay_s: 10,
  short: { pickup_A: 2000, delay_s: 0.3, i2t: false },
  instantaneous_A: 6000,
  ground: { pickup_A: 200, delay_s: 0.4, i2t: true },
} as const;
const points = {
  family: 'points',
  rating_A: 20,
  opens: [
    { amperes: 27, within_s: 3600 },
    { amperes: 40, within_s: 120 },
  ],
  magneticFrom_A: 100,
  magneticTo_A: 200,
} as const;
const rcbo = {
  family: 'iec60898-c',
  rating_A: 16,
  residual: { family: 'iec61008', residual_A: 0.03, type: 'A', selective: false },
} as const;
const all: readonly DeviceSettings[] = [
  adjustable,
  points,
  rcbo,
  { family: 'gg', rating_A: 32 },
  { family: 'gg', rating_A: 6 },
  { family: 'gg', rating_A: 45 },
  { family: 'gg', rating_A: 315 },
  { family: 'ul248-time-delay', rating_A: 100 },
  { family: 'ul489', rating_A: 20, residual: { family: 'ul943-class-a' } },
  { family: 'iec61008', residual_A: 0.3, type: 'B', selective: true },
  { family: 'iec61008', residual_A: 0.03, type: 'AC', selective: false },
  { family: 'equipment', residual_A: 0.03 },
  { family: 'insulation-monitor', threshold_ohm: 50_000 },
];

const logarithmic = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp);
const seen: fc.Arbitrary<Seen> = fc.record({
  amperes: fc.oneof(fc.constant(0), logarithmic(0.1, 1e5)),
  residual_A: fc.oneof(fc.constant(0), logarithmic(1e-4, 1e4)),
  peakFactor: fc.double({ min: 1, max: 2, noNaN: true }),
  insulation_ohm: logarithmic(1, 1e9),
  loop_ohm: logarithmic(0.01, 1e9),
  frequency_Hz: fc.constantFrom(50, 60, 150, 400, 1000),
  content: fc.constantFrom('sinusoidal', 'pulsating', 'composite', 'smooth'),
  smoothDc_A: fc.constantFrom(0, 0.005, 0.02),
});

describe('every device', () => {
  test('opens between the earliest and the latest of its kind, whatever it sees', () => {
    fc.assert(
      fc.property(fc.constantFrom(...all), seen, (settings, what) => {
        for (const tolerance of TOLERANCES) {
          const { at_s, earliest_s, latest_s, region, multiple } = coldOperation(settings, what, tolerance);
          expect(earliest_s).toBeLessThanOrEqual(at_s * (1 + 1e-12));
          expect(at_s).toBeLessThanOrEqual(latest_s * (1 + 1e-12));
          expect(earliest_s).toBeGreaterThan(0);
          expect(region === 'none').toBe(at_s === Infinity);
          expect(Number.isFinite(multiple)).toBe(true);
        }
      }),
      { numRuns: 2000, seed: 489 },
    );
  });

  test('opens no later at more of everything', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        seen,
        logarithmic(1, 30),
        fc.constantFrom(...TOLERANCES),
        (settings, what, by, tolerance) => {
          const more = { ...what, amperes: what.amperes * by, residual_A: (what.residual_A ?? 0) * by };
          const [less_s, more_s] = [what, more].map((one) => coldOperation(settings, one, tolerance).at_s);
          expect(more_s).toBeLessThanOrEqual((less_s ?? 0) * (1 + 1e-12));
        },
      ),
      { numRuns: 2000, seed: 269 },
    );
  });
});

describe('an adjustable breaker', () => {
  const at = (amperes: number, more: Partial<Seen> = {}, tolerance: Tolerance = 'middle') =>
    coldOperation(adjustable, { amperes, ...more }, tolerance);

  test('holds 1.05 times its rating and acts from 1.30 (IEC 60947-2 table 6, from memory)', () => {
    for (const tolerance of TOLERANCES) {
      expect(at(1.05 * 400, {}, tolerance).region).toBe('none');
      expect(at(1.3 * 400, {}, tolerance).region).toBe('long-time');
    }
  });

  test('takes its delay at six times the rating, and four times that at three', () => {
    const { short: _, instantaneous_A: __, ground: ___, ...long } = adjustable;
    const time = (multiple: number) => coldOperation(long, { amperes: multiple * 400 }).at_s;
    expect(time(6) / 10).toBeCloseTo(1, 1);
    expect(time(3) / time(6)).toBeCloseTo(4, 9);
  });

  test('waits with its short-time element and does not with its instantaneous one', () => {
    const short = at(4000);
    expect(short.region).toBe('short-time');
    expect(short.earliest_s).toBeGreaterThan(0.25);
    expect(short.latest_s).toBeLessThan(0.4);
    expect(at(7300)).toMatchObject({ region: 'magnetic', certain: true });
    expect(at(7300).latest_s).toBeLessThan(0.06);
  });

  test('acts on the sum of its conductors long before the current of any one is too much', () => {
    expect(at(300, { residual_A: 0 }).region).toBe('none');
    expect(at(300, { residual_A: 300 }).region).toBe('ground-fault');
    // I²t in: below the rating it waits longer, above it no less than its delay.
    expect(at(300, { residual_A: 300 }).at_s).toBeGreaterThan(at(300, { residual_A: 400 }).at_s);
    expect(at(500, { residual_A: 2000 }).at_s).toBeCloseTo(at(500, { residual_A: 500 }).at_s, 12);
  });

  test('with an element off does nothing of that sort', () => {
    const { instantaneous_A: _, ...delayed } = adjustable;
    expect(coldOperation(delayed, { amperes: 50_000 }).region).toBe('short-time');
  });

  test.each([
    [{ ...adjustable, rating_A: 0 }, 'rating_A'],
    [{ ...adjustable, longDelay_s: NaN }, 'longDelay_s'],
    [{ ...adjustable, instantaneous_A: -1 }, 'instantaneous_A'],
  ])('with a setting that is none is refused by name', (settings, named) => {
    expect(() => coldOperation(settings, { amperes: 1 })).toThrow(named);
  });
});

describe('the first peak', () => {
  test('can carry a fast instantaneous element over its setting, never a slow one', () => {
    // 4600 A, below the 4800 A at which a fast one set to 6000 A acts on a steady wave.
    const steady = coldOperation(adjustable, { amperes: 4600 }, 'fast');
    const offset = { amperes: 4600, peakFactor: peakFactor(10) };
    expect(steady.region).toBe('short-time');
    expect(coldOperation(adjustable, offset, 'fast').region).toBe('magnetic');
    expect(coldOperation(adjustable, offset, 'slow').region).toBe('short-time');
  });

  test('does the same to the coil of a breaker: 4.2 times its rating at κ 1.75 is more than five', () => {
    const breaker = { family: 'ul489', rating_A: 20 } as const;
    expect(coldOperation(breaker, { amperes: 84 }, 'fast').region).toBe('thermal');
    expect(coldOperation(breaker, { amperes: 84, peakFactor: 1.75 }, 'fast').region).toBe('magnetic');
    expect(coldOperation(breaker, { amperes: 84, peakFactor: 1.75 }).region).toBe('thermal');
  });

  test('is at most twice that of the steady wave, and nearly none in a loop without reactance', () => {
    expect(peakFactor(Infinity)).toBe(2);
    expect(peakFactor(0)).toBe(1.02);
    expect(() => peakFactor(-1)).toThrow('X/R is -1');
  });
});

describe('a fuse', () => {
  test('lets the same I²t through at any large current', () => {
    const fuse = { family: 'gg', rating_A: 63 } as const;
    // IEC 60269-2, from memory: melts from 9000, clears by 21200 A²s.
    for (const amperes of [3000, 10_000, 50_000]) {
      expect(letThrough_A2s(fuse, amperes).least).toBeCloseTo(9000, 6);
      expect(letThrough_A2s(fuse, amperes).most).toBeCloseTo(21200, 6);
    }
  });

  test('between two sizes of the table behaves between them', () => {
    const latest = (rating_A: number) => coldOperation({ family: 'gg', rating_A }, { amperes: 300 }).latest_s;
    expect(latest(45)).toBeGreaterThan(latest(40));
    expect(latest(45)).toBeLessThan(latest(50));
  });

  test('of 0 A is refused', () => {
    expect(() => coldOperation({ family: 'gg', rating_A: 0 }, { amperes: 1 })).toThrow('A fuse is rated 0 A');
  });
});

describe('a device of which only the sheet is known', () => {
  test('holds what it holds, opens within what is printed and at once where that is printed', () => {
    const at = (amperes: number, tolerance: Tolerance) => coldOperation(points, { amperes }, tolerance);
    for (const tolerance of TOLERANCES) {
      expect(at(20, tolerance).region).toBe('none');
      expect(at(27, tolerance).at_s).toBeLessThanOrEqual(3600);
      expect(at(40, tolerance).at_s).toBeLessThanOrEqual(120);
      expect(at(200, tolerance).region).toBe('magnetic');
    }
    expect(at(26, 'slow').region).toBe('none');
    expect(at(26, 'slow').certain).toBe(false);
    expect(at(40, 'slow').at_s).toBe(120);
    expect(at(99, 'fast').region).toBe('published');
    expect(at(151, 'middle')).toMatchObject({ region: 'magnetic', certain: false, latest_s: 120 });
  });

  test.each([
    [[], 'opens at no more'],
    [[{ amperes: 15, within_s: 5 }], 'opens at no more'],
    [
      [
        { amperes: 30, within_s: 5 },
        { amperes: 40, within_s: 6 },
      ],
      'not in order',
    ],
  ])('whose points are none is refused', (opens, said) => {
    expect(() => coldOperation({ ...points, opens }, { amperes: 1 })).toThrow(said);
  });
});

describe('what a residual device makes of waves', () => {
  const rcd = (type: 'AC' | 'A' | 'F' | 'B') =>
    ({ family: 'iec61008', residual_A: 0.03, type, selective: false }) as const;
  const sees = (type: 'AC' | 'A' | 'F' | 'B', more: Partial<Seen>, tolerance: Tolerance = 'slow') =>
    residualOperation(rcd(type), 0.3, tolerance, more).region === 'residual';

  test('smooth d.c. is owed by type B alone, pulsating by all but AC, a mixture of frequencies by F and B', () => {
    const types = ['AC', 'A', 'F', 'B'] as const;
    expect(types.map((type) => sees(type, { content: 'smooth' }))).toEqual([false, false, false, true]);
    expect(types.map((type) => sees(type, { content: 'pulsating' }))).toEqual([false, true, true, true]);
    expect(types.map((type) => sees(type, { content: 'composite' }))).toEqual([false, false, true, true]);
    expect(types.map((type) => sees(type, {}))).toEqual([true, true, true, true]);
  });

  test('where nothing is owed it may still act, and that is not certain', () => {
    const { earliest_s, latest_s, certain } = residualOperation(rcd('AC'), 0.3, 'middle', { content: 'pulsating' });
    expect(earliest_s).toBeLessThan(0.1);
    expect(latest_s).toBe(Infinity);
    expect(certain).toBe(false);
  });

  test('20 mA of smooth d.c. beside it blinds every type but B to a plain fault', () => {
    const blind = { smoothDc_A: 0.02 };
    expect([sees('AC', blind), sees('A', blind), sees('F', blind), sees('B', { smoothDc_A: 0.012 })]).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });

  test('a 1 kHz leak takes fourteen times IΔn of type B, and nothing of it is owed by type A', () => {
    const at = (amperes: number) => residualOperation(rcd('B'), amperes, 'slow', { frequency_Hz: 1000 }).region;
    expect([at(0.4), at(0.43)]).toEqual(['none', 'residual']);
    expect(sees('A', { frequency_Hz: 1000 })).toBe(false);
  });

  test('a selective one outlasts a general one downstream at any current', () => {
    const upstream = { family: 'iec61008', residual_A: 0.3, type: 'A', selective: true } as const;
    for (const amperes of [0.16, 0.3, 0.6, 1.5, 20, 400]) {
      const slowest = residualOperation(rcd('A'), amperes, 'slow').at_s;
      expect(slowest).toBeLessThan(residualOperation(upstream, amperes, 'fast').at_s);
    }
  });

  test('equipment protection at 30 mA lets pass for ever what a class A device opens on', () => {
    expect(residualOperation({ family: 'equipment', residual_A: 0.03 }, 0.012, 'fast').region).toBe('none');
    expect(residualOperation({ family: 'ul943-class-a' }, 0.012, 'slow').region).toBe('residual');
  });
});

describe('a class A device with its neutral grounded downstream', () => {
  const at = (loop_ohm: number, tolerance: Tolerance) =>
    residualOperation({ family: 'ul943-class-a' }, 0, tolerance, { loop_ohm });

  test('opens with no residual current at all', () => {
    for (const tolerance of TOLERANCES) expect(at(0.4, tolerance).region).toBe('grounded-neutral');
    expect(at(0.4, 'slow').at_s).toBeCloseTo(5.594, 3);
  });

  test('lets a link of more than 4 Ω be, and may or may not act between 2 and 4', () => {
    for (const tolerance of TOLERANCES) expect(at(4.1, tolerance).region).toBe('none');
    expect(at(3, 'fast').certain).toBe(false);
    expect(at(1000, 'fast').certain).toBe(true);
  });
});

test('an RCBO opens on whichever of its two is first', () => {
  expect(coldOperation(rcbo, { amperes: 10, residual_A: 0.1 }).region).toBe('residual');
  expect(coldOperation(rcbo, { amperes: 30, residual_A: 0 }).region).toBe('thermal');
  expect(coldOperation(rcbo, { amperes: 400, residual_A: 0 }).region).toBe('magnetic');
  expect(coldOperation(rcbo, { amperes: 10, residual_A: 0.005 })).toMatchObject({ region: 'none', certain: true });
});

test('an insulation monitor warns below its setting, with a tolerance of 15 %, and within ten seconds', () => {
  const monitor = { family: 'insulation-monitor', threshold_ohm: 50_000 } as const;
  const at = (insulation_ohm: number, tolerance: Tolerance) =>
    coldOperation(monitor, { amperes: 0, insulation_ohm }, tolerance);
  for (const tolerance of TOLERANCES) {
    expect(at(58_000, tolerance).region).toBe('none');
    expect(at(42_000, tolerance).region).toBe('insulation');
    expect(at(0, tolerance).latest_s).toBe(10);
  }
  expect(at(45_000, 'middle').certain).toBe(false);
  expect(() => coldOperation({ ...monitor, threshold_ohm: 0 }, { amperes: 0 })).toThrow('set to 0');
});
