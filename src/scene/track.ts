import type { Point } from '../depiction/index.ts';

/** Fewer steps show as an angle, more are not seen at the sizes corners have. */
const CORNER_STEPS = 5;
const LEAST_STEP = 3; // units of the drawing
const NOT_A_CORNER = Math.cos((12 * Math.PI) / 180);

/** A route with rounded corners that can be measured along its length, in units of the drawing. */
export interface Track {
  /** x, y, x, y, … */
  readonly xy: readonly number[];
  /** Length from the start to each point. */
  readonly at: readonly number[];
  readonly length: number;
}

/** Where something stands on a track and which way it points, rad. */
export interface Stand {
  x: number;
  y: number;
  angle: number;
}

/** Lays a track along a route, rounding its corners with at most this radius. */
export function layTrack(route: readonly Point[], radius: number): Track {
  const xy: number[] = [];
  route.forEach((corner, i) => {
    const before = route[i - 1];
    const after = route[i + 1];
    if (!before || !after) xy.push(corner.x, corner.y);
    else pushCorner(xy, before, corner, after, radius);
  });
  thin(xy);
  const at: number[] = [0];
  for (let i = 2; i < xy.length; i += 2)
    at.push((at.at(-1) ?? 0) + Math.hypot((xy[i] ?? 0) - (xy[i - 2] ?? 0), (xy[i + 1] ?? 0) - (xy[i - 1] ?? 0)));
  return { xy, at, length: at.at(-1) ?? 0 };
}

/** Leaves out points that lie so close to the one before that the joint between them would show. */
function thin(xy: number[]): void {
  let kept = 2;
  for (let i = 2; i < xy.length; i += 2) {
    const last = i === xy.length - 2;
    const near = Math.hypot((xy[i] ?? 0) - (xy[kept - 2] ?? 0), (xy[i + 1] ?? 0) - (xy[kept - 1] ?? 0)) < LEAST_STEP;
    if (near && !last) continue;
    if (near && last && kept > 2) kept -= 2;
    xy[kept++] = xy[i] ?? 0;
    xy[kept++] = xy[i + 1] ?? 0;
  }
  xy.length = kept;
}

function pushCorner(xy: number[], before: Point, corner: Point, after: Point, radius: number): void {
  const into = { x: corner.x - before.x, y: corner.y - before.y };
  const out = { x: after.x - corner.x, y: after.y - corner.y };
  const inLength = Math.hypot(into.x, into.y);
  const outLength = Math.hypot(out.x, out.y);
  if (inLength === 0 || outLength === 0) return;
  const cosine = (into.x * out.x + into.y * out.y) / (inLength * outLength);
  if (cosine > NOT_A_CORNER) {
    xy.push(corner.x, corner.y);
    return;
  }
  const cut = Math.min(radius, inLength / 2, outLength / 2);
  const start = { x: corner.x - (into.x / inLength) * cut, y: corner.y - (into.y / inLength) * cut };
  const end = { x: corner.x + (out.x / outLength) * cut, y: corner.y + (out.y / outLength) * cut };
  for (let step = 0; step <= CORNER_STEPS; step++) {
    const t = step / CORNER_STEPS;
    const [p, q, r] = [(1 - t) * (1 - t), 2 * t * (1 - t), t * t];
    xy.push(p * start.x + q * corner.x + r * end.x, p * start.y + q * corner.y + r * end.y);
  }
}

/** Stands at this length along the track; beyond an end, at that end. Writes into `out`. */
export function standAt({ xy, at }: Track, length: number, out: Stand): Stand {
  let low = 0;
  let high = at.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((at[middle] ?? 0) <= length) low = middle;
    else high = middle;
  }
  const x0 = xy[2 * low] ?? 0;
  const y0 = xy[2 * low + 1] ?? 0;
  const x1 = xy[2 * high] ?? x0;
  const y1 = xy[2 * high + 1] ?? y0;
  const span = (at[high] ?? 0) - (at[low] ?? 0);
  const share = span > 0 ? Math.min(1, Math.max(0, (length - (at[low] ?? 0)) / span)) : 0;
  out.x = x0 + (x1 - x0) * share;
  out.y = y0 + (y1 - y0) * share;
  out.angle = Math.atan2(y1 - y0, x1 - x0);
  return out;
}

/** The stretch of a track between two lengths: x, y, x, y, …; empty if there is none. */
export function stretch(track: Track, from: number, to: number): number[] {
  if (!(to > from) || track.length === 0) return [];
  if (from <= 0 && to >= track.length) return [...track.xy];
  const stand: Stand = { x: 0, y: 0, angle: 0 };
  standAt(track, from, stand);
  const xy = [stand.x, stand.y];
  track.at.forEach((length, i) => {
    if (length > from && length < to) xy.push(track.xy[2 * i] ?? 0, track.xy[2 * i + 1] ?? 0);
  });
  standAt(track, to, stand);
  xy.push(stand.x, stand.y);
  return xy;
}
