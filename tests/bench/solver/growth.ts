/** A street that grows to ten thousand homes: how the time grows with it, and KLU beside it. */
import { analyse, createSolver, factor, phasors, refactorAndSolve } from '../../../src/electrics/index.ts';
import { median } from '../row.ts';
import type { Row } from '../row.ts';
import { admittances, injections, nodalRows } from './nodal.ts';
import { kluInput, kluTurn } from './peers.ts';
import { NODES_A_HOME, street } from './street.ts';
import { timed } from './timed.ts';

const HOMES = [100, 1000, 10_000];
const ROUNDS = 7;
/** So many nodes are solved for one figure, in a small street again and again. */
const NODES_A_TURN = 1e6;

/** Time against size, and the largest street against KLU and once from nothing. */
export function growthRows(klu: string): readonly Row[] {
  const streets = HOMES.map((homes) => {
    const { network, values } = street(homes);
    const siemens = admittances(network, values);
    const injection = injections(network, values, siemens);
    const factors = factor(analyse(network), siemens);
    const volts = phasors(network.nodes.length);
    const nodes = homes * NODES_A_HOME;
    return {
      nodes,
      volts,
      turns: NODES_A_TURN / nodes,
      call: () => refactorAndSolve(factors, siemens, injection, volts),
      input: kluInput(nodalRows(network, siemens), injection, NODES_A_TURN / nodes),
      times: [] as number[],
      klu: [] as number[],
    };
  });
  for (let round = 0; round < ROUNDS; round++) {
    for (const { call, turns, times, klu: theirs, input, volts } of streets) {
      times.push(timed(call, turns));
      const turn = kluTurn(klu, input);
      theirs.push(turn.time_us);
      const off = volts.re.reduce((most, re, n) => Math.max(most, Math.abs(re - turn.volts.re[n]!)), 0);
      if (!(off < 0.01)) throw new Error(`KLU finds other volts in the street, off by ${off} V`);
    }
  }
  const largest = streets.at(-1)!;
  const { network, values } = street(HOMES.at(-1)!);
  const start = performance.now();
  const solver = createSolver(network);
  const solution = solver.solve(values);
  const first_s = (performance.now() - start) / 1000;
  const name = `a street of ${largest.nodes.toLocaleString('en')} nodes`;
  return [
    {
      name: 'refactor and solve, growth with the street',
      value: slope(streets.map(({ nodes, times }) => [Math.log(nodes), Math.log(median(times))])),
      unit: 'power of its nodes',
      budget: 1.1,
      bound: 'at most',
      peer: streets.map(({ nodes, times }) => `${nodes}: ${median(times).toPrecision(3)} µs`).join(', '),
    },
    {
      name: `refactor and solve ${name}`,
      value: median(largest.times.map((time, k) => time / largest.klu[k]!)),
      unit: '× the time',
      budget: 1,
      bound: 'at most',
      peer: 'SuiteSparse KLU refactor and solve, same matrix',
    },
    {
      name: `every current in ${name}, from nothing`,
      value: first_s,
      unit: 's',
      budget: null,
      bound: 'at most',
      peer: `ordering and the first checked solution; ${solution.amperes.re.length} branches, ${solver.effort.steps} steps`,
    },
  ];
}

/** Slope of the straight line nearest to these points. */
function slope(points: readonly (readonly number[])[]): number {
  const mean = (place: number): number => points.reduce((sum, point) => sum + point[place]!, 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const rise = points.reduce((sum, [a, b]) => sum + (a! - x) * (b! - y), 0);
  return rise / points.reduce((sum, [a]) => sum + (a! - x) ** 2, 0);
}
