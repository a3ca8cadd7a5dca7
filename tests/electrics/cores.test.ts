import { describe, expect, test } from 'vitest';
import { balance, complex, createSolver, div, phasor } from '../../src/electrics/index.ts';
import type { Complex, Core, Network, Solution, Values } from '../../src/electrics/index.ts';
import { farFromExact } from '../oracle/farFromExact.ts';
import { rows } from './anyNetwork.ts';

/** One branch: name, from, to, ohm, and as named volts of a source or amperes beside. */
type Line = readonly [
  name: string,
  from: number,
  to: number,
  ohm: Complex | number,
  source?: { V?: number; A?: number },
];

interface Solved {
  readonly network: Network;
  readonly values: Values;
  readonly solution: Solution;
  readonly ampere: (name: string) => Complex;
  readonly volt: (node: number) => Complex;
}

function solved(lines: readonly Line[], cores: readonly Core[] = []): Solved {
  const size = 1 + Math.max(...lines.flatMap(([, from, to]) => [from, to]));
  const network: Network = {
    nodes: Array.from({ length: size }, (_, n) => (n === 0 ? 'earth' : `node ${n}`)),
    branches: lines.map(([name, from, to]) => ({ name, from, to })),
    windings: [],
    cores,
  };
  const values: Values = {
    impedance: rows(lines.map(([, , , z]) => (typeof z === 'number' ? [z] : [z.re, z.im]))),
    emf: rows(lines.map(([, , , , source]) => [source?.V ?? 0])),
    injection: rows(lines.map(([, , , , source]) => [source?.A ?? 0])),
    coupling: [],
  };
  const solution = createSolver(network).solve(values);
  expect(farFromExact({ network, values }, solution, 1e-12)).toBeLessThanOrEqual(1);
  const { kirchhoff, ohm, power } = balance(network, values, solution);
  expect(Math.max(kirchhoff, ohm, power)).toBeLessThan(1e-12);
  return {
    network,
    values,
    solution,
    ampere: (name) =>
      phasor(
        solution.amperes,
        network.branches.findIndex((branch) => branch.name === name),
      ),
    volt: (node) => phasor(solution.volts, node),
  };
}

