/** A spanning tree of the strongest branches, rooted in remote earth: along it potentials are laid out, and the
 *  currents of all other branches, the links, find their way round. */
import type { Phasors } from './complex.ts';
import type { Network } from './network.ts';

/** A tree that `regrow` rewrites in the same memory. */
export interface Tree {
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** size branches: branch numbers from the strongest to the weakest. */
  readonly order: Int32Array;
  /** Work of sorting, size branches. */
  readonly spare: Int32Array;
  /** size branches: 1 for a branch of the tree. */
  readonly inTree: Uint8Array;
  /** The branches outside the tree, in rising order; as many as branches − nodes + 1. */
  readonly links: Int32Array;
  /** The nodes but earth, parents before children. */
  readonly nodes: Int32Array;
  /** For each of `nodes` the branch that leads towards earth. */
  readonly branch: Int32Array;
  /** For each of `nodes` the node that it leads to. */
  readonly parent: Int32Array;
  /** For each of `nodes` +1 if that branch runs from the parent to the node, −1 if it runs from the node to the parent. */
  readonly direction: Float64Array;
  /** The branches at each node, in rows that start at `starts`. */
  readonly starts: Int32Array;
  readonly incident: Int32Array;
  readonly leader: Int32Array;
  /** Four places a node: re, im, and what rounding took from each. */
  readonly sums: Float64Array;
  grown: boolean;
}

/** A tree not grown yet; the network must have no floating node. */
export function plant(network: Network): Tree {
  const { branches } = network;
  const size = network.nodes.length;
  const at: number[][] = Array.from({ length: size }, () => []);
  branches.forEach((branch, b) => {
    at[branch.from]?.push(b);
    if (branch.to !== branch.from) at[branch.to]?.push(b);
  });
  const starts = new Int32Array(size + 1);
  at.forEach((list, node) => (starts[node + 1] = (starts[node] ?? 0) + list.length));
  return {
    from: Int32Array.from(branches, (branch) => branch.from),
    to: Int32Array.from(branches, (branch) => branch.to),
    order: Int32Array.from(branches, (_, b) => b),
    spare: new Int32Array(branches.length),
    inTree: new Uint8Array(branches.length),
    links: new Int32Array(Math.max(0, branches.length - size + 1)),
    nodes: new Int32Array(size - 1),
    branch: new Int32Array(size - 1),
    parent: new Int32Array(size - 1),
    direction: new Float64Array(size - 1),
    starts,
    incident: Int32Array.from(at.flat()),
    leader: new Int32Array(size),
    sums: new Float64Array(4 * size),
    grown: false,
  };
}

/** Grows the tree anew for these weights, lightest first, the lower branch number first among equals.
 *  The result depends on the weights alone, never on what came before; allocates nothing.
 *  @param weight per branch, for example |Z|² */
export function regrow(tree: Tree, weight: Float64Array): void {
  const moved = sort(tree, weight);
  if (!moved && tree.grown) return;
  join(tree);
  root(tree);
  tree.grown = true;
}

/** Potentials of all nodes if each branch of the tree lifts its end above its beginning by `rise`.
 *  @param rise V per branch, E − Z·I
 *  @param out V per node */
export function layOut(tree: Tree, rise: Phasors, out: Phasors): void {
  const { nodes, branch, parent, direction } = tree;
  const { re: vr, im: vi } = out;
  const { re: rr, im: ri } = rise;
  vr[0] = 0;
  vi[0] = 0;
  for (let k = 0; k < nodes.length; k++) {
    const node = nodes[k]!;
    const b = branch[k]!;
    const p = parent[k]!;
    const d = direction[k]!;
    vr[node] = vr[p]! + d * rr[b]!;
    vi[node] = vi[p]! + d * ri[b]!;
  }
}

/** Amperes of the branches of the tree from those of the links, from the leaves to earth. What rounding takes from a
 *  sum is kept beside it (D. E. Knuth, The Art of Computer Programming 2, 4.2.2 theorem B), so that an island's great
 *  currents, which cancel, leave no trace in its leakage.
 *  @param amperes per branch; read at the links, written at the tree
 *  @param beside A per branch that is led round besides, through the tree
 *  @param into node that one ampere more is led into from outside, to leave at earth */
