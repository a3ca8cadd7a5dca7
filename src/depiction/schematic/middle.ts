import type { Point } from '../depiction.ts';
import { lengthOf } from '../route.ts';

/** The middle of the longest straight run of a route. */
export function middle(route: readonly Point[]): { readonly at: Point; readonly upright: boolean } {
  const runs = route.slice(1).map((to, i) => ({ from: route[i] ?? to, to }));
  const longest = runs.toSorted((a, b) => lengthOf([b.from, b.to]) - lengthOf([a.from, a.to]))[0];
  const [from, to] = [longest?.from ?? { x: 0, y: 0 }, longest?.to ?? { x: 0, y: 0 }];
  return { at: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, upright: from.x === to.x };
}
