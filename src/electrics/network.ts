/** What is solved: nodes, two-terminal branches, windings that share a core, and their values. */
import type { Phasors } from './complex.ts';

/** One two-terminal branch; current is counted from → to inside the branch, and I = J + (V_from − V_to + E) / Z.
 *  A source of voltage has `from` = its minus end, `to` = its plus end and E > 0, so positive current leaves at `to`. */
export interface Branch {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** Branches whose windings share a core, by index; their impedance is one n×n symmetric matrix. */
export interface Winding {
  readonly branches: readonly number[];
}

/** Branches that are windings on a common ideal core: each is its own impedance, the leakage, in series with an ideal
 *  winding of `turns`. V_from − V_to + E = Z·I + turns·U with one U for the core, and Σ turns·I = 0, where I is without J.
 *  Turns may be negative for a winding the other way round; only their ratios count. */
export interface Core {
  readonly branches: readonly number[];
  readonly turns: readonly number[];
}

/** The structure, which never changes while values do. Node 0 is remote earth. */
export interface Network {
  readonly nodes: readonly string[];
  readonly branches: readonly Branch[];
  readonly windings: readonly Winding[];
  readonly cores?: readonly Core[];
}

/** The values, which change without changing the structure: ohm and volt r.m.s. per branch;
 *  `coupling[w]` is the n×n impedance of winding w row by row and replaces `impedance` of its branches. */
export interface Values {
  readonly impedance: Phasors;
  readonly emf: Phasors;
  /** A of the current source J beside each branch, from → to; none if left out. */
  readonly injection?: Phasors;
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
  const { nodes, branches, windings, cores = [] } = network;
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
  const take = (what: string, b: number): void => {
    const branch = branches[b];
    if (branch === undefined) {
      throw new RangeError(`network: ${what} names branch ${b}; write a branch from 0 to ${branches.length - 1}`);
    }
    if (taken.has(b)) {
      throw new RangeError(`network: branch "${branch.name}" is wound twice; name it in one winding or core only`);
    }
    taken.add(b);
  };
  windings.forEach((winding, w) => winding.branches.forEach((b) => take(`winding ${w}`, b)));
  cores.forEach((core, c) => {
    core.branches.forEach((b) => take(`core ${c}`, b));
    checkTurns(network, core);
  });
}

/** Beyond this many turns, or below one in as many, digits are lost. */
const MOST_TURNS = 1e6;

function checkTurns({ branches }: Network, core: Core): void {
  const names = core.branches.map((b) => `"${branches[b]?.name ?? b}"`).join(' and ');
  if (core.branches.length < 2) {
    throw new RangeError(`network: the core of ${names || 'no branch'} needs two windings or more`);
  }
  if (core.turns.length !== core.branches.length) {
    throw new RangeError(`network: the core of ${names} has ${core.turns.length} turns; give one for each winding`);
  }
  for (const turns of core.turns) {
    const size = Math.abs(turns);
    if (!(size >= 1 / MOST_TURNS && size <= MOST_TURNS)) {
      throw new RangeError(`network: the core of ${names} has a winding of ${turns} turns; write 1e-6 to 1e6`);
    }
  }
}

/** The branches that drive each other: of each winding, then of each core. */
export function coupledBranches({ windings, cores = [] }: Network): readonly (readonly number[])[] {
  return [...windings, ...cores].map(({ branches }) => branches);
}

/** The first node that no chain of branches joins to remote earth, or −1 if none floats. */
export function floatingNode(network: Network): number {
  const leader = Int32Array.from(network.nodes, (_, node) => node);
  const find = (node: number): number => {
    let top = node;
    while (leader[top] !== top) {
      leader[top] = leader[leader[top]!]!;
      top = leader[top]!;
    }
    return top;
  };
  for (const branch of network.branches) leader[find(branch.from)] = find(branch.to);
  const earth = find(0);
  return network.nodes.findIndex((_, node) => find(node) !== earth);
}
