import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createSolver, dividePaths, project } from '../../src/electrics/index.ts';
import type { Network, Path } from '../../src/electrics/index.ts';
import { anyNetwork } from './anyNetwork.ts';

type Line = readonly [name: string, from: string, to: string, amperes: number];

/** A network with a flow written branch by branch, and the ways home through `through` in words. */
function divided(lines: readonly Line[], through: readonly string[], least_A?: number) {
  const nodes = [...new Set(['earth', ...lines.flatMap(([, from, to]) => [from, to])])];
  const network: Network = {
    nodes,
    branches: lines.map(([name, from, to]) => ({ name, from: nodes.indexOf(from), to: nodes.indexOf(to) })),
    windings: [],
  };
  const flow = Float64Array.from(lines, ([, , , amperes]) => amperes);
  const sources = through.map((name) => lines.findIndex((line) => line[0] === name));
  const division = dividePaths(network, flow, sources, least_A === undefined ? {} : { least_A });
  return { ...division, ways: division.paths.map((path) => `${worded(network, path)} ${path.amperes}`) };
}

function worded(network: Network, { branches }: Path): string {
  return branches.map(({ branch, forward }) => (forward ? '' : '−') + network.branches[branch]!.name).join(' ');
}

const sum = (paths: readonly Path[]): number => paths.reduce((amperes, path) => amperes + path.amperes, 0);

describe('ways home', () => {
  test('a fault current with two ways home takes each in proportion to what it carries', () => {
    const { ways, total_A } = divided(
      [
        ['winding', 'x2', 'x1', 300],
        ['line', 'x1', 'case', 300],
        ['third wire', 'case', 'panel', 299],
        ['rod', 'case', 'earth', 1],
        ['service rod', 'panel', 'earth', -0.5],
        ['pole rod', 'x2', 'earth', -0.5],
        ['neutral', 'panel', 'x2', 299.5],
      ],
      ['winding'],
    );
    expect(total_A).toBe(300);
    expect(ways).toEqual([
      'line third wire neutral 299',
      'line rod −service rod neutral 0.5',
      'line rod −pole rod 0.5',
    ]);
  });

  test('currents that meet at a node leave it in the same proportion, whoever they are', () => {
    const { ways } = divided(
      [
        ['source', 'minus', 'plus', 10],
        ['a', 'plus', 'middle', 6],
        ['b', 'plus', 'middle', 4],
        ['c', 'middle', 'minus', 7.5],
        ['d', 'middle', 'minus', 2.5],
      ],
      ['source'],
    );
    expect(ways).toEqual(['a c 4.5', 'b c 3', 'a d 1.5', 'b d 1']);
  });

  test('a branch written against its current is walked backwards', () => {
    const { ways } = divided(
      [
        ['source', 'minus', 'plus', -2],
        ['wire', 'plus', 'minus', -2],
      ],
      ['source'],
    );
    expect(ways).toEqual(['−wire 2']);
  });

  test('through two winding halves in series the middle is neither start nor end for what passes straight through', () => {
    const { ways, total_A } = divided(
      [
        ['upper', 'x2', 'x1', 30],
        ['lower', 'x3', 'x2', 20],
        ['oven', 'x1', 'x3', 20],
        ['mixer', 'x1', 'x2', 10],
      ],
      ['upper', 'lower'],
    );
    expect(total_A).toBe(30);
    expect(ways).toEqual(['oven 20', 'mixer 10']);
  });

  test('a current that only goes round is taken out first and told apart', () => {
    const { ways, total_A, circulating_A } = divided(
      [
        ['source', 'minus', 'plus', 5],
        ['go', 'plus', 'a', 5],
        ['round 1', 'a', 'b', 8],
        ['round 2', 'b', 'c', 3],
        ['round 3', 'c', 'a', 3],
        ['home', 'b', 'minus', 5],
      ],
      ['source'],
    );
    expect({ ways, total_A, circulating_A }).toEqual({
      ways: ['go round 1 home 5'],
      total_A: 5,
      circulating_A: 3,
    });
  });

  test('ways too small to list are gathered in one, not lost', () => {
    const { paths, ways, total_A } = divided(
      [
        ['source', 'minus', 'plus', 1.003],
        ['wire', 'plus', 'minus', 1],
        ['leak 1', 'plus', 'minus', 0.002],
        ['leak 2', 'plus', 'minus', 0.001],
      ],
      ['source'],
      0.01,
    );
    expect(ways[0]).toBe('wire 1');
    expect(paths[1]!.branches).toEqual([]);
    expect(paths[1]!.amperes).toBeCloseTo(0.003, 15);
    expect(sum(paths)).toBeCloseTo(total_A, 14);
  });

  test('a mesh with more ways than anyone reads is listed by its largest', () => {
    const lines: Line[] = [['source', 'end', 'n0', 1]];
    for (let k = 0; k < 30; k++) {
      const next = k === 29 ? 'end' : `n${k + 1}`;
      lines.push([`big ${k}`, `n${k}`, next, 0.75], [`small ${k}`, `n${k}`, next, 0.25]);
    }
    const { paths } = divided(lines, ['source']);
    expect(paths.length).toBeLessThan(2100);
    expect(paths[0]!.amperes).toBeCloseTo(0.75 ** 30, 15);
    expect(sum(paths)).toBeCloseTo(1, 12);
  });

  test('where nothing flows there are no ways', () => {
    expect(divided([['source', 'minus', 'plus', 0]], ['source'])).toEqual({
      paths: [],
      ways: [],
      total_A: 0,
      circulating_A: 0,
    });
  });

  test('a flow that leaves something over at a node is refused by the name of the node', () => {
    const lines: Line[] = [
      ['source', 'minus', 'plus', 5],
      ['wire', 'plus', 'minus', 4],
    ];
    expect(() => divided(lines, ['source'])).toThrow(/left over at node "(minus|plus)"/);
    expect(() => divided([['wire', 'a', 'b', NaN]], [])).toThrow('branch "wire" carries NaN A');
  });

  test('a flow of another length than the branches is refused', () => {
    const network: Network = { nodes: ['earth', 'a'], branches: [{ name: 'w', from: 0, to: 1 }], windings: [] };
    expect(() => dividePaths(network, new Float64Array(2), [])).toThrow('one for each of the 1 branches');
  });
});

