/** One figure that somebody else has printed, and what our code makes of the same question. */
export interface Published {
  /** A claim of the trade: "a rod of 5/8 in × 8 ft in 100 Ω·m has 39.9 Ω". */
  readonly what: string;
  /** The standard, handbook or paper itself, and how it was seen. */
  readonly source: string;
  /** As written beside the figure; empty for a plain number. */
  readonly unit: string;
  /** As printed there, never computed here. */
  readonly printed: number;
  /** Relative tolerance; of a printed zero, absolute. */
  readonly within: number;
  /** Why that tolerance. */
  readonly because: string;
  /** The answer of the code, in the same unit. */
  readonly computed: () => number;
}

/** How far the computed figure is from the printed one: relative, or absolute where zero is printed. */
export function departure({ printed, computed }: Published): number {
  const value = computed();
  return printed === 0 ? Math.abs(value) : Math.abs(value / printed - 1);
}
