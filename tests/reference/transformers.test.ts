import { describe, expect, test } from 'vitest';
import { createSolver } from '../../src/electrics/index.ts';
import { compile, installationSchema, type Part } from '../../src/installation/index.ts';
import type { z } from 'zod';

type Written = z.input<typeof installationSchema>['parts'][string];
type Transformer = Omit<Extract<Part, { kind: 'centre-tapped-transformer' }>, 'secondary_V' | 'angle_deg'>;

// A bolted fault as the solver sees one: ten microohms.
const bolt = (a: string, b: string): Written => ({ kind: 'impedance', between: [a, b], resistance_ohm: 0 });

function faultAt(transformer: Transformer, from: 'x1' | 'x2', to: 'x2' | 'x3'): number {
  const build = compile(
    installationSchema.parse({
      place: 'A winding on the bench',
      region: 'north-america',
      parts: { winding: transformer, bolt: bolt(`winding.${from}`, `winding.${to}`) },
    }),
  );
  const { amperes } = createSolver(build.network).solve(build.values({}, new Set()));
  const at = build.branch('bolt');
  return Math.hypot(amperes.re[at] ?? NaN, amperes.im[at] ?? NaN);
}

describe('single-phase 120/240 V, worst-case field values printed in fuse-maker handbooks, from memory', () => {
  // %Z × 0.9 (listed units are within ±10 %), X/R 3, primary 100 000 kVA three-phase. The line-to-line column and the
  // infinite-bus columns are computed by I = V / Z from 1.5R + j1.2X and 4R + j4X.
  test.each([
    { kVA: 25, percent: 1.5, lineNeutral: 12_175, lineLine: 7_454, infiniteLN: 12_513, infiniteLL: 7_716 },
    { kVA: 37.5, percent: 1.5, lineNeutral: 18_018, lineLine: 10_993, infiniteLN: 18_769, infiniteLL: 11_574 },
    { kVA: 50, percent: 1.5, lineNeutral: 23_706, lineLine: 14_415, infiniteLN: 25_026, infiniteLL: 15_432 },
    { kVA: 75, percent: 1.5, lineNeutral: 34_639, lineLine: 20_930, infiniteLN: 37_539, infiniteLL: 23_148 },
    { kVA: 100, percent: 1.6, lineNeutral: 42_472, lineLine: 25_547, infiniteLN: 46_924, infiniteLL: 28_935 },
    { kVA: 167, percent: 1.6, lineNeutral: 66_644, lineLine: 39_535, infiniteLN: 78_362, infiniteLL: 48_322 },
  ])('$kVA kVA: $lineNeutral A to the neutral, $lineLine A between the lines', (row) => {
    const kind = 'centre-tapped-transformer';
    const infinite: Transformer = {
      kind,
      rating_VA: row.kVA * 1000,
      impedance_percent: row.percent * 0.9,
      x_over_r: 3,
    };
    const real: Transformer = { ...infinite, primary_VA: 1e8 };
    // The bolt of ten microohms is about 0.1 % of the largest loop; it is taken off the tolerance.
    const near = (amperes: number, printed: number) => expect(Math.abs(amperes / printed - 1)).toBeLessThan(0.005);
    near(faultAt(real, 'x1', 'x2'), row.lineNeutral);
    near(faultAt(real, 'x2', 'x3'), row.lineNeutral);
    near(faultAt(real, 'x1', 'x3'), row.lineLine);
    near(faultAt(infinite, 'x1', 'x2'), row.infiniteLN);
    near(faultAt(infinite, 'x1', 'x3'), row.infiniteLL);
  });
});

describe('T model of the interlaced winding (Kersting, IEEE Trans. Ind. Appl. 45(2), 2009; coefficients from memory)', () => {
  // I_LN / I_LL = 2·√(1 + q²) / √(1.5² + (1.2q)²), q = X/R, computed.
  test.each([
    [0, 1.3333],
    [0.5, 1.3841],
    [1, 1.4724],
    [1.1, 1.488],
    [1.5, 1.5388],
    [2, 1.5802],
    [3, 1.6217],
    [5, 1.6489],
    [10, 1.662],
  ])('with X/R %d the fault to the neutral is %d times the one between the lines', (x_over_r, ratio) => {
    // Small and weak, so that the bolt counts for nothing.
    const weak: Transformer = { kind: 'centre-tapped-transformer', rating_VA: 100, impedance_percent: 4, x_over_r };
    expect(faultAt(weak, 'x1', 'x2') / faultAt(weak, 'x1', 'x3')).toBeCloseTo(ratio, 4);
  });

  test('at any X/R the ratio lies in the published band from 1.33 to 1.67', () => {
    for (let x_over_r = 0; x_over_r <= 100; x_over_r += 2.5) {
      const weak: Transformer = { kind: 'centre-tapped-transformer', rating_VA: 100, impedance_percent: 4, x_over_r };
      const ratio = faultAt(weak, 'x1', 'x2') / faultAt(weak, 'x1', 'x3');
      expect(ratio).toBeGreaterThanOrEqual(1.3333);
      expect(ratio).toBeLessThanOrEqual(1.6667);
    }
  });

  test('percent, X/R and measured ohms are three ways to write one winding', () => {
    const kind = 'centre-tapped-transformer';
    const rating_VA = 25_000;
    const [r, x] = [1.345346, 1.479881];
    const base_ohm = 240 ** 2 / rating_VA;
    const ways: readonly Transformer[] = [
      { kind, rating_VA, resistance_percent: r, reactance_percent: x },
      { kind, rating_VA, impedance_percent: Math.hypot(r, x), x_over_r: x / r },
      { kind, rating_VA, resistance_ohm: (r / 100) * base_ohm, reactance_ohm: (x / 100) * base_ohm },
    ];
    const amperes = ways.map((way) => faultAt(way, 'x1', 'x2'));
    // 25 kVA, |Z| 2 %, X/R 1.1: 7 750 A to the neutral and 5 208 A between the lines, computed by hand and by ngspice 39.
    for (const each of amperes) expect(Math.abs(each / 7750 - 1)).toBeLessThan(1e-3);
    for (const way of ways) expect(Math.abs(faultAt(way, 'x1', 'x3') / 5208 - 1)).toBeLessThan(1e-3);
  });
});
