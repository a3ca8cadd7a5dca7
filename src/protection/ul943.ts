import type { Band } from './band.ts';

/** Class A ground-fault circuit interrupter, as a table of figures.
 *  4 and 6 mA: UL 943 and NEC article 100, seen second-hand. The curve T = (20 mA / I)^1.43 s, stated for 6 to 264 mA: UL 943,
 *  seen second-hand; faster is allowed. */
const ul943ClassA = {
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

const { from_A, to_A, end_A } = ul943ClassA;
const SHORTEST_S = ul943Longest_s(end_A);

/** What a class A device makes of a residual current. A slow one takes the longest time the curve allows, a fast one the
 *  time at the end of the curve (25 ms) at any current (common practice, no source). */
export const ul943Residual: Band = {
  acts: 'residual',
  feels: 'residual',
  fast: { points: [[from_A, SHORTEST_S]], beyond: 'flat' },
  slow: {
    points: [
      [to_A, ul943Longest_s(to_A)],
      [end_A, SHORTEST_S],
    ],
    beyond: 'flat',
  },
};

/** Its own detector of a grounded neutral: it drives a small voltage of its own round the conductors that pass through it, so
 *  that a link from neutral to ground downstream closes a loop even with no load. That it must act: UL 943 (2006), seen
 *  second-hand. At what: a loop of about 2 Ω, wiring and link together (nominal of detectors in use, seen in a trade
 *  discussion); up to 4 Ω may be caught (assumption). Time: as for 6 mA, the least it must act on (UL 943, seen second-hand). */
export const ul943GroundedNeutral: Band = {
  acts: 'grounded-neutral',
  feels: 'loop',
  fast: { points: [[1 / 4, SHORTEST_S]], beyond: 'flat' },
  slow: { points: [[1 / 2, ul943Longest_s(to_A)]], beyond: 'flat' },
};
