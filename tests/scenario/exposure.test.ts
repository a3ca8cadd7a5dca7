import { describe, expect, test } from 'vitest';
import { limitsAt, zone } from '../../src/body/index.ts';
import { exposureAfter, untouched, zoneRises } from '../../src/scenario/exposure.ts';

const UNTOUCHED = untouched(limitsAt(60));

describe('exposure to a current that changes', () => {
  test('one steady current rises through the zones of the standard at their instants', () => {
    // IEC 60479-1: curve b at 1 s is 11 mA, c1 at 1 s 50 mA (points from memory, in the body room's table).
    expect(zoneRises(UNTOUCHED, 0.011).map((rise) => rise.zone)).toEqual(['AC-2', 'AC-3']);
    expect(zoneRises(UNTOUCHED, 0.011)[1]!.time_s).toBeCloseTo(1, 9);
    const rises = zoneRises(UNTOUCHED, 0.05);
    expect(rises.map((rise) => rise.zone)).toEqual(['AC-2', 'AC-3', 'AC-4.1', 'AC-4.2']);
    expect(rises[2]!.time_s).toBeCloseTo(1, 9);
  });

  test('a large current is in a bad zone at once', () => {
    expect(zoneRises(UNTOUCHED, 2)).toEqual([{ time_s: 0, zone: 'AC-4.3' }]);
  });

  test('cutting a current in two pieces changes nothing', () => {
    const half = exposureAfter(UNTOUCHED, 0.05, 0.4);
    expect(half).toMatchObject({ zone: zone(0.05, 0.4), time_s: 0.4 });
    expect(zoneRises(half, 0.05)[1]!.time_s).toBeCloseTo(0.6, 9);
    expect(zoneRises(half, 0.05)[1]!.zone).toBe('AC-4.1');
  });

  test('time at a larger current counts for the smaller one that follows, not the other way about', () => {
    const after = exposureAfter(UNTOUCHED, 0.1, 0.3);
    // 0.3 s at 100 mA leave 0.7 s until 50 mA has gone on for 1 s, where curve c1 is.
    expect(zoneRises(after, 0.05).find((rise) => rise.zone === 'AC-4.1')!.time_s).toBeCloseTo(0.7, 9);
    const weakFirst = exposureAfter(UNTOUCHED, 0.02, 0.3);
    expect(zoneRises(weakFirst, 0.1).find((rise) => rise.zone === 'AC-4.1')!.time_s).toBeCloseTo(0.5, 9);
  });

  test('and a larger one in between counts for the smaller one on both sides of it', () => {
    const before = exposureAfter(UNTOUCHED, 0.05, 0.3);
    const between = exposureAfter(before, 0.1, 0.1);
    expect(between.levels).toEqual([
      { heart_A: 0.1, time_s: 0.1 },
      { heart_A: 0.05, time_s: 0.4 },
    ]);
    expect(zoneRises(between, 0.05).find((rise) => rise.zone === 'AC-4.1')!.time_s).toBeCloseTo(0.6, 9);
  });

  test('a zone once reached stays, even when the current is gone', () => {
    const hurt = exposureAfter(UNTOUCHED, 0.1, 1);
    expect(hurt.zone).toBe('AC-4.2');
    expect(exposureAfter(hurt, 0.001, 5).zone).toBe('AC-4.2');
    expect(zoneRises(hurt, 0)).toEqual([{ time_s: 0, zone: 'AC-4.2' }]);
  });

  test('what is not felt is no exposure', () => {
    expect(exposureAfter(UNTOUCHED, 0.0005, 3600)).toBe(UNTOUCHED);
    expect(zoneRises(UNTOUCHED, 0.0005)).toEqual([{ time_s: 0, zone: 'AC-1' }]);
  });
});
