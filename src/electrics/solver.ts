/** One network solved again and again: potentials laid out along the strongest branches, the drop from them by
 *  LDLᵀ, and currents gathered back along the same branches. */
import { admit, admittanceOf, checkLengths } from './admittance.ts';
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import { factor, refactor, seenFrom, solve } from './factors.ts';
import { FloatingError, floatingNode } from './network.ts';
import type { Network, Solution, Values } from './network.ts';
import { analyse } from './pattern.ts';
import { plant, regrow } from './tree.ts';

/** Solves one structure with any values. */
export interface Solver {
  readonly network: Network;
  /** Factors with these values and solves, into fresh arrays.
   *  @throws FloatingError naming a node that no branch joins to earth
   *  @throws RangeError naming the branch whose value is zero or no finite number */
  solve(values: Values): Solution;
  /** As `solve`, into arrays that exist; allocates nothing. */
  solveInto(values: Values, out: Solution): void;
  /** Ω between each of these nodes and earth, and between each two, n×n row by row, with all EMFs at rest
   *  and the values of the last solve.
   *  @throws RangeError before the first solve, or if there is no such node */
  impedanceSeenFrom(nodes: readonly number[]): Phasors;
}

/** A solver for this structure: ordering and fill are found here, once.
 *  @throws RangeError if a branch or winding names what does not exist */
export function createSolver(network: Network): Solver {
  const pattern = analyse(network);
  const floating = floatingNode(network);
  const admittance = admittanceOf(network);
  const tree = plant(network);
  const { from, to, inTree } = tree;
  const nodeCount = network.nodes.length;
  const branchCount = network.branches.length;
  const factors = factor(pattern, admittance.siemens);
  const layout = phasors(nodeCount);
  const drop = phasors(nodeCount);
  const gathered = phasors(nodeCount);
  const mismatch = phasors(branchCount);
  let solved = false;

  const layOut = (emf: Phasors): void => {
    for (let k = 0; k < tree.nodes.length; k++) {
      const node = tree.nodes[k]!;
      const b = tree.branch[node]!;
      const p = tree.parent[node]!;
      const d = tree.direction[node]!;
      layout.re[node] = layout.re[p]! + d * emf.re[b]!;
      layout.im[node] = layout.im[p]! + d * emf.im[b]!;
    }
  };

  /** Amperes of the branches outside the tree at `mismatch` + the drop across them; with no drop, what they inject. */
  const flow = (amperes: Phasors, withDrop: boolean): void => {
    const { siemens, isWound, wound } = admittance;
    const ur = drop.re;
    const ui = drop.im;
    for (let b = 0; b < branchCount; b++) {
      if (inTree[b] === 1 || isWound[b] === 1) continue;
      let vr = mismatch.re[b]!;
      let vi = mismatch.im[b]!;
      if (withDrop) {
        vr += ur[from[b]!]! - ur[to[b]!]!;
        vi += ui[from[b]!]! - ui[to[b]!]!;
      }
      const yr = siemens.re[b]!;
      const yi = siemens.im[b]!;
      amperes.re[b] = yr * vr - yi * vi;
      amperes.im[b] = yr * vi + yi * vr;
    }
    for (let w = 0; w < wound.length; w++) {
      const members = network.windings[w]!.branches;
      const y = wound[w]!;
      const n = members.length;
      for (let k = 0; k < n; k++) {
        let sr = 0;
        let si = 0;
        for (let l = 0; l < n; l++) {
          const b = members[l]!;
          let vr = mismatch.re[b]!;
          let vi = mismatch.im[b]!;
          if (withDrop) {
            vr += ur[from[b]!]! - ur[to[b]!]!;
            vi += ui[from[b]!]! - ui[to[b]!]!;
          }
          const yr = y.re[k * n + l]!;
          const yi = y.im[k * n + l]!;
          sr += yr * vr - yi * vi;
          si += yr * vi + yi * vr;
        }
        amperes.re[members[k]!] = sr;
        amperes.im[members[k]!] = si;
      }
    }
  };

  const solveInto = (values: Values, out: Solution): void => {
    if (floating >= 0) throw new FloatingError(network.nodes[floating] ?? String(floating));
    checkLengths(network, values);
    solved = false;
    admit(network, values, admittance);
    regrow(tree, admittance.square);
    refactor(factors, admittance.siemens);
    const { emf } = values;
    layOut(emf);
    const { volts, amperes } = out;
    amperes.re.fill(0);
    amperes.im.fill(0);
    for (let b = 0; b < branchCount; b++) {
      const outside = inTree[b] === 0;
      mismatch.re[b] = outside ? layout.re[from[b]!]! - layout.re[to[b]!]! + emf.re[b]! : 0;
      mismatch.im[b] = outside ? layout.im[from[b]!]! - layout.im[to[b]!]! + emf.im[b]! : 0;
    }
    flow(amperes, false);
    drop.re.fill(0);
    drop.im.fill(0);
    for (let b = 0; b < branchCount; b++) {
      drop.re[from[b]!]! -= amperes.re[b]!;
      drop.im[from[b]!]! -= amperes.im[b]!;
      drop.re[to[b]!]! += amperes.re[b]!;
      drop.im[to[b]!]! += amperes.im[b]!;
    }
    solve(factors, drop, drop);
    for (let node = 0; node < nodeCount; node++) {
      volts.re[node] = layout.re[node]! + drop.re[node]!;
      volts.im[node] = layout.im[node]! + drop.im[node]!;
    }
    flow(amperes, true);
    gather(amperes);
    solved = true;
  };

  /** Amperes of the branches in the tree, from its leaves to earth, so that every node sums to zero. */
  const gather = (amperes: Phasors): void => {
    gathered.re.fill(0);
    gathered.im.fill(0);
    for (let b = 0; b < branchCount; b++) {
      if (inTree[b] === 1) continue;
      gathered.re[from[b]!]! += amperes.re[b]!;
      gathered.im[from[b]!]! += amperes.im[b]!;
      gathered.re[to[b]!]! -= amperes.re[b]!;
      gathered.im[to[b]!]! -= amperes.im[b]!;
    }
    for (let k = tree.nodes.length - 1; k >= 0; k--) {
      const node = tree.nodes[k]!;
      const b = tree.branch[node]!;
      const p = tree.parent[node]!;
      const d = tree.direction[node]!;
      const re = gathered.re[node]!;
      const im = gathered.im[node]!;
      amperes.re[b] = d * re;
      amperes.im[b] = d * im;
      gathered.re[p]! += re;
      gathered.im[p]! += im;
    }
  };

  return {
    network,
    solve(values) {
      const out = { volts: phasors(nodeCount), amperes: phasors(branchCount) };
      solveInto(values, out);
      return out;
    },
    solveInto,
    impedanceSeenFrom(nodes) {
      if (!solved) throw new RangeError('impedanceSeenFrom: nothing is solved yet; call solve first');
      for (const node of nodes) {
        if (!Number.isInteger(node) || node < 0 || node >= nodeCount) {
          throw new RangeError(`impedanceSeenFrom: there is no node ${node}; write one from 0 to ${nodeCount - 1}`);
        }
      }
      return seenFrom(factors, nodes);
    },
  };
}
