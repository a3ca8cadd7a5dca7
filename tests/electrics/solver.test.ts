import fc from 'fast-check';
import { getHeapStatistics } from 'node:v8';
import { describe, expect, test } from 'vitest';
import { abs, balance, createSolver, div, FloatingError, phasor, phasors, sub } from '../../src/electrics/index.ts';
import type { Branch, Network, Values } from '../../src/electrics/index.ts';
import { solveExactly } from '../oracle/exact.ts';
import { farFromExact } from '../oracle/farFromExact.ts';
import { anyNetwork, rows } from './anyNetwork.ts';
import type { Case } from './anyNetwork.ts';

/** One branch: name, from, to, ohm (R, X), volt. */
type Line = readonly [name: string, from: number, to: number, impedance: readonly [number, number], emf_V?: number];

function circuit(lines: readonly Line[]): Case {
  const branches: Branch[] = lines.map(([name, from, to]) => ({ name, from, to }));
  const size = 1 + Math.max(...branches.flatMap(({ from, to }) => [from, to]));
  const network: Network = {
    nodes: Array.from({ length: size }, (_, n) => (n === 0 ? 'earth' : `node ${n}`)),
    branches,
    windings: [],
  };
  const values: Values = {
    impedance: rows(lines.map(([, , , impedance]) => impedance)),
    emf: rows(lines.map((line) => [line[4] ?? 0, 0])),
    coupling: [],
  };
  return { network, values };
}

