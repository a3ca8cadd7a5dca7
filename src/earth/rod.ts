/** Resistance of one driven rod to remote earth in even soil, Ω: ρ/(2πL)·(ln(4L/a) − 1).
 *  @param radius_m half the rod's diameter, below its length
 *  @throws RangeError naming the dimension that is out of bounds
 *  @see H. B. Dwight, "Calculation of Resistances to Ground", AIEE Trans. 55 (1936); IEEE Std 142; formula list seen second-hand */
export function rodResistance_ohm(length_m: number, radius_m: number, soil_ohm_m: number): number {
  if (!(radius_m > 0 && length_m > radius_m && length_m < Infinity)) {
    throw new RangeError(
      `A rod ${length_m} m long of radius ${radius_m} m: write a length above the radius, both above zero`,
    );
  }
  if (!(soil_ohm_m > 0 && soil_ohm_m < Infinity)) {
    throw new RangeError(`Soil of ${soil_ohm_m} Ω·m: write a finite resistivity above zero`);
  }
  return (soil_ohm_m / (2 * Math.PI * length_m)) * (Math.log((4 * length_m) / radius_m) - 1);
}
