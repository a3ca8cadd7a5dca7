import { checkSizes, checkSoil } from './ground.ts';
import type { Segment } from './segment.ts';

/** Resistance of a buried ring of round wire in even soil, Ω: ρ/(2π²D)·(ln(8D/d) + ln(4D/s)), s twice the depth.
 *  @throws RangeError naming the size that is out of bounds, or a ring deeper than half its diameter
 *  @see H. B. Dwight, AIEE Trans. 55 (1936); IEEE Std 142; formula list seen second-hand */
export function ringResistance_ohm(
  diameter_m: number,
  wire_diameter_m: number,
  depth_m: number,
  soil_ohm_m: number,
): number {
  checkSizes('ring', { diameter: diameter_m, 'wire diameter': wire_diameter_m, depth: depth_m });
  checkSoil(soil_ohm_m);
  if (depth_m > diameter_m / 2 || wire_diameter_m > diameter_m / 10)
    throw new RangeError(`A ring of ${diameter_m} m at ${depth_m} m: the formula is for a wide, slender, shallow one`);
  const s = 2 * depth_m;
  const logs = Math.log((8 * diameter_m) / wire_diameter_m) + Math.log((4 * diameter_m) / s);
  return (soil_ohm_m / (2 * Math.PI ** 2 * diameter_m)) * logs;
}

/** A ring as wires: a regular polygon of the same length. */
export function ringWires(
  diameter_m: number,
  wire_radius_m: number,
  depth_m: number,
  { pieces = 24 } = {},
): readonly Segment[] {
  checkSizes('ring', { diameter: diameter_m, 'wire radius': wire_radius_m, depth: depth_m });
  const step = (2 * Math.PI) / pieces;
  const radius = (diameter_m * step) / (4 * Math.sin(step / 2));
  const corner = (at: number) => ({
    x: radius * Math.cos(at * step),
    y: radius * Math.sin(at * step),
    z: depth_m,
  });
  return Array.from({ length: pieces }, (_, at) => ({
    from: corner(at),
    to: corner((at + 1) % pieces),
    radius_m: wire_radius_m,
  }));
}
