import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  frequencyFactor,
  limitsAt,
  PERCEPTION_A,
  severity,
  zone,
  zoneChanges,
  zoneCurve,
  zones,
} from '../../src/body/index.ts';
import type { Zone } from '../../src/body/index.ts';

const order: readonly Zone[] = ['AC-1', 'AC-2', 'AC-3', 'AC-4.1', 'AC-4.2', 'AC-4.3'];
const amperes = fc.double({ min: Math.log(1e-5), max: Math.log(10), noNaN: true }).map(Math.exp);
const seconds = fc.double({ min: Math.log(1e-3), max: Math.log(100), noNaN: true }).map(Math.exp);

test('neither more current nor more time ever leads to a milder zone', () => {
  fc.assert(
    fc.property(amperes, amperes, seconds, seconds, (one, other, soon, late) => {
      const rank = (current: number, time: number): number => order.indexOf(zone(current, time));
      const [low, high] = [Math.min(one, other), Math.max(one, other)];
      const [short, long] = [Math.min(soon, late), Math.max(soon, late)];
      expect(rank(low, short)).toBeLessThanOrEqual(rank(high, short));
      expect(rank(low, short)).toBeLessThanOrEqual(rank(low, long));
    }),
    { numRuns: 3000, seed: 9 },
  );
});

test('the zone holds from one change to the next and is the new one from the instant of the change', () => {
  fc.assert(
    fc.property(amperes, (current) => {
      const changes = zoneChanges(current);
      let before = zone(current, 0);
      let last = 0;
      for (const { time_s, zone: next } of changes) {
        expect(time_s).toBeGreaterThan(last);
        expect(zone(current, time_s * (1 - 1e-12))).toBe(before);
        expect(zone(current, time_s)).toBe(next);
        [before, last] = [next, time_s];
      }
      expect(zone(current, 1e6)).toBe(before);
    }),
    { numRuns: 2000, seed: 10 },
  );
});

test('between two points a boundary is straight in the logarithms', () => {
  // Halfway in log time between 0.5 s, 100 mA and 1 s, 50 mA of curve c1 lies the geometric mean of the currents.
  const [instant, current] = [Math.sqrt(0.5 * 1), Math.sqrt(0.1 * 0.05)];
  const change = zoneChanges(current).find((each) => each.zone === 'AC-4.1');
  expect(change?.time_s).toBeCloseTo(instant, 12);
});

test('75 mA through the heart passes from twitching to fibrillation within about a second', () => {
  const changes = zoneChanges(0.075);
  expect(zone(0.075, 0)).toBe('AC-2');
  expect(changes.map((change) => change.zone)).toEqual(['AC-3', 'AC-4.1', 'AC-4.2']);
  expect(changes[1]?.time_s).toBeGreaterThan(0.5);
  expect(changes[1]?.time_s).toBeLessThan(1);
});

test('what is not felt stays unfelt, and 5 A is beyond every boundary at once', () => {
  expect(zoneChanges(PERCEPTION_A)).toEqual([]);
  expect(zone(PERCEPTION_A, 3600)).toBe('AC-1');
  expect(zoneChanges(5)).toEqual([]);
  expect(zone(5, 0)).toBe('AC-4.3');
});

test('a current of 4.9 mA stays below curve b for ever, 5 mA reaches it at 10 s', () => {
  expect(zoneChanges(0.0049)).toEqual([]);
  expect(zoneChanges(0.005)).toEqual([{ time_s: 10, zone: 'AC-3' }]);
});

test('boundaries fall with time and do not cross', () => {
  const curves = (['a', 'b', 'c1', 'c2', 'c3'] as const).map(zoneCurve);
  for (const points of curves) {
    expect(points).toHaveLength(12);
    points.slice(1).forEach((point, index) => {
      expect(point.amperes).toBeLessThanOrEqual(points[index]?.amperes ?? NaN);
      expect(point.time_s).toBeGreaterThan(points[index]?.time_s ?? NaN);
    });
  }
  curves.slice(1).forEach((points, below) => {
    points.forEach((point, index) => expect(point.amperes).toBeGreaterThan(curves[below]?.[index]?.amperes ?? NaN));
  });
});

test.each([
  [-0.001, 1],
  [0.1, NaN],
])('%d A for %d s is refused by name', (current, time_s) => {
  expect(() => zone(current, time_s)).toThrow(`${current} A for ${time_s} s`);
});

test('a direct current needs more than an alternating one for the same effect, and its zones bear its own name', () => {
  const direct = limitsAt(0);
  for (const amperes of [0.001, 0.01, 0.03, 0.1, 0.2, 1])
    for (const time_s of [0.01, 0.1, 0.5, 1, 5, 100]) {
      const reached = zone(amperes, time_s, direct);
      expect(reached).toMatch(/^DC-/);
      expect(severity(reached)).toBeLessThanOrEqual(severity(zone(amperes, time_s)));
    }
  expect(zone(0.002, 100, direct)).toBe('DC-1');
  expect(zone(0.16, 100, direct)).toBe('DC-4.1');
});

test('a higher frequency is felt, holds and fibrillates later, and none below 100 Hz differs from 50', () => {
  for (const effect of ['perception', 'letGo', 'fibrillation'] as const) {
    expect([15, 50, 60, 100].map((hertz) => frequencyFactor(effect, hertz))).toEqual([1, 1, 1, 1]);
    let last = 1;
    for (let hertz = 100; hertz < 20000; hertz *= 1.1) {
      const factor = frequencyFactor(effect, hertz);
      expect(factor).toBeGreaterThanOrEqual(last * (1 - 1e-12));
      last = factor;
    }
  }
  const { letGo_A, perception_A } = limitsAt(1000);
  expect(letGo_A).toBeGreaterThan(limitsAt(50).letGo_A);
  expect(perception_A).toBeGreaterThan(PERCEPTION_A);
  expect(zone(0.1, 10, limitsAt(1000))).toBe('AC-3');
});

test('a child fibrillates at two fifths of the current of 50 kg, and lets go of what everybody can', () => {
  const [child, adult] = [limitsAt(50, 'child'), limitsAt(50)];
  adult.curves.c1.forEach(({ amperes }, point) =>
    expect(child.curves.c1[point]?.amperes).toBeCloseTo(0.4 * amperes, 12),
  );
  expect(child.curves.b).toEqual(adult.curves.b);
  expect(zone(0.02, 10, child)).toBe('AC-4.2');
  expect(zone(0.02, 10)).toBe('AC-3');
});

test('zones are listed by severity, those of direct current beside those of alternating', () => {
  expect(zones.map(severity)).toEqual([0, 1, 2, 3, 4, 5, 0, 1, 2, 3, 4, 5]);
  expect(() => limitsAt(-1)).toThrow('-1 Hz');
});
