import type { Phasors } from '../../src/electrics/index.ts';

/** The largest magnitude in a row of phasors. */
export function largest({ re, im }: Phasors): number {
  return re.reduce((most, r, k) => Math.max(most, Math.hypot(r, im[k]!)), 0);
}

/** The largest difference between two rows of phasors; NaN if any is. */
export function apart(a: Phasors, b: Phasors): number {
  return a.re.reduce((most, r, k) => Math.max(most, Math.hypot(r - b.re[k]!, a.im[k]! - b.im[k]!)), 0);
}
