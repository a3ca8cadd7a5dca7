import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createSolver, dividePaths } from '../../src/electrics/index.ts';
import type { Network, Solution } from '../../src/electrics/index.ts';
import { hostile, wrongWith } from './hostile.ts';
import { rows } from './anyNetwork.ts';

/** One branch: name, from, to, ohm (R, X), volt (re, im). */
type Line = readonly [name: string, from: number, to: number, ohm: readonly number[], emf?: readonly number[]];

function solved(lines: readonly Line[]): Solution {
  const size = 1 + Math.max(...lines.flatMap(([, from, to]) => [from, to]));
  const network: Network = {
    nodes: Array.from({ length: size }, (_, n) => (n === 0 ? 'earth' : `node ${n}`)),
    branches: lines.map(([name, from, to]) => ({ name, from, to })),
    windings: [],
  };
  const impedance = rows(lines.map(([, , , ohm]) => ohm));
  return createSolver(network).solve({ impedance, emf: rows(lines.map((line) => line[4] ?? [])), coupling: [] });
}

const ampere = ({ amperes }: Solution, b: number): number => Math.hypot(amperes.re[b]!, amperes.im[b]!);

describe('silly networks get an answer', () => {
  test('a ring of superconductors, as small as impedances are made, shares what it carries evenly', () => {
    const ring = solved([
      ['source', 0, 1, [0.5, 0], [100]],
      ['one', 1, 2, [1e-6, 0]],
      ['two', 2, 3, [1e-6, 0]],
      ['three', 3, 4, [1e-6, 0]],
      ['four', 4, 1, [1e-6, 0]],
      ['load', 3, 0, [9.5, 0]],
    ]);
    expect(ampere(ring, 0)).toBeCloseTo(10, 5);
    for (const b of [1, 2, 3, 4]) expect(ampere(ring, b)).toBeCloseTo(5, 5);
  });

  test('two sources in parallel out of phase drive each other by what both have inside', () => {
    const pair = solved([
      ['one', 0, 1, [0.125, 0], [230, 0]],
      ['other', 0, 1, [0.125, 0], [-115, 199]],
    ]);
    expect(ampere(pair, 0)).toBeCloseTo(Math.hypot(345, 199) / 0.25, 9);
    expect(ampere(pair, 1)).toBeCloseTo(ampere(pair, 0), 9);
  });

  test('two sources back to back through next to nothing drive a million amperes and no mistake', () => {
    const pair = solved([
      ['one', 0, 1, [2 ** -14, 0], [230]],
      ['other', 0, 1, [2 ** -14, 0], [-230]],
    ]);
    expect(ampere(pair, 0)).toBeCloseTo(230 * 2 ** 14, 3);
  });

  test('no source means no current and no voltage', () => {
    const { volts, amperes } = solved([
      ['wire', 0, 1, [0.1, 0]],
      ['load', 1, 0, [10, 0]],
    ]);
    expect([...volts.re, ...volts.im, ...amperes.re, ...amperes.im].every((figure) => figure === 0)).toBe(true);
  });

  test('with every switch open only insulation carries', () => {
    const open = solved([
      ['source', 0, 1, [0.5, 0], [250]],
      ['switch', 1, 2, [1e9, 0]],
      ['load', 2, 0, [10, 0]],
    ]);
    expect(ampere(open, 2)).toBeCloseTo(250e-9, 13);
  });

  test('a wire of 0.1 mm² and 10 km lets a ninth of an ampere through from 400 V', () => {
    // Copper, 1/58 Ω·mm²/m, out and home.
    const wire = solved([
      ['source', 0, 1, [0.5, 0], [400]],
      ['wire', 1, 2, [20_000 / 58 / 0.1, 0]],
      ['short', 2, 0, [1e-4, 0]],
    ]);
    expect(ampere(wire, 2)).toBeCloseTo(0.116, 3);
  });
});

describe('a network of thousands of nodes', () => {
  /** A feed that goes on and on, with a load or a rung at every node. */
  const ladder = (rungs: number, ...more: readonly Line[]): readonly Line[] => [
    ['source', 0, 1, [0.1, 0], [230]],
    ...Array.from({ length: rungs }, (_, k): readonly Line[] => [
      [`span ${k}`, k + 1, k + 2, [1e-3, 1e-4]],
      [`rung ${k}`, k + 2, 0, [1e4 + k, 0]],
    ]).flat(),
    ...more,
  ];

  test('as long as twenty thousand spans is solved without a stack of calls, and its way home walked to the end', () => {
    const lines = ladder(20_000);
    const { volts, amperes } = solved(lines);
    const last = lines.length - 1;
    const ohm = lines[last]![3][0]!;
    expect(amperes.re[last]! * ohm).toBeCloseTo(volts.re[20_001]!, 9);
    const network: Network = {
      nodes: Array.from({ length: 20_000 }, (_, n) => `node ${n}`),
      branches: Array.from({ length: 20_000 }, (_, k) => ({ name: `span ${k}`, from: k, to: (k + 1) % 20_000 })),
      windings: [],
    };
    const { paths } = dividePaths(network, new Float64Array(20_000).fill(5), [0]);
    expect(paths.map((path) => [path.branches.length, path.amperes])).toEqual([[19_999, 5]]);
  });

  test('in which reactances cancel is refused by name, not solved for hours', () => {
    const [n, one, two] = [1, 2, 3].map((k) => 2001 + k) as [number, number, number];
    const lines = ladder(
      2000,
      ['coil', 2001, n, [0, 100]],
      ['capacitor', n, one, [0, -100]],
      ['bridge', 2001, one, [200, 0]],
      ['side', 2001, two, [50, 3]],
      ['other side', one, two, [70, -20]],
      ['leak', two, 0, [1000, 0]],
    );
    expect(() => solved(lines)).toThrow(/impedances nearly cancel around branch ".*", and 20\d\d loops are too many/);
  });
});

test('whatever the values, there is an answer that keeps the laws or a refusal that names a part', () => {
  fc.assert(
    fc.property(hostile, (given) => {
      expect(wrongWith(given)).toBeUndefined();
    }),
    { numRuns: 1500 },
  );
});
