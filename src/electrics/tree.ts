/** A spanning tree of the strongest branches, rooted in remote earth: along it potentials are laid out and
 *  currents are gathered. */
import type { Network } from './network.ts';

/** A tree that `regrow` rewrites in the same memory. */
export interface Tree {
  /** size branches: branch numbers from the strongest to the weakest. */
  readonly order: Int32Array;
  /** size branches: 1 for a branch of the tree. */
  readonly inTree: Uint8Array;
  /** The nodes but earth, parents before children. */
  readonly nodes: Int32Array;
  /** size nodes: branch that leads towards earth. */
  readonly branch: Int32Array;
  /** size nodes: the node it leads to. */
  readonly parent: Int32Array;
  /** size nodes: +1 if that branch runs from the parent to the node, −1 if it runs from the node to the parent. */
  readonly direction: Int8Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** The branches at each node, in rows that start at `starts`. */
  readonly starts: Int32Array;
  readonly incident: Int32Array;
  readonly leader: Int32Array;
  grown: boolean;
}

/** A tree not grown yet; the network must have no floating node. */
export function plant(network: Network): Tree {
  const { branches } = network;
  const size = network.nodes.length;
  const from = Int32Array.from(branches, (branch) => branch.from);
  const to = Int32Array.from(branches, (branch) => branch.to);
  const at: number[][] = Array.from({ length: size }, () => []);
  branches.forEach((branch, b) => {
    at[branch.from]?.push(b);
    if (branch.to !== branch.from) at[branch.to]?.push(b);
  });
  const starts = new Int32Array(size + 1);
  at.forEach((list, node) => (starts[node + 1] = (starts[node] ?? 0) + list.length));
  return {
    order: Int32Array.from(branches, (_, b) => b),
    inTree: new Uint8Array(branches.length),
    nodes: new Int32Array(size - 1),
    branch: new Int32Array(size).fill(-1),
    parent: new Int32Array(size).fill(-1),
    direction: new Int8Array(size),
    from,
    to,
    starts,
    incident: Int32Array.from(at.flat()),
    leader: new Int32Array(size),
    grown: false,
  };
}

/** Grows the tree anew for these weights, lightest first, the lower branch number first among equals.
 *  The result depends on the weights alone, never on what came before; allocates nothing.
 *  @param weight per branch, for example |Z|² */
export function regrow(tree: Tree, weight: Float64Array): void {
  const moved = sort(tree.order, weight);
  if (!moved && tree.grown) return;
  join(tree);
  root(tree);
  tree.grown = true;
}

/** Sorts nearly sorted branches; true if any had to move. */
function sort(order: Int32Array, weight: Float64Array): boolean {
  let moved = false;
  for (let k = 1; k < order.length; k++) {
    const b = order[k]!;
    const w = weight[b]!;
    let at = k;
    while (at > 0) {
      const other = order[at - 1]!;
      const v = weight[other]!;
      if (v < w || (v === w && other < b)) break;
      order[at] = other;
      at--;
    }
    if (at === k) continue;
    order[at] = b;
    moved = true;
  }
  return moved;
}

/** Takes every branch that joins two parts not joined yet. */
function join(tree: Tree): void {
  const { order, inTree, from, to, leader } = tree;
  for (let node = 0; node < leader.length; node++) leader[node] = node;
  inTree.fill(0);
  for (let k = 0; k < order.length; k++) {
    const b = order[k]!;
    let p = from[b]!;
    let q = to[b]!;
    while (leader[p] !== p) {
      leader[p] = leader[leader[p]!]!;
      p = leader[p]!;
    }
    while (leader[q] !== q) {
      leader[q] = leader[leader[q]!]!;
      q = leader[q]!;
    }
    if (p === q) continue;
    leader[p] = q;
    inTree[b] = 1;
  }
}

/** Walks the tree from earth outwards. */
function root(tree: Tree): void {
  const { inTree, nodes, branch, parent, direction, from, to, starts, incident } = tree;
  branch.fill(-1);
  let count = 0;
  for (let k = -1; k < count; k++) {
    const node = k < 0 ? 0 : nodes[k]!;
    const end = starts[node + 1]!;
    for (let e = starts[node]!; e < end; e++) {
      const b = incident[e]!;
      if (inTree[b] === 0 || b === branch[node]) continue;
      const outward = from[b] === node;
      const next = outward ? to[b]! : from[b]!;
      branch[next] = b;
      parent[next] = node;
      direction[next] = outward ? 1 : -1;
      nodes[count++] = next;
    }
  }
}
