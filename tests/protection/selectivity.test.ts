import { describe, expect, test } from 'vitest';
import { coldOperation, selectivity } from '../../src/protection/index.ts';
import type { OvercurrentSettings } from '../../src/protection/index.ts';

const gG = (rating_A: number) => ({ family: 'gg', rating_A }) as const;
const miniature = (type: 'b' | 'c' | 'd', rating_A: number) => ({ family: `iec60898-${type}`, rating_A }) as const;

describe('two devices in series', () => {
  // IEC 60269-1, the 1.6 : 1 rule of gG fuses, seen second-hand.
  test.each([
    [25, 16],
    [32, 20],
    [50, 32],
    [63, 40],
    [80, 50],
    [100, 63],
    [160, 100],
    [200, 125],
  ])('gG %d A above gG %d A, 1.6 to 1, is selective at any current', (above, below) => {
    expect(selectivity(gG(above), gG(below), 50_000).kind).toBe('total');
  });

  test.each([
    [20, 16],
    [40, 32],
    [63, 50],
  ])('gG %d A above gG %d A is not', (above, below) => {
    expect(selectivity(gG(above), gG(below), 50_000).kind).not.toBe('total');
  });

  test('two equal breakers are not selective at all', () => {
    for (const settings of [miniature('c', 16), { family: 'ul489', rating_A: 20 } as const])
      expect(selectivity(settings, settings, 1000)).toEqual({ kind: 'none', upTo_A: 0 });
  });

  test('C63 above B10 is selective only up to where the larger may act at once: five times 63 A', () => {
    const found = selectivity(miniature('c', 63), miniature('b', 10), 6000);
    expect(found.kind).toBe('partial');
    expect(found.upTo_A).toBeCloseTo(315, 3);
  });

  test('a breaker that waits is selective above one that does not', () => {
    const waiting = {
      family: 'adjustable',
      rating_A: 400,
      longDelay_s: 10,
      short: { pickup_A: 2400, delay_s: 0.3, i2t: false },
    } as const;
    expect(selectivity(waiting, miniature('b', 16), 50_000).kind).toBe('total');
    // Its instantaneous element takes that away again from where a fast one may act.
    const hasty = selectivity({ ...waiting, instantaneous_A: 6000 }, miniature('b', 16), 50_000);
    expect(hasty.kind).toBe('partial');
    expect(hasty.upTo_A).toBeCloseTo(4800, 2);
  });

  test('up to the limit found the slowest downstream is open before the fastest upstream, just above it is not', () => {
    const pairs: readonly (readonly [OvercurrentSettings, OvercurrentSettings])[] = [
      [miniature('d', 100), miniature('c', 10)],
      [gG(63), miniature('b', 16)],
      [
        { family: 'ul489', rating_A: 200 },
        { family: 'ul489', rating_A: 20 },
      ],
    ];
    for (const [above, below] of pairs) {
      const { kind, upTo_A } = selectivity(above, below, 1e5);
      expect(kind).toBe('partial');
      const gap = (amperes: number) =>
        coldOperation(above, { amperes }).earliest_s - coldOperation(below, { amperes }).latest_s;
      expect(gap(upTo_A * (1 - 1e-6))).toBeGreaterThan(0);
      expect(gap(upTo_A * (1 + 1e-6))).toBeLessThanOrEqual(0);
    }
  });
});
