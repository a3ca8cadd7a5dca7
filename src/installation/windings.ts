import type { SeriesOhms } from './nameplate.ts';
import type { PlannedWinding } from './plan.ts';

/** A square matrix of impedances, Ω, row by row. */
export type OhmMatrix = readonly (readonly SeriesOhms[])[];

/** Three coupled phases with these zero- and positive-sequence impedances; windings turn nothing, so Z2 = Z1.
 *  Own (Z0 + 2·Z1)/3, mutual (Z0 − Z1)/3 (Fortescue, Trans. AIEE 37, 1918). */
export function fromSequences(zero: SeriesOhms, positive: SeriesOhms): OhmMatrix {
  const own = { r: (zero.r + 2 * positive.r) / 3, x: (zero.x + 2 * positive.x) / 3 };
  const mutual = { r: (zero.r - positive.r) / 3, x: (zero.x - positive.x) / 3 };
  return [0, 1, 2].map((row) => [0, 1, 2].map((column) => (row === column ? own : mutual)));
}

/** The two halves of an interlaced winding with its middle brought out, from the impedance of the whole of it: what they
 *  have in common is in the primary, Z0 = 0.5R + j0.8X, and each half has its own, Z1 = Z2 = R + j0.4X, per unit.
 *  @see W. H. Kersting, "Center-Tapped Transformer and 120-/240-V Secondary Models", IEEE Trans. Ind. Appl. 45(2), 2009; coefficients from memory */
export function interlaced(whole: SeriesOhms): { readonly common: SeriesOhms; readonly half: SeriesOhms } {
  // Per unit on half the voltage is a quarter of the ohms of the whole winding.
  const [r, x] = [whole.r / 4, whole.x / 4];
  return { common: { r: 0.5 * r, x: 0.8 * x }, half: { r, x: 0.4 * x } };
}

/** Sum of two impedances. */
export function inSeries(a: SeriesOhms, b: SeriesOhms): SeriesOhms {
  return { r: a.r + b.r, x: a.x + b.x };
}

/** An impedance seen through a winding with this many times the turns, squared. */
export function times(a: SeriesOhms, factor: number): SeriesOhms {
  return { r: a.r * factor, x: a.x * factor };
}

/** Branches coupled by a matrix, as a part plans them. */
export function coupled(branches: readonly string[], matrix: OhmMatrix): PlannedWinding {
  return {
    branches,
    resistance_ohm: matrix.flatMap((row) => row.map(({ r }) => r)),
    reactance_ohm: matrix.flatMap((row) => row.map(({ x }) => x)),
  };
}
