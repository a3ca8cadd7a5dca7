/** What is solved: nodes, two-terminal branches, windings that share a core, and their values. */
import type { Phasors } from './complex.ts';

/** One two-terminal branch; current is counted from → to inside the branch, and V_from − V_to + E = Z·I.
 *  A source has `from` = its minus end, `to` = its plus end and E > 0, so positive current leaves at `to`. */
export interface Branch {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** Branches whose windings share a core, by index; their impedance is one n×n symmetric matrix. */
export interface Winding {
  readonly branches: readonly number[];
}

/** The structure, which never changes while values do. Node 0 is remote earth. */
export interface Network {
  readonly nodes: readonly string[];
  readonly branches: readonly Branch[];
  readonly windings: readonly Winding[];
}

/** The values, which change without changing the structure: ohm and volt r.m.s. per branch;
 *  `coupling[w]` is the n×n impedance of winding w row by row and replaces `impedance` of its branches. */
export interface Values {
  readonly impedance: Phasors;
  readonly emf: Phasors;
  readonly coupling: readonly Phasors[];
}

/** V per node against remote earth, A per branch from → to, both r.m.s. phasors. */
export interface Solution {
  readonly volts: Phasors;
  readonly amperes: Phasors;
}

/** Something hangs in the air: no chain of branches leads from it to remote earth. */
export class FloatingError extends Error {
  override readonly name = 'FloatingError';
  /** The name of the first node that floats. */
  readonly node: string;
  constructor(node: string) {
    super(
      `"${node}" floats: no branch leads from it to remote earth. ` +
        'Give it an insulation leakage, for example a branch of 1e9 ohm to node 0.',
    );
    this.node = node;
  }
}

/** Checks that a network hangs together as data.
 *  @throws RangeError naming the branch or winding whose ends or members do not exist */
export function checkNetwork(network: Network): void {
  const { nodes, branches, windings } = network;
  if (nodes.length === 0) throw new RangeError('network: there is no node 0; give remote earth as the first node');
  for (const branch of branches) {
    for (const end of [branch.from, branch.to]) {
      if (!Number.isInteger(end) || end < 0 || end >= nodes.length) {
        throw new RangeError(
          `network: branch "${branch.name}" ends at node ${end}; write a node from 0 to ${nodes.length - 1}`,
        );
      }
    }
  }
  const taken = new Set<number>();
  windings.forEach((winding, w) => {
    for (const b of winding.branches) {
      const branch = branches[b];
      if (branch === undefined) {
        throw new RangeError(
          `network: winding ${w} names branch ${b}; write a branch from 0 to ${branches.length - 1}`,
        );
      }
      if (taken.has(b)) {
        throw new RangeError(`network: branch "${branch.name}" is wound twice; name it in one winding only`);
      }
      taken.add(b);
    }
  });
}

/** The first node that no chain of branches joins to remote earth, or −1 if none floats. */
export function floatingNode(network: Network): number {
  const leader = Int32Array.from(network.nodes, (_, node) => node);
  const find = (node: number): number => {
    let top = node;
    while (leader[top] !== top) top = leader[top] ?? top;
    leader[node] = top;
    return top;
  };
  for (const branch of network.branches) leader[find(branch.from)] = find(branch.to);
  const earth = find(0);
  return network.nodes.findIndex((_, node) => find(node) !== earth);
}
