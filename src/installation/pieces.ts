/** The connected pieces of a graph of `count` nodes, each in ascending order, in the order of their first node. */
export function pieces(count: number, links: readonly (readonly [number, number])[]): readonly (readonly number[])[] {
  const leader = Int32Array.from({ length: count }, (_, at) => at);
  const find = (at: number): number => {
    let top = at;
    while (leader[top] !== top) top = leader[top] ?? top;
    for (let on = at; on !== top;) {
      const next = leader[on] ?? top;
      leader[on] = top;
      on = next;
    }
    return top;
  };
  for (const [a, b] of links) {
    const [low, high] = [find(a), find(b)].sort((one, two) => one - two) as [number, number];
    leader[high] = low;
  }
  const found = new Map<number, number[]>();
  for (let at = 0; at < count; at++) {
    const top = find(at);
    const piece = found.get(top);
    if (piece === undefined) found.set(top, [at]);
    else piece.push(at);
  }
  return [...found.values()];
}
