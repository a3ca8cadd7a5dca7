/** Whose heart the limits of IEEE Std 80 are for, kg; the constant is k of k/√t. */
const HEART = { 50: 0.116, 70: 0.157 } as const;

/** Body, Ω: hand to hand, hand to feet, foot to foot (IEEE Std 80-2013 clause 7). */
const BODY_OHM = 1000;

/** What the feet stand on, and how long a fault lasts. */
export interface Standing {
  readonly mass_kg: 50 | 70;
  readonly time_s: number;
  /** The soil, or what lies on it. */
  readonly surface_ohm_m: number;
  /** C_s of a thin layer; 1 where there is none. */
  readonly derating?: number;
}

/** Derating C_s of a thin surface layer, such as crushed rock, over a better soil.
 *  @see IEEE Std 80-2013 eq. 27, seen second-hand */
export function surfaceDerating(soil_ohm_m: number, surface_ohm_m: number, thickness_m: number): number {
  return 1 - (0.09 * (1 - soil_ohm_m / surface_ohm_m)) / (2 * thickness_m + 0.09);
}

/** Voltage between a hand and the feet that IEEE Std 80 tolerates, V: fibrillation in one of 200 people.
 *  @throws RangeError if the time is out of 0.03 s to 3 s
 *  @see IEEE Std 80-2013 eq. 32 and 33, seen second-hand */
export function tolerableTouch_V(standing: Standing): number {
  return tolerable_V(standing, 1.5);
}

/** Voltage between two feet a pace apart that IEEE Std 80 tolerates, V.
 *  @throws RangeError if the time is out of 0.03 s to 3 s
 *  @see IEEE Std 80-2013 eq. 29 and 30, seen second-hand */
export function tolerableStep_V(standing: Standing): number {
  return tolerable_V(standing, 6);
}

/** How far what is there lies below its limit, per cent of the limit; below zero if it is above. */
export function marginPercent(limit: number, there: number): number {
  return 100 * (1 - there / limit);
}

// Dalziel's k/√t was measured from 0.03 s to 3 s; beyond, it says nothing.
function tolerable_V({ mass_kg, time_s, surface_ohm_m, derating = 1 }: Standing, feet: number): number {
  if (!(time_s >= 0.03 && time_s <= 3))
    throw new RangeError(`A shock of ${time_s} s: the limits of IEEE 80 hold from 0.03 s to 3 s`);
  return ((BODY_OHM + feet * derating * surface_ohm_m) * HEART[mass_kg]) / Math.sqrt(time_s);
}
