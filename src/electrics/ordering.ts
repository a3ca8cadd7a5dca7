/** Minimum-degree elimination: which node goes first so that little fills in. */

/** An elimination: `order[k]` is the node that goes as number k; `columns[k]` the nodes it is joined to then. */
export interface Elimination {
  readonly order: Int32Array;
  readonly columns: readonly (readonly number[])[];
}

/** Eliminates the node of least degree again and again, the lowest number first among equals.
 *  @param neighbours per node the nodes it is joined to; written to: all sets are empty afterwards */
export function eliminate(neighbours: readonly Set<number>[]): Elimination {
  const size = neighbours.length;
  const order = new Int32Array(size);
  const columns: number[][] = [];
  const done = new Uint8Array(size);
  const waiting = bucketsOf(neighbours);
  for (let k = 0; k < size; k++) {
    const node = waiting.take(done, neighbours);
    const joined = [...(neighbours[node] ?? [])];
    done[node] = 1;
    order[k] = node;
    columns.push(joined);
    for (const a of joined) {
      const set = neighbours[a];
      if (set === undefined) continue;
      set.delete(node);
      for (const b of joined) if (b !== a) set.add(b);
      waiting.put(a, set.size);
    }
    neighbours[node]?.clear();
  }
  return { order, columns };
}

/** Nodes by degree, each bucket a heap on the node's number; stale entries are skipped when taken. */
function bucketsOf(neighbours: readonly Set<number>[]) {
  const buckets: number[][] = [];
  let least = 0;
  const put = (node: number, degree: number): void => {
    while (buckets.length <= degree) buckets.push([]);
    const heap = buckets[degree];
    if (heap === undefined) return;
    rise(heap, node);
    least = Math.min(least, degree);
  };
  neighbours.forEach((set, node) => put(node, set.size));
  const take = (done: Uint8Array, now: readonly Set<number>[]): number => {
    for (;;) {
      const heap = buckets[least];
      if (heap === undefined) throw new RangeError('eliminate: no node is left to take');
      const node = sink(heap);
      if (node === undefined) least++;
      else if (done[node] === 0 && now[node]?.size === least) return node;
    }
  };
  return { put, take };
}

/** Adds to a heap whose smallest is first. */
function rise(heap: number[], value: number): void {
  let at = heap.length;
  heap.push(value);
  while (at > 0) {
    const above = (at - 1) >> 1;
    const over = heap[above] ?? value;
    if (over <= value) break;
    heap[at] = over;
    at = above;
  }
  heap[at] = value;
}

/** Takes the smallest from a heap. */
function sink(heap: number[]): number | undefined {
  const first = heap[0];
  const last = heap.pop();
  if (first === undefined || last === undefined || heap.length === 0) return first;
  let at = 0;
  for (;;) {
    let below = 2 * at + 1;
    if (below >= heap.length) break;
    if (below + 1 < heap.length && (heap[below + 1] ?? 0) < (heap[below] ?? 0)) below++;
    const under = heap[below] ?? last;
    if (under >= last) break;
    heap[at] = under;
    at = below;
  }
  heap[at] = last;
  return first;
}