describe('currents are right to the last digits that arithmetic holds', () => {
  test('in random networks from welded copper, 1e-5 ohm, to good insulation, 1e10 ohm', () => {
    fc.assert(
      fc.property(anyNetwork({ nodes: 8, links: 8 }), (given) => {
        const solver = createSolver(given.network);
        const solution = solver.solve(given.values);
        expect(farFromExact(given, solution, 1e-11)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 300 },
    );
  });

  test('on an island that nothing but 1 GΩ of insulation ties to earth', () => {
    const resistance = fc.integer({ min: 1, max: 9999 });
    const island = fc.record({
      joints: fc.array(resistance, { minLength: 4, maxLength: 4 }),
      loads: fc.array(resistance, { minLength: 3, maxLength: 3 }),
      leaks: fc.array(resistance, { minLength: 3, maxLength: 3 }),
    });
    fc.assert(
      fc.property(island, ({ joints, loads, leaks }) => {
        const given = circuit([
          ['earthed source', 0, 1, [0.01, 0.02], 230],
          ['earthed load', 1, 0, [0.1, 0]],
          ['source', 2, 3, [joints[0]! * 1e-5, 0], 120],
          ['out', 3, 4, [joints[1]! * 1e-5, joints[3]! * 1e-6]],
          ['on', 4, 5, [joints[2]! * 1e-5, 0]],
          ['load', 5, 2, [loads[0]! * 0.01, 0]],
          ['other load', 4, 2, [loads[1]! * 0.01, 0]],
          ['third load', 3, 2, [loads[2]! * 0.01, 0]],
          ['leak', 2, 0, [leaks[0]! * 1e6, 0]],
          ['far leak', 5, 0, [leaks[1]! * 1e6, 0]],
          ['leak between', 1, 4, [leaks[2]! * 1e6, 0]],
        ]);
        const solution = createSolver(given.network).solve(given.values);
        expect(farFromExact(given, solution, 1e-12)).toBeLessThanOrEqual(1);
        const exact = solveExactly(given.network, given.values);
        for (const leak of [8, 9, 10]) {
          const want = Math.hypot(exact.amperes.re[leak]!, exact.amperes.im[leak]!);
          const off = Math.hypot(
            exact.amperes.re[leak]! - solution.amperes.re[leak]!,
            exact.amperes.im[leak]! - solution.amperes.im[leak]!,
          );
          expect(off / want).toBeLessThanOrEqual(1e-9);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('in a joint of 10 µΩ that carries microamperes beside one that carries hundreds of amperes', () => {
    const given = circuit([
      ['source', 0, 1, [0.3, 0], 120],
      ['bolted', 1, 0, [1e-5, 0]],
      ['joint', 1, 2, [1e-5, 0]],
      ['leak', 2, 0, [1e3, 0]],
    ]);
    const { amperes } = createSolver(given.network).solve(given.values);
    const exact = solveExactly(given.network, given.values).amperes;
    expect(exact.re[2]).toBeLessThan(5e-6);
    expect(Math.abs(amperes.re[2]! / exact.re[2]! - 1)).toBeLessThan(1e-12);
  });

  /** A coil and a capacitor in series that cancel to 2^−bits; all to the last bit if there are more than 52. */
  const resonant = (bits: number, load: number, more: readonly Line[] = []): Case => {
    const given = circuit([
      // The node between them has the lowest number of those with two neighbours and goes first.
      ['coil', 2, 1, [0, 100]],
      ['capacitor', 1, 3, [0, -100]],
      ['source', 0, 2, [0.5, 0.25], 230],
      ['load', 3, 0, [load, 0]],
      ['bridge', 2, 3, [200, 0]],
      ['side', 2, 4, [50, 3]],
      ['other side', 3, 4, [70, -20]],
      ['leak', 4, 0, [1000, 0]],
      ...more,
    ]);
    given.values.impedance.im[1] = -100 * (1 + 2 ** -bits);
    return given;
  };

  test('where a coil and a capacitor cancel at a node, which no elimination survives without pivots', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 500 }), (bits, load) => {
        const given = resonant(bits, load);
        const solver = createSolver(given.network);
        const solution = solver.solve(given.values);
        if (bits > 52) expect(solver.effort.method).toBe('loops');
        expect(farFromExact(given, solution, 1e-9)).toBeLessThanOrEqual(1);
        // Open-circuit volts over the current through 8 ohm put there are the impedance seen, and 8 ohm.
        const more = resonant(bits, load, [['put there', 3, 0, [8, 0]]]);
        const { re: vr, im: vi } = solveExactly(given.network, given.values).volts;
        const { re: ar, im: ai } = solveExactly(more.network, more.values).amperes;
        const put = { re: ar.at(-1)!, im: ai.at(-1)! };
        const want = sub(div({ re: vr[3]!, im: vi[3]! }, put), { re: 8, im: 0 });
        const seen = solver.impedanceSeenFrom([2, 3]);
        expect(abs(sub(phasor(seen, 3), want)) / abs(want)).toBeLessThanOrEqual(1e-9);
        expect(abs(sub(phasor(seen, 1), phasor(seen, 2)))).toBeLessThanOrEqual(1e-9);
      }),
      { numRuns: 150 },
    );
  });

  test('where besides a coil and a capacitor in parallel leave a loop nothing of its own', () => {
    const given = resonant(60, 40, [
      ['capacitor across', 5, 0, [0, -100]],
      ['coil across', 5, 0, [0, 100]],
      ['feed', 3, 5, [300, 0]],
    ]);
    const solver = createSolver(given.network);
    const solution = solver.solve(given.values);
    expect(solver.effort.method).toBe('loops');
    expect(farFromExact(given, solution, 1e-11)).toBeLessThanOrEqual(1);
  });

  test('and the impedance seen through them, even while no source drives anything', () => {
    const { network, values } = resonant(60, 40);
    const solver = createSolver(network);
    solver.solve(values);
    const live = solver.impedanceSeenFrom([1, 3]);
    solver.solve({ ...values, emf: phasors(network.branches.length) });
    expect(solver.impedanceSeenFrom([1, 3])).toEqual(live);
  });
});

describe('impedance seen from nodes', () => {
  test('foretells the current of any branch put between a node and earth', () => {
    const bounds = { exponents: [-2, 4], windings: true } as const;
    fc.assert(
      fc.property(anyNetwork(bounds), fc.nat(), fc.integer({ min: 1, max: 1000 }), (given, pick, ohms) => {
        const { network, values } = given;
        const node = 1 + (pick % (network.nodes.length - 1));
        const solver = createSolver(network);
        const { volts } = solver.solve(values);
        const z = solver.impedanceSeenFrom([node]);
        const more: Network = { ...network, branches: [...network.branches, { name: 'put there', from: node, to: 0 }] };
        const solution = createSolver(more).solve({
          ...values,
          impedance: { re: longer(values.impedance.re, ohms), im: longer(values.impedance.im, 0) },
          emf: { re: longer(values.emf.re, 0), im: longer(values.emf.im, 0) },
          ...(values.injection && {
            injection: { re: longer(values.injection.re, 0), im: longer(values.injection.im, 0) },
          }),
        });
        const b = network.branches.length;
        const ir = solution.amperes.re[b]!;
        const ii = solution.amperes.im[b]!;
        const re = (z.re[0]! + ohms) * ir - z.im[0]! * ii;
        const im = (z.re[0]! + ohms) * ii + z.im[0]! * ir;
        const off = Math.hypot(re - volts.re[node]!, im - volts.im[node]!);
        expect(off).toBeLessThanOrEqual(1e-9 * (1 + Math.hypot(volts.re[node]!, volts.im[node]!)));
      }),
      { numRuns: 300 },
    );
  });

  test('between two nodes is the voltage at one for an ampere into the other', () => {
    const given = circuit([
      ['source', 0, 1, [2, 0], 10],
      ['line', 1, 2, [3, 0]],
      ['load', 2, 0, [5, 0]],
    ]);
    const solver = createSolver(given.network);
    solver.solve(given.values);
    // By hand: 2 ∥ 8 = 1.6; 5 ∥ 5 = 2.5; 1.6 V at node 1 falls to 1.6·5/8 = 1 V at node 2.
    const { re } = solver.impedanceSeenFrom([1, 2, 0]);
    [1.6, 1, 0, 1, 2.5, 0, 0, 0, 0].forEach((ohms, k) => expect(re[k]).toBeCloseTo(ohms, 12));
  });

  test('is the same however often and after whatever else it is asked', () => {
    fc.assert(
      fc.property(anyNetwork(), fc.nat(), (given, pick) => {
        const count = given.network.nodes.length;
        const nodes = [pick % count, (pick + 1) % count];
        const fresh = createSolver(given.network);
        fresh.solve(given.values);
        const asked = createSolver(given.network);
        asked.solve(given.values);
        asked.impedanceSeenFrom(given.network.nodes.map((_, node) => node));
        expect(asked.impedanceSeenFrom(nodes)).toEqual(fresh.impedanceSeenFrom(nodes));
      }),
      { numRuns: 100 },
    );
  });

  test('is refused before anything is solved and for a node that is not there', () => {
    const { network, values } = circuit([['source', 0, 1, [1, 0], 1]]);
    const solver = createSolver(network);
    expect(() => solver.impedanceSeenFrom([1])).toThrow('call solve first');
    solver.solve(values);
    expect(() => solver.impedanceSeenFrom([7])).toThrow('there is no node 7; write one from 0 to 1');
    const impedance = phasors(1);
    expect(() => solver.solve({ ...values, impedance })).toThrow('0 ohm');
    expect(() => solver.impedanceSeenFrom([1])).toThrow('call solve first');
  });
});

describe('what cannot be solved is named', () => {
  test('a node that nothing joins to earth', () => {
    const { network, values } = circuit([
      ['source', 0, 1, [1, 0], 120],
      ['wire', 2, 3, [1, 0]],
    ]);
    const named = { ...network, nodes: ['earth', 'panel', 'mixer.case', 'mixer.line'] };
    const solver = createSolver(named);
    expect(() => solver.solve(values)).toThrow(FloatingError);
    expect(() => solver.solve(values)).toThrow(/"mixer\.case" floats.*branch of 1e9 ohm/);
  });

  const wire = circuit([
    ['source', 0, 1, [1, 0], 120],
    ['cord.line', 1, 0, [1, 0]],
  ]);
  test.each([
    ['no number', { re: NaN, im: 0 }, /"cord\.line": its impedance is NaN/],
    ['infinite', { re: 0, im: Infinity }, /"cord\.line": its impedance is 0 \+ jInfinity ohm.*1e9 if it is open/],
    ['zero', { re: 0, im: 0 }, /"cord\.line": its impedance is 0 ohm; .*1e-4 ohm/],
    ['too small', { re: 1e-200, im: 0 }, /"cord\.line".*between 1e-50 and 1e50 ohm/],
  ])('an impedance that is %s', (_, { re, im }, message) => {
    const impedance = { re: Float64Array.of(1, re), im: Float64Array.of(0, im) };
    const solve = (): unknown => createSolver(wire.network).solve({ ...wire.values, impedance });
    expect(solve).toThrow(RangeError);
    expect(solve).toThrow(message);
  });

  test('an EMF that is no number', () => {
    const emf = { re: Float64Array.of(120, 0), im: Float64Array.of(0, NaN) };
    expect(() => createSolver(wire.network).solve({ ...wire.values, emf })).toThrow(
      '"cord.line": its EMF is 0 + jNaN V; write one between 1e-50 and 1e50 V, or 0',
    );
  });

  test('values that do not fit the network in number', () => {
    const emf = phasors(3);
    expect(() => createSolver(wire.network).solve({ ...wire.values, emf })).toThrow(
      'give one for each of the 2 branches',
    );
  });

  test('a branch that ends nowhere', () => {
    const network = { ...wire.network, branches: [{ name: 'stray', from: 0, to: 9 }] };
    expect(() => createSolver(network)).toThrow('branch "stray" ends at node 9; write a node from 0 to 1');
  });

  test('windings that only share a core and have no impedance of their own', () => {
    const network = { ...wire.network, windings: [{ branches: [0, 1] }] };
    const one = { re: Float64Array.of(1, 1, 1, 1), im: new Float64Array(4) };
    expect(() => createSolver(network).solve({ ...wire.values, coupling: [one] })).toThrow(
      'windings "source" and "cord.line" has no inverse; give each a resistance of its own',
    );
  });

  test('windings whose impedance is not the same both ways', () => {
    const network = { ...wire.network, windings: [{ branches: [0, 1] }] };
    const skew = { re: Float64Array.of(2, 1, 0.5, 2), im: new Float64Array(4) };
    expect(() => createSolver(network).solve({ ...wire.values, coupling: [skew] })).toThrow(
      'windings "source" and "cord.line" is not a symmetric matrix of finite numbers; write the same both ways',
    );
  });

  test('windings that share more than they have', () => {
    const network = { ...wire.network, windings: [{ branches: [0, 1] }] };
    const shared = { re: new Float64Array(4), im: Float64Array.of(2, 3, 3, 4) };
    expect(() => createSolver(network).solve({ ...wire.values, coupling: [shared] })).toThrow(
      'windings "source" and "cord.line" is more between two than either has',
    );
  });

  test('a branch that is wound twice, and a winding of a branch that is not there', () => {
    const twice = { ...wire.network, windings: [{ branches: [0, 1] }, { branches: [1] }] };
    expect(() => createSolver(twice)).toThrow('branch "cord.line" is wound twice; name it in one winding or core only');
    const none = { ...wire.network, windings: [{ branches: [4] }] };
    expect(() => createSolver(none)).toThrow('winding 0 names branch 4; write a branch from 0 to 1');
  });

  test('a loop whose reactances cancel to nothing', () => {
    const { network, values } = circuit([
      ['coil', 0, 1, [0, 4], 10],
      ['capacitor', 1, 0, [0, -4]],
    ]);
    const solver = createSolver(network);
    expect(() => solver.solve(values)).toThrow(/loop of branch "capacitor" cancel.*resistance/);
    // With the source at rest nothing flows, and still nothing can be said of what is seen.
    solver.solve({ ...values, emf: phasors(2) });
    expect(() => solver.impedanceSeenFrom([1])).toThrow(/loop of branch "capacitor" cancel.*resistance/);
  });
});

test.each([
  ['of any size', [-5, 10]],
  ['that are often alike', [0, 0]],
] as const)('the same values, %s, give the same bits whatever was solved before', (_, exponents) => {
  fc.assert(
    fc.property(anyNetwork({ exponents }), fc.nat(), (given, pick) => {
      const { network, values } = given;
      const fresh = createSolver(network).solve(values);
      const used = createSolver(network);
      const re = values.impedance.re.slice().reverse();
      re[pick % re.length] = 1e9;
      used.solve({ ...values, impedance: { re: re.map((ohms) => ohms || 1), im: phasors(re.length).im } });
      expect(used.solve(values)).toEqual(fresh);
    }),
    { numRuns: 100 },
  );
});

test('solving again allocates nothing', () => {
  const rungs = 20;
  const { network, values } = circuit(
    Array.from({ length: rungs }, (_, k): Line[] => [
      ['along', k, k + 1, [0.1 + k / 100, 0.01], k === 0 ? 120 : 0],
      ['rung', k + 1, 0, [1000 + k, 3]],
      ['across', k + 1, ((k * 7) % rungs) + 1, [10 + k, 0]],
    ]).flat(),
  );
  const solver = createSolver(network);
  const out = solver.solve(values);
  const turns = (count: number): void => {
    for (let k = 0; k < count; k++) {
      values.impedance.re[1] = k % 2 === 0 ? 0.01 : 1e9; // the tree grows anew each time
      solver.solveInto(values, out);
    }
  };
  turns(20_000);
  const before = getHeapStatistics().used_heap_size;
  turns(20_000);
  const after = getHeapStatistics().used_heap_size;
  expect((after - before) / 20_000).toBeLessThan(64); // bytes a turn, the compiler at work included; the smallest array is above 100
});

test('an empty yard has earth and nothing else', () => {
  const network: Network = { nodes: ['earth'], branches: [], windings: [] };
  const values: Values = { impedance: phasors(0), emf: phasors(0), coupling: [] };
  const solution = createSolver(network).solve(values);
  expect([...solution.volts.re]).toEqual([0]);
  expect(balance(network, values, solution)).toEqual({ kirchhoff: 0, power: 0, ohm: 0 });
});

function longer(array: Float64Array, last: number): Float64Array {
  return Float64Array.of(...array, last);
}
