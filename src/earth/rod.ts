import { checkSoil } from './ground.ts';
import { divided, type Segment } from './segment.ts';

/** Resistance of one driven rod to remote earth in even soil, Ω: ρ/(2πL)·(ln(4L/a) − 1).
 *  @param radius_m half the rod's diameter, below its length
 *  @throws RangeError naming the dimension that is out of bounds
 *  @see H. B. Dwight, "Calculation of Resistances to Ground", AIEE Trans. 55 (1936); IEEE Std 142; formula list seen second-hand */
export function rodResistance_ohm(length_m: number, radius_m: number, soil_ohm_m: number): number {
  checkRod(length_m, radius_m);
  checkSoil(soil_ohm_m);
  return (soil_ohm_m / (2 * Math.PI * length_m)) * (Math.log((4 * length_m) / radius_m) - 1);
}

/** Resistance of a bar cast in a cylinder of concrete, upright in even soil, Ω.
 *  @see IEEE Std 142 (concrete-encased rod), from memory */
export function encasedRodResistance_ohm(
  length_m: number,
  bar_diameter_m: number,
  concrete_diameter_m: number,
  concrete_ohm_m: number,
  soil_ohm_m: number,
): number {
  checkRod(length_m, concrete_diameter_m / 2);
  checkRod(length_m, bar_diameter_m / 2);
  checkSoil(concrete_ohm_m);
  checkSoil(soil_ohm_m);
  const concrete = concrete_ohm_m * Math.log(concrete_diameter_m / bar_diameter_m);
  return (concrete + soil_ohm_m * (Math.log((8 * length_m) / concrete_diameter_m) - 1)) / (2 * Math.PI * length_m);
}

/** The current that dries out the soil around a rod, A: 34 800·d·L/√(ρ·t), with the diameter in metres.
 *  @see IEEE Std 142 (loading of electrodes), seen second-hand */
export function rodLoading_A(length_m: number, diameter_m: number, soil_ohm_m: number, time_s: number): number {
  checkRod(length_m, diameter_m / 2);
  checkSoil(soil_ohm_m);
  return (34_800 * diameter_m * length_m) / Math.sqrt(soil_ohm_m * time_s);
}

/** A rod as wires, its top at a depth below 0, 0.
 *  @param pieces how many segments, fewer where the rod is thick; 1 is Dwight's even leak */
export function rodWires(length_m: number, radius_m: number, { top_m = 0, pieces = 16 } = {}): readonly Segment[] {
  checkRod(length_m, radius_m);
  const rod = { from: { x: 0, y: 0, z: top_m }, to: { x: 0, y: 0, z: top_m + length_m }, radius_m };
  return divided(rod, Math.max(1, Math.min(pieces, Math.floor(length_m / (4 * radius_m)))));
}

/** @throws RangeError naming length and radius, if the rod is not longer than thick */
export function checkRod(length_m: number, radius_m: number): void {
  if (!(radius_m > 0 && length_m > radius_m && length_m < Infinity)) {
    throw new RangeError(
      `A rod ${length_m} m long of radius ${radius_m} m: write a length above the radius, both above zero`,
    );
  }
}
