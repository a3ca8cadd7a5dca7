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
