/** A place in the soil, m: x and y along the surface, z the depth, downward; the surface is z = 0. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A straight piece of round wire in the soil, from one place to another; its current leaks evenly along it. */
export interface Segment {
  readonly from: Place;
  readonly to: Place;
  readonly radius_m: number;
}

/** m. */
export function lengthOf({ from, to }: Segment): number {
  return Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
}

/** The place a share of the way along. */
export function along({ from, to }: Segment, share: number): Place {
  return {
    x: from.x + share * (to.x - from.x),
    y: from.y + share * (to.y - from.y),
    z: from.z + share * (to.z - from.z),
  };
}

/** A segment in `count` equal pieces. */
export function divided(segment: Segment, count: number): readonly Segment[] {
  return Array.from({ length: count }, (_, at) => ({
    from: along(segment, at / count),
    to: along(segment, (at + 1) / count),
    radius_m: segment.radius_m,
  }));
}

/** Wires turned about 0, 0 and then moved along the surface.
 *  @param bearing_rad from x towards y */
export function moved(
  wires: readonly Segment[],
  { x, y }: { readonly x: number; readonly y: number },
  bearing_rad: number = 0,
): readonly Segment[] {
  const [cos, sin] = [Math.cos(bearing_rad), Math.sin(bearing_rad)];
  const place = (at: Place): Place => ({ x: x + at.x * cos - at.y * sin, y: y + at.x * sin + at.y * cos, z: at.z });
  return wires.map(({ from, to, radius_m }) => ({ from: place(from), to: place(to), radius_m }));
}

/** A segment cut where it passes a depth, so that each piece lies in one layer; not where a piece would be a mere crumb. */
export function cutAt(segment: Segment, depth_m: number): readonly Segment[] {
  const { from, to } = segment;
  const share = (depth_m - from.z) / (to.z - from.z);
  const crumb = (2 * segment.radius_m) / lengthOf(segment);
  if (!(share > crumb && share < 1 - crumb)) return [segment];
  const middle = along(segment, share);
  return [
    { ...segment, to: middle },
    { ...segment, from: middle },
  ];
}
