/** The symbolic half of the solver: ordering, fill and the place of every branch, found once a network. */
import type { Network } from './network.ts';
import { checkNetwork, coupledBranches } from './network.ts';
import { eliminate } from './ordering.ts';

/** The fixed pattern of a network's nodal matrix. Position = place in the order of elimination, earth left out.
 *
 *  The matrix is kept as joints between positions and an excess to earth per position, never as a diagonal. Joints
 *  have the slots `0…entries−1` in column order, pairs (re, im) in the store of the factors from its beginning. Behind
 *  them every position has a cell of two pairs, its excess and its right-hand side, and one last cell takes what joins a
 *  node to itself and is never read. */
export interface Pattern {
  /** How many nodes are unknown: all but earth. */
  readonly size: number;
  /** How many joints there are, fill included. */
  readonly entries: number;
  /** Where the cells begin in the store, behind all slots. */
  readonly cells: number;
  /** Where the pivots begin in the store, behind all cells. */
  readonly pivots: number;
  /** size nodes: position of each node, −1 for earth. */
  readonly position: Int32Array;
  /** size: node at each position. */
  readonly node: Int32Array;
  /** size + 1: first slot of each column. */
  readonly starts: Int32Array;
  /** size entries: the cell of the later position that a slot joins its column to, rising within a column. */
  readonly rows: Int32Array;
  /** size: the first row of each column, −1 where it is empty. */
  readonly next: Int32Array;
  /** How to eliminate, column by column: how many rows, then the cell of each row, then for every two rows the address
   *  of their joint. */
  readonly plan: Int32Array;
  /** size branches: the address each branch's admittance is added to. */
  readonly slots: Int32Array;
  /** Four a mutual admittance: the addresses it is added to, with signs − + + −. */
  readonly mutualSlots: Int32Array;
}

/** Orders the nodes of a network and finds its fill.
 *  Admittances for `factor` are one a branch, then one a pair of branches in each winding, then in each core:
 *  (0,1) (0,2) … (1,2) ….
 *  @throws RangeError if a branch or winding names what does not exist */
export function analyse(network: Network): Pattern {
  checkNetwork(network);
  const size = network.nodes.length - 1;
  const joints = jointsOf(network);
  const neighbours = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of joints) {
    if (a === b || a === 0 || b === 0) continue;
    neighbours[a - 1]?.add(b - 1);
    neighbours[b - 1]?.add(a - 1);
  }
  const { order, columns: joined } = eliminate(neighbours);
  const position = new Int32Array(size + 1).fill(-1);
  order.forEach((node, p) => (position[node + 1] = p));
  const columns = joined.map((nodes) => Int32Array.from(nodes, (node) => position[node + 1] ?? -1).sort());

  const starts = new Int32Array(size + 1);
  columns.forEach((column, p) => (starts[p + 1] = (starts[p] ?? 0) + column.length));
  const entries = starts[size] ?? 0;
  const cells = 2 * entries;
  const slotOf = (a: number, b: number): number => {
    const low = Math.min(a, b);
    return (starts[low] ?? 0) + placeIn(columns[low], Math.max(a, b));
  };

  const plan: number[] = [];
  columns.forEach((column) => {
    plan.push(column.length);
    for (const row of column) plan.push(cells + 4 * row);
    column.forEach((row, k) => {
      for (const later of column.subarray(k + 1)) plan.push(2 * slotOf(row, later));
    });
  });
  const addresses = Int32Array.from(joints, ([a, b]) => {
    const p = position[a] ?? -1;
    const q = position[b] ?? -1;
    if (a === b) return cells + 4 * size;
    return p < 0 || q < 0 ? cells + 4 * Math.max(p, q) : 2 * slotOf(p, q);
  });
  return {
    size,
    entries,
    cells,
    pivots: cells + 4 * (size + 1),
    position,
    node: order.map((node) => node + 1),
    starts,
    rows: Int32Array.from(columns.flatMap((column) => [...column].map((row) => cells + 4 * row))),
    next: Int32Array.from(columns, (column) => column[0] ?? -1),
    plan: Int32Array.from(plan),
    slots: addresses.slice(0, network.branches.length),
    mutualSlots: addresses.slice(network.branches.length),
  };
}

/** The two nodes that each branch joins, then the four that each pair of windings does. */
function jointsOf(network: Network): readonly (readonly [number, number])[] {
  const { branches } = network;
  const mutual = coupledBranches(network).flatMap((members) =>
    members.flatMap((k, at) =>
      members.slice(at + 1).flatMap((l) => {
        const a = branches[k];
        const b = branches[l];
        if (a === undefined || b === undefined) return [];
        return [[a.from, b.from] as const, [a.from, b.to] as const, [a.to, b.from] as const, [a.to, b.to] as const];
      }),
    ),
  );
  return [...branches.map(({ from, to }) => [from, to] as const), ...mutual];
}

/** Where a row stands in its column, which rises. */
function placeIn(column: Int32Array | undefined, row: number): number {
  let first = 0;
  let last = (column?.length ?? 1) - 1;
  while (first < last) {
    const middle = (first + last) >> 1;
    if ((column?.[middle] ?? row) < row) first = middle + 1;
    else last = middle;
  }
  return first;
}
