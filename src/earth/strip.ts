import { checkSizes, checkSoil } from './ground.ts';
import { rodResistance_ohm } from './rod.ts';
import { mutualResistance_ohm } from './rods.ts';
import { divided, type Segment } from './segment.ts';

/** Resistance of a straight buried round wire in even soil, Ω: with its image above the surface it is two rods of half its
 *  length, twice its depth apart.
 *  @throws RangeError naming the size that is out of bounds
 *  @see H. B. Dwight, AIEE Trans. 55 (1936); IEEE Std 142; formula list seen second-hand */
export function wireResistance_ohm(length_m: number, radius_m: number, depth_m: number, soil_ohm_m: number): number {
  checkSizes('buried wire', { length: length_m, radius: radius_m, depth: depth_m });
  checkSoil(soil_ohm_m);
  const half = length_m / 2;
  return (rodResistance_ohm(half, radius_m, soil_ohm_m) + mutualResistance_ohm(half, 2 * depth_m, soil_ohm_m)) / 2;
}

/** Resistance of a straight buried strip in even soil, Ω.
 *  @param width_m above eight times the thickness
 *  @see H. B. Dwight, AIEE Trans. 55 (1936), the strip; from memory */
export function stripResistance_ohm(
  length_m: number,
  width_m: number,
  thickness_m: number,
  depth_m: number,
  soil_ohm_m: number,
): number {
  checkSizes('strip', { length: length_m, width: width_m, thickness: thickness_m, depth: depth_m });
  checkSoil(soil_ohm_m);
  const half = length_m / 2;
  const section = (width_m ** 2 - Math.PI * width_m * thickness_m) / (2 * (width_m + thickness_m) ** 2);
  const own = (soil_ohm_m / (2 * Math.PI * half)) * (Math.log((4 * half) / width_m) + section);
  return (own + mutualResistance_ohm(half, 2 * depth_m, soil_ohm_m)) / 2;
}

/** A straight buried wire as wires, its middle below 0, 0, lying along x. A strip of width w leaks like a
 *  wire of radius w/4. */
export function stripWires(
  length_m: number,
  radius_m: number,
  depth_m: number,
  { pieces = 24 } = {},
): readonly Segment[] {
  checkSizes('strip', { length: length_m, radius: radius_m, depth: depth_m });
  const wire = {
    from: { x: -length_m / 2, y: 0, z: depth_m },
    to: { x: length_m / 2, y: 0, z: depth_m },
    radius_m,
  };
  return divided(wire, Math.max(1, Math.min(pieces, Math.floor(length_m / (4 * radius_m)))));
}
