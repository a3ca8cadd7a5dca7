import { expect, test } from 'vitest';
import { totalImpedance_ohm } from '../../src/body/index.ts';
import type { Skin } from '../../src/body/index.ts';
import { bodyTable_ohm, byCurrent, touchVoltages_V } from '../../src/body/impedance.ts';

const skins: readonly Skin[] = ['dry', 'water-wet', 'salt-wet'];
const percentiles = [5, 50, 95] as const;

test('every column falls with voltage, while the current rises at every row', () => {
  for (const skin of skins) {
    for (const percentile of percentiles) {
      const column = bodyTable_ohm[skin][percentile];
      expect(column).toHaveLength(touchVoltages_V.length);
      for (let row = 1; row < column.length; row++) {
        expect(column[row]).toBeLessThanOrEqual(column[row - 1] ?? NaN);
      }
      const { from_A } = byCurrent(percentile, skin);
      for (let piece = 1; piece < from_A.length; piece++) {
        expect(from_A[piece]).toBeGreaterThan(from_A[piece - 1] ?? NaN);
      }
    }
  }
});

// The standard says so of its own tables: water makes no difference from 125 V, salt water none from 400 V.
test('dry and water-wet skin agree from 125 V, all three from 400 V', () => {
  for (const percentile of percentiles) {
    touchVoltages_V.forEach((volts, row) => {
      if (volts >= 125) expect(bodyTable_ohm['water-wet'][percentile][row]).toBe(bodyTable_ohm.dry[percentile][row]);
      if (volts >= 400) expect(bodyTable_ohm['salt-wet'][percentile][row]).toBe(bodyTable_ohm.dry[percentile][row]);
    });
  }
});

test('below 25 V the impedance is held, the careful side; above 1000 V only the inside is left', () => {
  const body = { percentile: 50, skin: 'dry' } as const;
  expect([0, 1, 24.9].map((volts) => totalImpedance_ohm(volts, body))).toEqual([3250, 3250, 3250]);
  expect([1000.1, 1e5, Infinity].map((volts) => totalImpedance_ohm(volts, body))).toEqual([775, 775, 775]);
});
