import type { Point } from './depiction.ts';

/** Points as files write them: [[x, y], …]. */
export type Pairs = readonly (readonly number[])[];

/** Reads pairs; points that repeat the one before are left out. */
export function points(pairs: Pairs): readonly Point[] {
  return pairs
    .map(([x = 0, y = 0]) => ({ x, y }))
    .filter((point, i, all) => i === 0 || point.x !== all[i - 1]?.x || point.y !== all[i - 1]?.y);
}

/** Length along a route, units of the drawing. */
export function lengthOf(route: readonly Point[]): number {
  return route.reduce((sum, { x, y }, i) => {
    const before = route[i - 1];
    return before ? sum + Math.hypot(x - before.x, y - before.y) : 0;
  }, 0);
}

/** The part of a route between the places where it comes nearest to two points; without one, from its start or to its end. */
export function cut(route: readonly Point[], since: Point | undefined, until: Point | undefined): readonly Point[] {
  const from = since ? nearest(route, since) : { segment: 0, point: route[0] };
  const to = until ? nearest(route, until) : { segment: route.length - 2, point: route.at(-1) };
  if (!from.point || !to.point) return route;
  const kept = [from.point, ...route.slice(from.segment + 1, to.segment + 1), to.point];
  return kept.filter((point, i) => i === 0 || point.x !== kept[i - 1]?.x || point.y !== kept[i - 1]?.y);
}

function nearest(route: readonly Point[], to: Point): { readonly segment: number; readonly point: Point } {
  let best = { segment: 0, point: route[0] ?? to };
  let least = Infinity;
  for (let i = 0; i + 1 < route.length; i++) {
    const a = route[i];
    const b = route[i + 1];
    if (!a || !b) continue;
    const span = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
    const t = Math.min(1, Math.max(0, ((to.x - a.x) * (b.x - a.x) + (to.y - a.y) * (b.y - a.y)) / span));
    const point = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
    const away = Math.hypot(point.x - to.x, point.y - to.y);
    if (away < least - 1e-9) [least, best] = [away, { segment: i, point }];
  }
  return best;
}
