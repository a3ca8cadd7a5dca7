import { describe, expect, test } from 'vitest';
import { COLD, memoryAfter, memoryFromLongBefore, outlook, remaining } from '../../src/scenario/device.ts';
import type { SeenByDevice } from '../../src/scenario/device.ts';
import { bakery } from './bakery.ts';

function breaker(amperes: number): SeenByDevice {
  const info = bakery.devices.find(({ name }) => name === 'mixer breaker')!;
  return { info, settings: info.settings({}), amperes };
}

function gfci(residual_A: number): SeenByDevice {
  const info = bakery.devices.find(({ name }) => name === 'gfci')!;
  return { info, settings: info.settings({}), amperes: 8, residual_A };
}

describe('a device whose current changes under way', () => {
  test('asking a breaker again after some of the time leaves the rest of it', () => {
    for (const amperes of [40, 60, 99]) {
      const whole_s = outlook(breaker(amperes), COLD, 'middle').at_s;
      const memory = memoryAfter(breaker(amperes), COLD, 0.4 * whole_s, 'middle');
      expect(outlook(breaker(amperes), memory, 'middle').at_s / whole_s).toBeCloseTo(0.6, 6);
    }
  });

  test('a magnetic trip under way is not begun anew by a change that leaves it magnetic', () => {
    const first = outlook(breaker(450), COLD, 'slow');
    expect(first.region).toBe('magnetic');
    const memory = memoryAfter(breaker(450), COLD, first.at_s * 0.75, 'slow');
    expect(outlook(breaker(440), memory, 'slow').at_s).toBeCloseTo(first.at_s * 0.25, 12);
  });

  test('a GFCI takes the share of its time that is left, at the time of the new current', () => {
    const memory = memoryAfter(gfci(0.006), COLD, outlook(gfci(0.006), COLD, 'slow').at_s / 2, 'slow');
    // UL 943: T = (20 / mA)^1.43 s.
    expect(outlook(gfci(0.02), memory, 'slow').at_s).toBeCloseTo(0.5, 9);
  });

  test('an operation that is due leaves a slower device that never starts at never', () => {
    // 5.9 mA is above the middle threshold of 5 mA and below the slow one of 6 mA.
    const due = memoryAfter(gfci(0.0059), COLD, 10, 'middle');
    expect(outlook(gfci(0.0059), due, 'middle')).toMatchObject({ at_s: 0, earliest_s: 0, latest_s: Infinity });
  });

  test('a GFCI whose current falls below its threshold forgets', () => {
    const half = memoryAfter(gfci(0.02), COLD, 0.5, 'slow');
    expect(memoryAfter(gfci(0.001), half, 0.001, 'slow')[0]!.share).toBe(0);
  });

  test('a breaker cools when its current is gone', () => {
    const hot = memoryAfter(breaker(60), COLD, 5, 'middle');
    expect(memoryAfter(breaker(0), hot, 60, 'middle')[0]!.heat).toBeLessThan(hot[0]!.heat);
  });

  test('long before the run means warm for a load it holds and cold for one it does not', () => {
    expect(memoryFromLongBefore(breaker(10), 'middle')[0]!.heat).toBeCloseTo(0.25, 9);
    expect(memoryFromLongBefore(breaker(40), 'middle')).toEqual(COLD);
  });

  test('an outlook that is overdue says now, never a time before now', () => {
    const operation = outlook(gfci(0.02), COLD, 'middle');
    expect(remaining(operation, 100)).toMatchObject({ at_s: 0, earliest_s: 0, latest_s: 0, region: 'residual' });
    expect(remaining(operation, operation.at_s / 2).at_s).toBeCloseTo(operation.at_s / 2, 12);
  });
});
