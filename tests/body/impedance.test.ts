import { expect, test } from 'vitest';
import { totalImpedance_ohm } from '../../src/body/index.ts';
import type { Area, Limb, Skin } from '../../src/body/index.ts';
import { byCurrent } from '../../src/body/impedance.ts';
import { column, touchVoltages_V } from '../../src/body/impedanceTables.ts';

const skins: readonly Skin[] = ['dry', 'water-wet', 'salt-wet'];
const areas: readonly Area[] = ['large', 'medium', 'small'];
const places: readonly Limb[] = ['right hand', 'chest'];
const percentiles = [5, 50, 95] as const;

const kinds = areas.flatMap((area) =>
  skins.flatMap((skin) => percentiles.map((percentile) => ({ area, skin, percentile }))),
);

test('every column falls with voltage, while the current rises at every row, for alternating and direct current', () => {
  for (const { area, skin, percentile } of kinds) {
    for (const direct of [false, true]) {
      const ohms = column(percentile, skin, area, direct);
      expect(ohms).toHaveLength(touchVoltages_V.length);
      for (let row = 1; row < ohms.length; row++) expect(ohms[row]).toBeLessThanOrEqual(ohms[row - 1] ?? NaN);
      for (const limb of places) {
        const { from_A } = byCurrent(limb, percentile, skin, area, direct);
        for (let piece = 1; piece < from_A.length; piece++)
          expect(from_A[piece]).toBeGreaterThan(from_A[piece - 1] ?? NaN);
      }
    }
  }
});

test('the voltage across a limb or a place on the trunk never falls as its current rises', () => {
  for (const { area, skin, percentile } of kinds) {
    for (const limb of places) {
      const { from_A, fixed_ohm, a, d, b } = byCurrent(limb, percentile, skin, area, false);
      let last_V = 0;
      for (let amperes = 1e-4; amperes < 5; amperes *= 1.01) {
        const k = from_A.findLastIndex((from) => amperes >= from);
        const volts = amperes * ((fixed_ohm[k] ?? NaN) + (a[k] ?? NaN) / ((d[k] ?? NaN) + (b[k] ?? NaN) * amperes));
        expect(volts).toBeGreaterThan(last_V);
        last_V = volts;
      }
    }
  }
});

// The standard says so of its own tables: water makes no difference from 125 V, salt water none from 400 V, area none from there on.
test('dry and water-wet skin agree from 125 V, all three and every area from 400 V', () => {
  for (const { area, percentile } of kinds) {
    touchVoltages_V.forEach((volts, row) => {
      const ohm = (skin: Skin, of = area): number | undefined => column(percentile, skin, of, false)[row];
      if (volts >= 125) expect(ohm('water-wet')).toBe(ohm('dry'));
      if (volts >= 400) expect(ohm('salt-wet')).toBe(ohm('dry'));
      if (volts >= 400) expect(ohm('dry')).toBe(ohm('dry', 'large'));
    });
  }
});

test('a smaller contact has more impedance, and so has a direct current through dry skin at low voltage', () => {
  for (const { skin, percentile } of kinds) {
    for (const volts of [10, 60, 120, 200]) {
      const [large = NaN, medium = NaN, small = NaN] = areas.map((area) =>
        totalImpedance_ohm(volts, { percentile, skin, area }),
      );
      expect(medium).toBeGreaterThan(large);
      expect(small).toBeGreaterThan(medium);
    }
    expect(totalImpedance_ohm(60, { percentile, skin: 'dry', direct: true })).toBeGreaterThan(
      totalImpedance_ohm(60, { percentile, skin: 'dry' }),
    );
  }
});

test('below 25 V the impedance is held, the careful side; above 1000 V only the inside is left', () => {
  const body = { percentile: 50, skin: 'dry' } as const;
  expect([0, 1, 24.9].map((volts) => totalImpedance_ohm(volts, body))).toEqual([3250, 3250, 3250]);
  expect([1000.1, 1e5, Infinity].map((volts) => totalImpedance_ohm(volts, body))).toEqual([775, 775, 775]);
});
