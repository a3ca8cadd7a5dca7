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

/** A segment cut where it passes a depth, so that each piece lies in one layer. */
export function cutAt(segment: Segment, depth_m: number): readonly Segment[] {
  const { from, to } = segment;
  const share = (depth_m - from.z) / (to.z - from.z);
  if (!(share > 1e-9 && share < 1 - 1e-9)) return [segment];
  const middle = along(segment, share);
  return [
    { ...segment, to: middle },
    { ...segment, from: middle },
  ];
}
