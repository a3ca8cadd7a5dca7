import { checkSizes, checkSoil } from './ground.ts';
import { divided, type Segment } from './segment.ts';

/** How a plate lies in the soil. */
export type Lie = 'upright' | 'flat';

/** Resistance of a square plate in even soil, Ω, as the round plate of the same area.
 *  @param depth_m to its middle, at least half its side if upright
 *  @throws RangeError naming the size that is out of bounds
 *  @see H. B. Dwight, AIEE Trans. 55 (1936), round plate; from memory */
export function plateResistance_ohm(side_m: number, depth_m: number, lie: Lie, soil_ohm_m: number): number {
  checkPlate(side_m, depth_m, lie);
  checkSoil(soil_ohm_m);
  const a = side_m / Math.sqrt(Math.PI);
  const s = 2 * depth_m;
  const near = (a / s) ** 2;
  const image =
    lie === 'flat' ? 1 - (7 / 12) * near + (33 / 40) * near ** 2 : 1 + (7 / 24) * near + (99 / 320) * near ** 2;
  return soil_ohm_m / (8 * a) + (soil_ohm_m / (4 * Math.PI * s)) * image;
}

/** A square plate as wires: strips side by side, each as a wire of a quarter of its width. */
export function plateWires(side_m: number, depth_m: number, lie: Lie, { strips = 10 } = {}): readonly Segment[] {
  checkPlate(side_m, depth_m, lie);
  const width = side_m / strips;
  const half = side_m / 2;
  return Array.from({ length: strips }, (_, at) => {
    const off = (at + 0.5) * width - half;
    const [dy, dz] = lie === 'flat' ? [off, 0] : [0, off];
    const strip = {
      from: { x: -half, y: dy, z: depth_m + dz },
      to: { x: half, y: dy, z: depth_m + dz },
      radius_m: width / 4,
    };
    return divided(strip, strips);
  }).flat();
}

function checkPlate(side_m: number, depth_m: number, lie: Lie): void {
  checkSizes('plate', { side: side_m, depth: depth_m });
  if (lie === 'upright' && depth_m < side_m / 2)
    throw new RangeError(`An upright plate of ${side_m} m with its middle ${depth_m} m deep stands out of the soil`);
}
