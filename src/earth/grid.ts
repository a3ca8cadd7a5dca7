import { checkSizes, checkSoil } from './ground.ts';
import { divided, type Segment } from './segment.ts';

/** A rectangular grid of wires: its sides, how many wires run each way, how deep, how thick. */
export interface Grid {
  readonly length_m: number;
  readonly width_m: number;
  /** Wires of the full length, evenly over the width, the two edges counted. */
  readonly lengthwise: number;
  readonly crosswise: number;
  readonly depth_m: number;
  readonly wire_radius_m: number;
}

/** All the wire in a grid, m. */
export function gridWire_m({ length_m, width_m, lengthwise, crosswise }: Grid): number {
  return lengthwise * length_m + crosswise * width_m;
}

/** Resistance of a shallow grid in even soil after Laurent and Niemann, Ω: ρ/4·√(π/A) + ρ/L_T.
 *  @see IEEE Std 80-2013 eq. 56, from memory */
export function laurentNiemann_ohm(area_m2: number, wire_m: number, soil_ohm_m: number): number {
  checkSizes('grid', { area: area_m2, 'length of wire': wire_m });
  checkSoil(soil_ohm_m);
  return (soil_ohm_m / 4) * Math.sqrt(Math.PI / area_m2) + soil_ohm_m / wire_m;
}

/** Resistance of a grid at some depth in even soil after Sverak, Ω; `wire_m` counts rods too.
 *  @see IEEE Std 80-2013 eq. 57, from memory */
export function sverak_ohm(area_m2: number, wire_m: number, depth_m: number, soil_ohm_m: number): number {
  checkSizes('grid', { area: area_m2, 'length of wire': wire_m, depth: depth_m });
  checkSoil(soil_ohm_m);
  const spread = (1 + 1 / (1 + depth_m * Math.sqrt(20 / area_m2))) / Math.sqrt(20 * area_m2);
  return soil_ohm_m * (1 / wire_m + spread);
}

/** The rods of a grid with rods. */
export interface GridRods {
  readonly count: number;
  readonly length_m: number;
  readonly radius_m: number;
}

/** Resistances after Schwarz, Ω: of the grid alone, of its rods alone, between the two, and of both together.
 *  @param coefficients k₁ and k₂, read from the curves; absent, by straight lines between the depths of the guide
 *  @see S. J. Schwarz, AIEE Trans. 73 (1954); IEEE Std 80-2013 eq. 58–61 and figure 25, from memory */
export function schwarz_ohm(
  grid: Grid,
  rods: GridRods,
  soil_ohm_m: number,
  coefficients: readonly [number, number] = schwarzCoefficients(grid),
): { readonly grid: number; readonly rods: number; readonly mutual: number; readonly together: number } {
  const wire = gridWire_m(grid);
  const { depth_m, wire_radius_m } = grid;
  const area = grid.length_m * grid.width_m;
  checkSizes('grid', { area, 'length of wire': wire, depth: depth_m, radius: wire_radius_m });
  checkSizes('rod of a grid', { length: rods.length_m, radius: rods.radius_m });
  checkSoil(soil_ohm_m);
  const [k1, k2] = coefficients;
  const spread = (k1 * wire) / Math.sqrt(area);
  const ofWire = soil_ohm_m / (Math.PI * wire);
  const own = ofWire * (Math.log((2 * wire) / Math.sqrt(2 * wire_radius_m * depth_m)) + spread - k2);
  const all =
    (soil_ohm_m / (2 * Math.PI * rods.count * rods.length_m)) *
    (Math.log((4 * rods.length_m) / rods.radius_m) -
      1 +
      ((2 * k1 * rods.length_m) / Math.sqrt(area)) * (Math.sqrt(rods.count) - 1) ** 2);
  const mutual = ofWire * (Math.log((2 * wire) / rods.length_m) + spread - k2 + 1);
  return { grid: own, rods: all, mutual, together: (own * all - mutual ** 2) / (own + all - 2 * mutual) };
}

/** A grid as wires, its middle below 0, 0: each stretch between two crossings in `pieces`. */
export function gridWires(grid: Grid, { pieces = 1 } = {}): readonly Segment[] {
  const { length_m, width_m, lengthwise, crosswise, depth_m, wire_radius_m } = grid;
  checkSizes('grid', { length: length_m, width: width_m, depth: depth_m, 'wire radius': wire_radius_m });
  if (!(Math.min(lengthwise, crosswise) >= 2 && Number.isInteger(lengthwise) && Number.isInteger(crosswise)))
    throw new RangeError(`A grid of ${lengthwise} by ${crosswise} wires: write at least 2 each way`);
  const place = (x: number, y: number) => ({ x, y, z: depth_m });
  const [across, up] = [length_m / 2, width_m / 2];
  const rows = Array.from({ length: lengthwise }, (_, at) => {
    const y = -up + (at * width_m) / (lengthwise - 1);
    const wire = { from: place(-across, y), to: place(across, y), radius_m: wire_radius_m };
    return divided(wire, pieces * (crosswise - 1));
  });
  const columns = Array.from({ length: crosswise }, (_, at) => {
    const x = -across + (at * length_m) / (crosswise - 1);
    const wire = { from: place(x, -up), to: place(x, up), radius_m: wire_radius_m };
    return divided(wire, pieces * (lengthwise - 1));
  });
  return [...rows, ...columns].flat();
}

/** k₁ and k₂ at depth 0, √A/10 and √A/6, straight between; lines in the ratio of length to width. */
function schwarzCoefficients({ length_m, width_m, depth_m }: Grid): readonly [number, number] {
  const x = Math.max(length_m, width_m) / Math.min(length_m, width_m);
  const side = Math.sqrt(length_m * width_m);
  const curves = [
    { deep: 0, k1: 1.41 - 0.04 * x, k2: 5.5 + 0.15 * x },
    { deep: 1 / 10, k1: 1.2 - 0.05 * x, k2: 4.68 + 0.1 * x },
    { deep: 1 / 6, k1: 1.13 - 0.05 * x, k2: 4.4 - 0.05 * x },
  ] as const;
  const deep = Math.min(depth_m / side, 1 / 6);
  const [from, to] = deep < 1 / 10 ? [curves[0], curves[1]] : [curves[1], curves[2]];
  const share = (deep - from.deep) / (to.deep - from.deep);
  return [from.k1 + share * (to.k1 - from.k1), from.k2 + share * (to.k2 - from.k2)];
}
