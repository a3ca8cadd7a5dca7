/** One figure of the bench. */
export interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** What it may be at most, or must be at least, as `bound` says; none for a figure that is only told. */
  readonly budget: number | null;
  readonly bound: 'at most' | 'at least';
  /** Against whom or on what it was measured. */
  readonly peer: string;
}

/** A figure as it is printed with `--json`. */
export interface Result {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly budget: number | null;
  readonly within: boolean | null;
  readonly peer: string;
}

/** Whether a figure keeps its budget. */
export function resultOf({ name, value, unit, budget, bound, peer }: Row): Result {
  const within = budget === null ? null : bound === 'at most' ? value <= budget : value >= budget;
  return { name, value, unit, budget, within, peer };
}

/** The middle of some figures, which one slow round does not move. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
