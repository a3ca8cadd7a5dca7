/** A spanning tree of the strongest branches, rooted in remote earth: along it potentials are laid out, and the
 *  currents of all other branches, the links, find their way round. */
import type { Phasors } from './complex.ts';
import { phasors } from './complex.ts';
import type { Network } from './network.ts';

/** A tree that `regrow` rewrites in the same memory. */
export interface Tree {
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** size branches: branch numbers from the strongest to the weakest. */
  readonly order: Int32Array;
  /** size branches: 1 for a branch of the tree. */
  readonly inTree: Uint8Array;
  /** The branches outside the tree, in rising order; as many as branches − nodes + 1. */
  readonly links: Int32Array;
  /** The nodes but earth, parents before children. */
  readonly nodes: Int32Array;
  /** size nodes: branch that leads towards earth. */
  readonly branch: Int32Array;
  /** size nodes: the node it leads to. */
  readonly parent: Int32Array;
  /** size nodes: +1 if that branch runs from the parent to the node, −1 if it runs from the node to the parent. */
  readonly direction: Int8Array;
  /** size nodes: branches to earth. */
  readonly depth: Int32Array;
  /** The branches at each node, in rows that start at `starts`. */
  readonly starts: Int32Array;
  readonly incident: Int32Array;
  readonly leader: Int32Array;
  readonly gathered: Phasors;
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
    inTree: new Uint8Array(branches.length),
    links: new Int32Array(Math.max(0, branches.length - size + 1)),
    nodes: new Int32Array(size - 1),
    branch: new Int32Array(size).fill(-1),
    parent: new Int32Array(size).fill(-1),
    direction: new Int8Array(size),
    depth: new Int32Array(size),
    starts,
    incident: Int32Array.from(at.flat()),
    leader: new Int32Array(size),
    gathered: phasors(size),
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

/** Potentials of all nodes if each branch of the tree lifts its end above its beginning by `rise`.
 *  @param rise V per branch, E − Z·I
 *  @param out V per node */
export function layOut(tree: Tree, rise: Phasors, out: Phasors): void {
  const { nodes, branch, parent, direction } = tree;
  const { re, im } = rise;
  out.re[0] = 0;
  out.im[0] = 0;
  for (let k = 0; k < nodes.length; k++) {
    const node = nodes[k]!;
    const b = branch[node]!;
    const p = parent[node]!;
    const d = direction[node]!;
    out.re[node] = out.re[p]! + d * re[b]!;
    out.im[node] = out.im[p]! + d * im[b]!;
  }
}

/** Amperes of the branches of the tree from those of the links, each link's current led round its own loop and
 *  nowhere else, so that an island's great currents leave no trace in its leakage.
 *  @param amperes per branch; read at the links, written at the tree */
export function closeLoops(tree: Tree, amperes: Phasors): void {
  const { from, to, links, nodes, branch, parent, direction, depth, gathered } = tree;
  const { re, im } = amperes;
  gathered.re.fill(0);
  gathered.im.fill(0);
  for (let k = 0; k < nodes.length; k++) {
    const b = branch[nodes[k]!]!;
    re[b] = 0;
    im[b] = 0;
  }
  for (let k = 0; k < links.length; k++) {
    const link = links[k]!;
    const ir = re[link]!;
    const ii = im[link]!;
    let a = from[link]!;
    let z = to[link]!;
    if (z === 0) {
      gathered.re[a]! += ir;
      gathered.im[a]! += ii;
    } else if (a === 0) {
      gathered.re[z]! -= ir;
      gathered.im[z]! -= ii;
    } else {
      while (a !== z) {
        if (depth[a]! >= depth[z]!) {
          const b = branch[a]!;
          re[b]! += direction[a]! * ir;
          im[b]! += direction[a]! * ii;
          a = parent[a]!;
        } else {
          const b = branch[z]!;
          re[b]! -= direction[z]! * ir;
          im[b]! -= direction[z]! * ii;
          z = parent[z]!;
        }
      }
    }
  }
  for (let k = nodes.length - 1; k >= 0; k--) {
    const node = nodes[k]!;
    const b = branch[node]!;
    const p = parent[node]!;
    const d = direction[node]!;
    const ir = gathered.re[node]!;
    const ii = gathered.im[node]!;
    re[b]! += d * ir;
    im[b]! += d * ii;
    gathered.re[p]! += ir;
    gathered.im[p]! += ii;
  }
}

/** Sorts nearly sorted branches; true if any had to move. */
function sort(order: Int32Array, weight: Float64Array): boolean {
  let moved = false;
  let last = order.length > 0 ? order[0]! : 0;
  let lastWeight = order.length > 0 ? weight[last]! : 0;
  for (let k = 1; k < order.length; k++) {
    const b = order[k]!;
    const w = weight[b]!;
    if (lastWeight < w || (lastWeight === w && last < b)) {
      last = b;
      lastWeight = w;
      continue;
    }
    let at = k;
    while (at > 0) {
      const other = order[at - 1]!;
      const v = weight[other]!;
      if (v < w || (v === w && other < b)) break;
      order[at] = other;
      at--;
    }
    order[at] = b;
    moved = true;
  }
  return moved;
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
  const { inTree, nodes, branch, parent, direction, depth, from, to, starts, incident } = tree;
  branch.fill(-1);
  depth[0] = 0;
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
      depth[next] = depth[node]! + 1;
      nodes[count++] = next;
    }
  }
}