describe('windings on an ideal core', () => {
  const transformer = (load: Complex | number): Solved =>
    solved(
      [
        ['source', 0, 1, 0.5, { V: 1000 }],
        ['primary', 1, 0, 0.25],
        ['secondary', 2, 0, 0.0625],
        ['load', 2, 0, load],
      ],
      [{ branches: [1, 2], turns: [10, 1] }],
    );

  test('a load behind 10:1 is seen as a hundred times its ohms, leakages added where they are', () => {
    const { ampere } = transformer(complex(3, 4));
    // By hand: I = 1000 / (0.5 + 0.25 + 100·(0.0625 + 3 + 4j)), and ten times it in the load.
    const want = div(complex(1000), complex(0.75 + 306.25, 400));
    expect(ampere('primary').re).toBeCloseTo(want.re, 10);
    expect(ampere('primary').im).toBeCloseTo(want.im, 10);
    expect(ampere('secondary').re).toBeCloseTo(-10 * want.re, 9);
    expect(ampere('load').re).toBeCloseTo(10 * want.re, 9);
  });

  test('with next to no load there is a tenth of the volts and next to no current', () => {
    const { ampere, volt } = transformer(1e9);
    expect(volt(2).re).toBeCloseTo(100, 6);
    expect(ampere('primary').re / 1e-8).toBeCloseTo(1, 6);
  });

  test('a shorted secondary leaves the leakages alone: 1000 V over 0.75 Ω and 100 × 0.0725 Ω', () => {
    const { ampere } = transformer(0.0100000001);
    expect(ampere('primary').re).toBeCloseTo(1000 / (0.75 + 100 * 0.0725000001), 4);
  });

  test('a secondary that only a gigaohm ties to earth keeps its leakage current to the last digit', () => {
    const { ampere } = solved(
      [
        ['source', 0, 1, 0.01, { V: 230 }],
        ['primary', 1, 0, 0.01],
        ['secondary', 2, 3, 0.001],
        ['load', 2, 3, 10],
        ['insulation', 3, 0, 1e9],
        ['touch', 2, 0, 2e9],
      ],
      [{ branches: [1, 2], turns: [230, -24] }],
    );
    expect(ampere('touch').re / (24 / 3e9)).toBeCloseTo(-1, 2);
    expect(ampere('touch').re).toBeCloseTo(-ampere('insulation').re, 20);
  });

  test('of a delta–wye bank the delta keeps the third part of a line-to-neutral load', () => {
    // Three cores; a load on one wye winding draws through one delta winding only, so from two lines.
    const lines: Line[] = [
      ['a', 0, 1, 0.01, { V: 100 }],
      ['b', 0, 2, 0.01, { V: -50 }],
      ['c', 0, 3, 0.01, { V: -50 }],
      ['ab', 1, 2, 0.02],
      ['bc', 2, 3, 0.02],
      ['ca', 3, 1, 0.02],
      ['wye a', 4, 0, 0.02],
      ['wye b', 5, 0, 0.02],
      ['wye c', 6, 0, 0.02],
      ['load', 4, 0, 5],
      ['leak b', 5, 0, 1e9],
      ['leak c', 6, 0, 1e9],
    ];
    const cores = [3, 4, 5].map((delta) => ({ branches: [delta, delta + 3], turns: [1, 1] }));
    const { ampere } = solved(lines, cores);
    const load = ampere('load').re;
    expect(load).toBeGreaterThan(25);
    expect(ampere('a').re).toBeCloseTo(load, 6);
    expect(ampere('b').re).toBeCloseTo(-load, 6);
    expect(ampere('c').re).toBeCloseTo(0, 6);
  });

  test('three windings share the ampere-turns', () => {
    const { ampere } = solved(
      [
        ['source', 0, 1, 0.1, { V: 240 }],
        ['primary', 1, 0, 0.1],
        ['upper', 2, 3, 0.05],
        ['lower', 3, 4, 0.05],
        ['mid', 3, 0, 1e-3],
        ['load upper', 2, 3, 2],
        ['load lower', 3, 4, 8],
      ],
      [{ branches: [1, 2, 3], turns: [2, 1, 1] }],
    );
    const sum = 2 * ampere('primary').re + ampere('upper').re + ampere('lower').re;
    expect(sum).toBeCloseTo(0, 10);
    expect(ampere('load upper').re / ampere('load lower').re).toBeCloseTo(8.05 / 2.05, 7);
    expect(ampere('mid').re).toBeCloseTo(0, 10);
  });

  test.each([
    ['one winding alone', [{ branches: [1], turns: [1] }], 'the core of "primary" needs two windings or more'],
    ['turns missing', [{ branches: [1, 2], turns: [1] }], 'the core of "primary" and "secondary" has 1 turns'],
    [
      'no turns at all',
      [{ branches: [1, 2], turns: [1, 0] }],
      '"secondary" has a winding of 0 turns; write 1e-6 to 1e6',
    ],
    ['a branch that is not there', [{ branches: [1, 7], turns: [1, 1] }], 'core 0 names branch 7'],
    [
      'a branch on two cores',
      [
        { branches: [1, 2], turns: [1, 1] },
        { branches: [2, 0], turns: [1, 1] },
      ],
      'branch "secondary" is wound twice',
    ],
  ] as const)('%s is refused by name', (_, cores, message) => {
    const lines: Line[] = [
      ['source', 0, 1, 1, { V: 1 }],
      ['primary', 1, 0, 1],
      ['secondary', 1, 0, 1],
    ];
    expect(() => solved(lines, cores)).toThrow(message);
  });

  test('windings that all hang open are refused by name, since nothing sets their volts', () => {
    const network: Network = {
      nodes: ['earth', 'one', 'other'],
      branches: [
        { name: 'primary', from: 1, to: 0 },
        { name: 'secondary', from: 2, to: 0 },
      ],
      windings: [],
      cores: [{ branches: [0, 1], turns: [2, 1] }],
    };
    const values: Values = { impedance: rows([[1], [1]]), emf: rows([[5], [0]]), coupling: [] };
    expect(() => createSolver(network).solve(values)).toThrow(
      'nothing sets the volts of the windings "primary" and "secondary" on one core; give one of them a load or a leakage',
    );
  });

  test('leakages that cancel are refused by name', () => {
    const network: Network = {
      nodes: ['earth', 'one'],
      branches: [
        { name: 'primary', from: 1, to: 0 },
        { name: 'secondary', from: 1, to: 0 },
      ],
      windings: [],
      cores: [{ branches: [0, 1], turns: [1, 1] }],
    };
    const values: Values = {
      impedance: rows([
        [0, 2],
        [0, -2],
      ]),
      emf: rows([[5], [0]]),
      coupling: [],
    };
    expect(() => createSolver(network).solve(values)).toThrow(
      'the leakages of the windings "primary" and "secondary" on one core cancel',
    );
  });
});

