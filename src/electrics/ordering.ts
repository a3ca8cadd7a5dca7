/** Minimum-degree elimination: which node goes first so that little fills in. */

/** An elimination: `order[k]` is the node that goes as number k; `columns[k]` the nodes it is joined to then. */
export interface Elimination {
  readonly order: Int32Array;
  readonly columns: readonly (readonly number[])[];
}

/** Eliminates the node of least degree again and again; among equals the one whose neighbours were left alone longest,
 *  so that a long run of wire folds in halves, and not node after node, each waiting for the last.
 *  @param neighbours per node the nodes it is joined to; written to: all sets are empty afterwards */
export function eliminate(neighbours: readonly Set<number>[]): Elimination {
  const size = neighbours.length;
  const order = new Int32Array(size);
  const columns: number[][] = [];
  const queues: Queue[] = [];
  const ticket = new Int32Array(size);
  let tickets = 0;
  let least = 0;
  const wait = (node: number): void => {
    const degree = neighbours[node]?.size ?? 0;
    while (queues.length <= degree) queues.push({ nodes: [], tickets: [], head: 0 });
    ticket[node] = ++tickets;
    queues[degree]?.nodes.push(node);
    queues[degree]?.tickets.push(tickets);
    least = Math.min(least, degree);
  };
  neighbours.forEach((_, node) => wait(node));
  for (let k = 0; k < size;) {
    const queue = queues[least];
    const node = queue?.nodes[queue.head];
    if (queue === undefined || node === undefined) {
      least++;
      continue;
    }
    // A node that was touched since waits elsewhere, with a later ticket.
    const stale = queue.tickets[queue.head++] !== ticket[node];
    if (stale) continue;
    const joined = [...(neighbours[node] ?? [])];
    neighbours[node]?.clear();
    ticket[node] = 0;
    order[k++] = node;
    columns.push(joined);
    for (const a of joined) {
      neighbours[a]?.delete(node);
      for (const b of joined) if (b !== a) neighbours[a]?.add(b);
      wait(a);
    }
  }
  return { order, columns };
}

/** Nodes of one degree in the order they came. */
interface Queue {
  readonly nodes: number[];
  readonly tickets: number[];
  head: number;
}