test('in any network the ways sum to what the sources deliver, run from source to source, and repeat exactly', () => {
  fc.assert(
    fc.property(anyNetwork({ nodes: 8, links: 6, exponents: [-2, 3] }), (given) => {
      const { network, values } = given;
      const solution = createSolver(network).solve(values);
      const flow = project(solution.amperes, { re: 3, im: 4 });
      const through = network.branches.flatMap((_, b) => (values.emf.re[b] || values.emf.im[b] ? [b] : []));
      const division = dividePaths(network, flow, through);
      expect(Math.abs(sum(division.paths) - division.total_A)).toBeLessThanOrEqual(1e-9 * (1 + division.total_A));
      const delivered = new Float64Array(network.nodes.length);
      for (const b of through) {
        delivered[network.branches[b]!.from]! -= flow[b]!;
        delivered[network.branches[b]!.to]! += flow[b]!;
      }
      const carried = new Float64Array(network.branches.length);
      for (const { branches, amperes } of division.paths) {
        expect(amperes).toBeGreaterThan(0);
        let at: number | undefined;
        for (const { branch, forward } of branches) {
          const { from, to } = network.branches[branch]!;
          const start = forward ? from : to;
          if (at === undefined) expect(delivered[start]).toBeGreaterThan(0);
          else expect(start).toBe(at);
          at = forward ? to : from;
          carried[branch]! += forward ? amperes : -amperes;
          // No way walks a branch against its current, and none overloads it.
          expect((forward ? 1 : -1) * flow[branch]!).toBeGreaterThan(0);
          expect(Math.abs(carried[branch]!)).toBeLessThanOrEqual(Math.abs(flow[branch]!) * (1 + 1e-9) + 1e-12);
        }
        if (at !== undefined) expect(delivered[at]).toBeLessThan(0);
      }
      expect(dividePaths(network, flow, through)).toEqual(division);
    }),
    { numRuns: 500 },
  );
});

describe('projection on the phase of a current', () => {
  test('keeps what is in phase and drops what is across', () => {
    const amperes = { re: Float64Array.of(3, 0, -1), im: Float64Array.of(4, 2, 0) };
    expect([...project(amperes, { re: 0, im: 2 })]).toEqual([4, 2, 0]);
    const along = project(amperes, { re: 3, im: 4 });
    expect(along[0]).toBeCloseTo(5, 14);
    expect(along[1]).toBeCloseTo(1.6, 14);
  });

  test('is refused on nothing, which has no phase', () => {
    expect(() => project({ re: new Float64Array(1), im: new Float64Array(1) }, { re: 0, im: 0 })).toThrow('no phase');
  });
});