describe('current sources', () => {
  test('two into a divider add up, and each divides by the conductances', () => {
    const { ampere, volt } = solved([
      ['first', 0, 1, 1e9, { A: 3 }],
      ['second', 0, 2, 1e9, { A: 2 }],
      ['left', 1, 0, 2],
      ['between', 1, 2, 4],
      ['right', 2, 0, 4],
    ]);
    // By hand: (1/2 + 1/4)·V1 − V2/4 = 3 and −V1/4 + (1/4 + 1/4)·V2 = 2, so V1 = 6.4 V and V2 = 7.2 V.
    expect(volt(1).re).toBeCloseTo(6.4, 7);
    expect(volt(2).re).toBeCloseTo(7.2, 7);
    expect(ampere('left').re).toBeCloseTo(3.2, 7);
    expect(ampere('between').re).toBeCloseTo(-0.2, 7);
    expect(ampere('right').re).toBeCloseTo(1.8, 7);
    expect(ampere('first').re).toBeCloseTo(3, 7);
  });

  test('into an island that hangs on a gigaohm of leakage it raises what Ohm says, and nothing is lost inside', () => {
    const { ampere, volt } = solved([
      ['earthed', 0, 1, 1, { V: 10 }],
      ['load', 1, 0, 9],
      ['harmonic', 0, 2, 1e9, { A: 1e-6 }],
      ['copper', 2, 3, 1e-4],
      ['leak', 3, 0, 1e9],
      ['inside', 2, 3, 2, { A: 5 }],
    ]);
    // 1 µA into two gigaohms in parallel.
    expect(volt(3).re).toBeCloseTo(500, 3);
    expect(ampere('leak').re / 5e-7).toBeCloseTo(1, 6);
    expect(ampere('copper').re + ampere('inside').re).toBeCloseTo(5e-7, 11);
    expect(ampere('inside').re).toBeCloseTo(5 - 5e-4 / (2 + 1e-4), 6);
  });

  test('a Norton source is the Thévenin source of its ohms', () => {
    const norton = solved([
      ['source', 0, 1, 0.5, { A: 20 }],
      ['load', 1, 0, 4.5],
    ]);
    const thevenin = solved([
      ['source', 0, 1, 0.5, { V: 10 }],
      ['load', 1, 0, 4.5],
    ]);
    expect(norton.ampere('source').re).toBeCloseTo(thevenin.ampere('source').re, 12);
    expect(norton.volt(1).re).toBeCloseTo(9, 12);
  });

  test('one that is no number is refused by name', () => {
    expect(() => solved([['harmonic', 0, 1, 1, { A: NaN }]])).toThrow(
      'branch "harmonic": its injection is NaN + j0 A; write one between 1e-50 and 1e50 A, or 0',
    );
  });
});
