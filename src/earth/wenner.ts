import type { Ground } from './ground.ts';
import { readingOf, type Reading } from './reading.ts';
import { pinPotential_ohm } from './surface.ts';

/** Apparent resistivity from a reading between four pins evenly in line, Ω·m: 2πaR; with pins of some length the exact form.
 *  @param buried_m how deep the pins stand; 0 if that is little beside their spacing
 *  @see F. Wenner, Bulletin of the Bureau of Standards 12 (1915); IEEE Std 81; MIL-HDBK-419A */
export function wennerResistivity_ohm_m(spacing_m: number, reading_ohm: number, buried_m: number = 0): number {
  const one = (2 * spacing_m) / Math.hypot(spacing_m, 2 * buried_m);
  const other = spacing_m / Math.hypot(spacing_m, buried_m);
  return (4 * Math.PI * spacing_m * reading_ohm) / (1 + one - other);
}

/** What four small pins would read, Ω: the outer two carry the current, the inner two feel the voltage. */
export function wennerReading_ohm(ground: Ground, spacing_m: number): number {
  return 2 * (pinPotential_ohm(ground, spacing_m) - pinPotential_ohm(ground, 2 * spacing_m));
}

/** The apparent resistivity by one spacing, Ω·m, beside what an electrode of that depth would need to know: the mean of the
 *  soil down to it, by conductance along the depth. A short spacing sees the upper layer only. */
export function wenner(ground: Ground, spacing_m: number, depth_m: number): Reading {
  const apparent = wennerResistivity_ohm_m(spacing_m, wennerReading_ohm(ground, spacing_m));
  return readingOf(apparent, meanTo_ohm_m(ground, depth_m));
}

/** Resistivity that a rod down to a depth meets, Ω·m: its current divides over the layers by their thickness and conductivity. */
function meanTo_ohm_m(ground: Ground, depth_m: number): number {
  if (ground.kind === 'even') return ground.soil_ohm_m;
  const above = Math.min(depth_m, ground.thickness_m);
  return depth_m / (above / ground.upper_ohm_m + (depth_m - above) / ground.lower_ohm_m);
}
