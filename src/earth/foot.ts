import { surfaceSoil_ohm_m, type Ground } from './ground.ts';
import { pinPotential_ohm } from './surface.ts';
import { surfaceDerating } from './tolerable.ts';

/** Resistance from the sole of one bare foot to remote earth through what it stands on, Ω: 3ρ, a foot as a disc of 0.08 m radius.
 *  Two feet side by side have half of it.
 *  @throws RangeError if the resistivity is not a finite number above zero
 *  @see IEEE Std 80-2013 (the 1.5ρ and 6ρ of its touch and step formulas), from memory */
export function footResistance_ohm(resistivity_ohm_m: number): number {
  if (!(resistivity_ohm_m > 0 && resistivity_ohm_m < Infinity)) {
    throw new RangeError(`A floor of ${resistivity_ohm_m} Ω·m: write a finite resistivity above zero`);
  }
  return 3 * resistivity_ohm_m;
}

/** The disc that stands for a foot, m (IEEE Std 80). */
const FOOT_RADIUS_m = 0.08;

/** Resistance to remote earth of one foot or of two side by side on a ground, Ω: 3ρ or 1.5ρ of what they stand on, and what a
 *  lower layer reflects to them.
 *  @param cover a thin layer on the ground, such as crushed rock
 *  @see IEEE Std 80-2013 7.4, its image series and C_s; from memory */
export function standingResistance_ohm(
  ground: Ground,
  feet: 1 | 2,
  cover?: { readonly soil_ohm_m: number; readonly thickness_m: number },
): number {
  const soil_ohm_m = surfaceSoil_ohm_m(ground);
  const underfoot =
    cover === undefined
      ? soil_ohm_m
      : cover.soil_ohm_m * surfaceDerating(soil_ohm_m, cover.soil_ohm_m, cover.thickness_m);
  const reflected =
    pinPotential_ohm(ground, FOOT_RADIUS_m) - pinPotential_ohm({ kind: 'even', soil_ohm_m }, FOOT_RADIUS_m);
  return footResistance_ohm(underfoot) / feet + reflected;
}
