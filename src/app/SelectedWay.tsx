import { memo, useMemo } from 'react';
import type { Depiction, Point } from '../depiction/index.ts';
import { useDesk } from './useDesk.ts';
import type { View } from './useScene.ts';

/** What is pointed at, traced over the picture along the ribbons that carry it. */
export const SelectedWay = memo(function SelectedWay({
  depiction,
  view,
}: {
  readonly depiction: Depiction;
  readonly view: View;
}) {
  const pointed = useDesk((desk) => desk.pointed);
  const build = useDesk((desk) => desk.place.build);
  const routes = useMemo(() => {
    if (!pointed) return [];
    const names = new Set(pointed.branches.map((branch) => build.network.branches[branch]?.name));
    const parts = new Set(pointed.branches.length > 0 ? [] : pointed.parts);
    return depiction.ribbons.filter(({ id, part }) => names.has(id) || parts.has(part)).map(({ route }) => route);
  }, [pointed, build, depiction]);
  if (routes.length === 0) return null;
  return (
    <svg className="selected-way" aria-hidden="true">
      <g transform={`translate(${view.x} ${view.y}) scale(${view.scale})`}>
        {routes.map((route, index) => (
          <polyline key={index} points={points(route)} />
        ))}
      </g>
    </svg>
  );
});

function points(route: readonly Point[]): string {
  return route.map(({ x, y }) => `${x},${y}`).join(' ');
}
