/** One way along a branch: from a node to a node, with a length in units of the drawing. */
export interface Step {
  readonly branch: number;
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/** Shortest distance of every node that can be reached from the starts, along the steps; nodes out of reach are absent. */
export function distances(steps: readonly Step[], starts: readonly number[]): ReadonlyMap<number, number> {
  const leaving = new Map<number, Step[]>();
  for (const step of steps) leaving.set(step.from, [...(leaving.get(step.from) ?? []), step]);
  const settled = new Map<number, number>();
  const open = new Map<number, number>(starts.map((node) => [node, 0]));
  while (open.size > 0) {
    let nearest = -1;
    let least = Infinity;
    for (const [node, distance] of open) if (distance < least) [nearest, least] = [node, distance];
    open.delete(nearest);
    settled.set(nearest, least);
    for (const { to, length } of leaving.get(nearest) ?? []) {
      const distance = least + length;
      if (!settled.has(to) && distance < (open.get(to) ?? Infinity)) open.set(to, distance);
    }
  }
  return settled;
}

/** The same steps the other way round. */
export function backward(steps: readonly Step[]): readonly Step[] {
  return steps.map(({ branch, from, to, length }) => ({ branch, from: to, to: from, length }));
}
