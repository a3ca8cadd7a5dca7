/** Class A ground-fault circuit interrupter, as a table of figures.
 *  4 and 6 mA: UL 943 and NEC article 100, seen second-hand. The curve T = (20 mA / I)^1.43 s, stated for 6 to 264 mA: UL 943,
 *  seen second-hand; faster is allowed. */
export const ul943ClassA = {
  /** Never opens below this. */
  from_A: 0.004,
  /** Must open from here on. */
  to_A: 0.006,
  /** Constants of the longest time, T = (scale / I)^exponent s. */
  scale_A: 0.02,
  exponent: 1.43,
  /** The curve ends here; above it the time at its end is kept. */
  end_A: 0.264,
} as const;

/** Longest time a class A device may take at this residual current, s, on the published curve (also below 6 mA, where none is owed). */
export function ul943Longest_s(residual_A: number): number {
  const { scale_A, exponent, end_A } = ul943ClassA;
  return (scale_A / Math.min(residual_A, end_A)) ** exponent;
}
