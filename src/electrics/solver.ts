/** One network solved again and again. Potentials are laid out along the strongest branches, the links that do not
 *  fit them drive the drop, the drop drives the links, and their currents go round their loops: Kirchhoff's current
 *  law holds by construction and what is left of the voltage law is the residual that is checked. */
import { admit, admittanceOf, checkLengths } from './admittance.ts';
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import { seenThroughLoops, settle, STEPS, trusted, worstLink } from './correction.ts';
import type { Bench } from './correction.ts';
import { factor } from './factors.ts';
import { factorLoops, resonance } from './loops.ts';
import type { Loops } from './loops.ts';
import { FloatingError, floatingNode } from './network.ts';
import type { Network, Solution, Values } from './network.ts';
import { analyse } from './pattern.ts';
import { seenFrom } from './seenFrom.ts';
import { plant, regrow } from './tree.ts';

/** Solves one structure with any values. */
export interface Solver {
  readonly network: Network;
  /** Factors with these values and solves, into fresh arrays.
   *  @throws FloatingError naming a node that no branch joins to earth
   *  @throws RangeError naming the branch whose value is zero or no finite number, or whose loop resonates */
  solve(values: Values): Solution;
  /** As `solve`, into arrays that exist; allocates nothing. */
  solveInto(values: Values, out: Solution): void;
  /** Ω between each of these nodes and earth, and between each two, n×n row by row, with all EMFs at rest
   *  and the values of the last solve.
   *  @throws RangeError before the first solve, or if there is no such node */
  impedanceSeenFrom(nodes: readonly number[]): Phasors;
  /** How the last solve went: steps of correction, and whether loops had to be solved instead of nodes. */
  readonly effort: Effort;
}

/** What a solve took. */
export interface Effort {
  readonly steps: number;
  readonly method: 'nodes' | 'loops';
}

/** A solver for this structure: ordering and fill are found here, once.
 *  @throws RangeError if a branch or winding names what does not exist */
export function createSolver(network: Network): Solver {
  const pattern = analyse(network);
  const floating = floatingNode(network);
  const nodeCount = network.nodes.length;
  const branchCount = network.branches.length;
  const admittance = admittanceOf(network);
  const bench: Bench = {
    network,
    tree: plant(network),
    admittance,
    factors: factor(pattern, admittance.siemens),
    stale: true,
    rise: phasors(branchCount),
    misfit: phasors(branchCount),
    driven: phasors(branchCount),
    drop: phasors(nodeCount),
  };
  let last: Values | undefined;
  let loops: Loops | undefined;
  let steps = 0;

  const solveInto = (values: Values, out: Solution): void => {
    if (floating >= 0) throw new FloatingError(network.nodes[floating] ?? String(floating));
    checkLengths(network, values);
    last = undefined;
    loops = undefined;
    admit(network, values, admittance);
    regrow(bench.tree, admittance.square);
    bench.stale = true;
    steps = settle(bench, values, out, undefined);
    if (steps > STEPS) {
      loops = factorLoops(network, values, bench.tree, admittance.cores, worstLink(bench));
      steps = settle(bench, values, out, loops);
      if (steps > STEPS) throw resonance(network, worstLink(bench));
    }
    last = values;
  };

  return {
    network,
    solveInto,
    solve(values) {
      const out = solution(nodeCount, branchCount);
      solveInto(values, out);
      return out;
    },
    impedanceSeenFrom(nodes) {
      if (last === undefined) throw new RangeError('impedanceSeenFrom: nothing is solved yet; call solve first');
      for (const node of nodes) {
        if (!Number.isInteger(node) || node < 0 || node >= nodeCount) {
          throw new RangeError(`impedanceSeenFrom: there is no node ${node}; write one from 0 to ${nodeCount - 1}`);
        }
      }
      if (loops === undefined && trusted(bench.factors)) return seenFrom(bench.factors, nodes);
      loops ??= factorLoops(network, last, bench.tree, admittance.cores, worstLink(bench));
      return seenThroughLoops(bench, last, loops, nodes);
    },
    get effort() {
      return { steps, method: loops === undefined ? 'nodes' : 'loops' } as const;
    },
  };
}

/** Room for a solution in one piece of memory, which costs a third of four. */
function solution(nodes: number, branches: number): Solution {
  const memory = new ArrayBuffer(16 * (nodes + branches));
  return {
    volts: { re: new Float64Array(memory, 0, nodes), im: new Float64Array(memory, 8 * nodes, nodes) },
    amperes: {
      re: new Float64Array(memory, 16 * nodes, branches),
      im: new Float64Array(memory, 16 * nodes + 8 * branches, branches),
    },
  };
}