export function closeLoops(tree: Tree, amperes: Phasors, beside?: Phasors, into = 0): void {
  const { links, nodes, branch, parent, direction, sums } = tree;
  const { re, im } = amperes;
  sums.fill(0);
  sums[4 * into] = -1;
  for (let k = 0; k < links.length; k++) leave(tree, links[k]!, re, im);
  if (beside !== undefined) {
    for (let b = 0; b < re.length; b++) leave(tree, b, beside.re, beside.im);
  }
  for (let k = nodes.length - 1; k >= 0; k--) {
    const own = 4 * nodes[k]!;
    const b = branch[k]!;
    const d = direction[k]!;
    const at = 4 * parent[k]!;
    const xr = sums[own]!;
    const xi = sums[own + 1]!;
    const er = sums[own + 2]!;
    const ei = sums[own + 3]!;
    re[b] = d * (xr + er);
    im[b] = d * (xi + ei);
    const hr = sums[at]!;
    const hi = sums[at + 1]!;
    const sr = hr + xr;
    const si = hi + xi;
    const br = sr - hr;
    const bi = si - hi;
    sums[at] = sr;
    sums[at + 1] = si;
    sums[at + 2]! += er + (hr - (sr - br) + (xr - br));
    sums[at + 3]! += ei + (hi - (si - bi) + (xi - bi));
  }
}

/** Takes what a branch carries from the node that it leaves and gives it to the one that it enters. */
function leave({ from, to, sums }: Tree, b: number, re: Float64Array, im: Float64Array): void {
  const ir = re[b]!;
  const ii = im[b]!;
  let at = 4 * from[b]!;
  let sign = 1;
  for (let end = 0; end < 2; end++) {
    const xr = sign * ir;
    const xi = sign * ii;
    const hr = sums[at]!;
    const hi = sums[at + 1]!;
    const sr = hr + xr;
    const si = hi + xi;
    const br = sr - hr;
    const bi = si - hi;
    sums[at] = sr;
    sums[at + 1] = si;
    sums[at + 2]! += hr - (sr - br) + (xr - br);
    sums[at + 3]! += hi - (si - bi) + (xi - bi);
    at = 4 * to[b]!;
    sign = -1;
  }
}

/** Sorts branches, which are nearly sorted from the time before; true if any had to move. */
function sort({ order, spare }: Tree, weight: Float64Array): boolean {
  let moved = false;
  // So many steps pay; a long list in no order is merged instead.
  let steps = 8 * order.length;
  for (let k = 1; k < order.length; k++) {
    const b = order[k]!;
    const w = weight[b]!;
    let at = k;
    while (at > 0 && before(b, w, order[at - 1]!, weight)) {
      order[at] = order[at - 1]!;
      at--;
    }
    if (at === k) continue;
    order[at] = b;
    moved = true;
    steps -= k - at;
    if (steps < 0) {
      merge(order, spare, weight);
      break;
    }
  }
  return moved;
}

/** Whether branch b of weight w is stronger than another. */
function before(b: number, w: number, other: number, weight: Float64Array): boolean {
  const v = weight[other]!;
  return w < v || (w === v && b < other);
}

/** Sorts branches in any order: runs of one, of two, of four … are merged into a spare row and back. */
function merge(order: Int32Array, spare: Int32Array, weight: Float64Array): void {
  const count = order.length;
  for (let run = 1; run < count; run *= 2) {
    for (let first = 0; first < count; first += 2 * run) {
      const middle = Math.min(first + run, count);
      const end = Math.min(middle + run, count);
      let left = first;
      let right = middle;
      for (let k = first; k < end; k++) {
        const second = right < end ? order[right]! : -1;
        const fromRight = second >= 0 && (left >= middle || before(second, weight[second]!, order[left]!, weight));
        spare[k] = fromRight ? order[right++]! : order[left++]!;
      }
    }
    order.set(spare);
  }
}

/** Takes every branch that joins two parts not joined yet. */
function join(tree: Tree): void {
  const { order, inTree, from, to, leader, links } = tree;
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
  let count = 0;
  for (let b = 0; b < inTree.length; b++) if (inTree[b] === 0) links[count++] = b;
}

/** Walks the tree from earth outwards. */
function root(tree: Tree): void {
  const { inTree, nodes, branch, parent, direction, from, starts, incident, to } = tree;
  let count = 0;
  for (let k = -1; k < count; k++) {
    const node = k < 0 ? 0 : nodes[k]!;
    const behind = k < 0 ? -1 : branch[k]!;
    const end = starts[node + 1]!;
    for (let e = starts[node]!; e < end; e++) {
      const b = incident[e]!;
      if (inTree[b] === 0 || b === behind) continue;
      const outward = from[b] === node;
      nodes[count] = outward ? to[b]! : from[b]!;
      branch[count] = b;
      parent[count] = node;
      direction[count] = outward ? 1 : -1;
      count++;
    }
  }
}
