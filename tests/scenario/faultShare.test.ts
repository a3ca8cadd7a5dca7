import { describe, expect, test } from 'vitest';
import { createSolver } from '../../src/electrics/index.ts';
import type { Conditions } from '../../src/installation/index.ts';
import { faultShare } from '../../src/scenario/faultShare.ts';
import { steadyState } from '../../src/scenario/steadyState.ts';
import { bakery, usual } from './bakery.ts';

function both(conditions: Conditions, open: readonly string[] = []) {
  const solver = createSolver(bakery.network);
  const off = new Set(open);
  const steady = steadyState(bakery, solver, conditions, off, new Set(['baker']));
  const share = faultShare(bakery, solver, conditions, off, steady)!;
  const away = solver.solve(bakery.values({ ...conditions, 'line touches the case': 'no' }, off, steady.limb_ohm));
  return { steady, share, away };
}

function largest({ re, im }: { readonly re: Float64Array; readonly im: Float64Array }): number {
  return re.reduce((most, value, index) => Math.max(most, Math.hypot(value, im[index]!)), 0);
}

const cases: readonly Conditions[] = ['solid', '1 ohm', '100 ohm'].flatMap((fault) =>
  ['nothing', 'the case', 'the case and the sink'].flatMap((touches) =>
    ['no', 'yes'].map((open) => ({
      ...usual,
      'line touches the case': fault,
      'baker touches': touches,
      'baker wears': 'bare feet',
      'protective conductor open': open,
    })),
  ),
);

describe('what the fault alone changes', () => {
  test('it is the difference between the fault closed and the fault away, people as they stand', () => {
    for (const conditions of cases) {
      const { steady, share, away } = both(conditions);
      for (const side of ['volts', 'amperes'] as const) {
        const scale = largest(steady.solution[side]);
        for (const part of ['re', 'im'] as const)
          share.change[side][part].forEach((change, index) => {
            const difference = steady.solution[side][part][index]! - away[side][part][index]!;
            expect(Math.abs(change - difference) / scale).toBeLessThan(1e-10);
          });
      }
    }
  });

  test('a running load has no share in it', () => {
    const { share } = both({ ...usual, 'line touches the case': '100 ohm' });
    const { re, im } = share.change.amperes;
    const oven = bakery.branch('oven');
    expect(Math.hypot(re[oven]!, im[oven]!)).toBeLessThan(0.01);
    expect(share).toMatchObject({ condition: 'line touches the case', branch: bakery.branch('line touches the case') });
  });

  test('it obeys Kirchhoff on its own scale even where it is millions of times smaller than the load', () => {
    const { share, steady } = both({ ...usual, 'line touches the case': 'solid' }, ['mixer breaker']);
    const { re, im } = share.change.amperes;
    const scale = largest(share.change.amperes);
    expect(scale).toBeLessThan(1e-6 * largest(steady.solution.amperes));
    const sums = bakery.network.nodes.map(() => ({ re: 0, im: 0 }));
    bakery.network.branches.forEach(({ from, to }, branch) => {
      sums[from]!.re -= re[branch]!;
      sums[from]!.im -= im[branch]!;
      sums[to]!.re += re[branch]!;
      sums[to]!.im += im[branch]!;
    });
    for (const sum of sums) expect(Math.hypot(sum.re, sum.im) / scale).toBeLessThan(1e-9);
  });

  test('without a fault there is none', () => {
    const solver = createSolver(bakery.network);
    const steady = steadyState(bakery, solver, usual, new Set(), new Set());
    expect(faultShare(bakery, solver, usual, new Set(), steady)).toBeUndefined();
  });
});
