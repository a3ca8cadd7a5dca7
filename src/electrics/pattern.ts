/** The symbolic half of the solver: ordering, fill and the place of every branch, found once a network. */
import type { Network } from './network.ts';
import { checkNetwork } from './network.ts';
import { eliminate } from './ordering.ts';

/** The fixed pattern of a network's nodal matrix. Position = place in the order of elimination, earth left out.
 *
 *  The matrix is kept as joints between positions and an excess to earth per position, never as a diagonal.
 *  Slots `0…entries−1` are joints in column order, `entries + position` is the excess, the last slot takes what
 *  joins a node to itself and is never read. */
export interface Pattern {
  /** How many nodes are unknown: all but earth. */
  readonly size: number;
  /** How many joints there are, fill included. */
  readonly entries: number;
  /** size nodes: position of each node, −1 for earth. */
  readonly position: Int32Array;
  /** size + 1: first slot of each column. */
  readonly starts: Int32Array;
  /** size entries: the later position that a slot joins its column to, rising within a column. */
  readonly rows: Int32Array;
  /** For every pair of slots in a column, in order: the slot that joins their two rows. */
  readonly targets: Int32Array;
  /** size branches: the slot each branch's admittance is added to. */
  readonly slots: Int32Array;
  /** Four a mutual admittance: the slots it is added to, with signs − + + −. */
  readonly mutualSlots: Int32Array;
}

/** Orders the nodes of a network and finds its fill.
 *  Admittances for `factor` are one a branch, then one a pair of branches in each winding: (0,1) (0,2) … (1,2) ….
 *  @throws RangeError if a branch or winding names what does not exist */
export function analyse(network: Network): Pattern {
  checkNetwork(network);
  const { branches } = network;
  const size = network.nodes.length - 1;
  const pairs = network.windings.flatMap(({ branches: members }) =>
    members.flatMap((k, at) => members.slice(at + 1).map((l) => [k, l] as const)),
  );
  const joints: [number, number][] = branches.map(({ from, to }) => [from, to]);
  for (const [k, l] of pairs) {
    const a = branches[k];
    const b = branches[l];
    if (a === undefined || b === undefined) continue;
    joints.push([a.from, b.from], [a.from, b.to], [a.to, b.from], [a.to, b.to]);
  }

  const neighbours = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of joints) {
    if (a === b || a === 0 || b === 0) continue;
    neighbours[a - 1]?.add(b - 1);
    neighbours[b - 1]?.add(a - 1);
  }
  const { order, columns } = eliminate(neighbours);
  const position = new Int32Array(size + 1).fill(-1);
  order.forEach((node, k) => (position[node + 1] = k));

  const starts = new Int32Array(size + 1);
  const rowsOf = columns.map((column) => column.map((node) => position[node + 1] ?? -1).sort((a, b) => a - b));
  rowsOf.forEach((rows, k) => (starts[k + 1] = (starts[k] ?? 0) + rows.length));
  const rows = Int32Array.from(rowsOf.flat());
  const entries = rows.length;
  const slotAt = (low: number, high: number): number => {
    let first = starts[low] ?? 0;
    let last = (starts[low + 1] ?? 0) - 1;
    while (first < last) {
      const middle = (first + last) >> 1;
      if ((rows[middle] ?? 0) < high) first = middle + 1;
      else last = middle;
    }
    return first;
  };

  const targets: number[] = [];
  for (const column of rowsOf) {
    column.forEach((low, at) => {
      for (let other = at + 1; other < column.length; other++) targets.push(slotAt(low, column[other] ?? -1));
    });
  }
  const slotOf = ([a, b]: readonly [number, number]): number => {
    const p = position[a] ?? -1;
    const q = position[b] ?? -1;
    if (a === b) return entries + size;
    if (p < 0 || q < 0) return entries + Math.max(p, q);
    return slotAt(Math.min(p, q), Math.max(p, q));
  };
  const slots = Int32Array.from(joints, slotOf);
  return {
    size,
    entries,
    position,
    starts,
    rows,
    targets: Int32Array.from(targets),
    slots: slots.slice(0, branches.length),
    mutualSlots: slots.slice(branches.length),
  };
}
