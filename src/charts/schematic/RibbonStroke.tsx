import { memo } from 'react';
import type { Point, Ribbon } from '../../depiction/index.ts';

const APART: Readonly<Record<Ribbon['kind'], number>> = { load: 30, fault: 30, stray: 22, person: 30 };
const CALM = 3; // units a second, at the least

/** One current: a band with chevrons that run the way it flows. Its form tells its kind without colour. */
export const RibbonStroke = memo(function RibbonStroke({ ribbon }: { readonly ribbon: Ribbon }) {
  const { kind, width_px: width, route, inPhase_A } = ribbon;
  const forth = inPhase_A < 0 ? route.toReversed() : route;
  const line = forth.map(({ x, y }) => `${x},${y}`).join(' ');
  const lengths = forth.slice(1).map(({ x, y }, i) => Math.hypot(x - (forth[i]?.x ?? x), y - (forth[i]?.y ?? y)));
  return (
    <g className={`ribbon ribbon-${kind}`} data-branches={ribbon.branches.join('|')} data-amperes={ribbon.amperes}>
      {kind === 'person' && <polyline className="ribbon-edge" points={line} strokeWidth={width + 4} />}
      <polyline className="ribbon-band" points={line} strokeWidth={width} />
      {kind === 'person' && <polyline className="ribbon-core" points={line} strokeWidth={Math.max(2, width * 0.4)} />}
      {forth.slice(1).map((to, i) => {
        const from = forth[i] ?? to;
        const length = lengths[i] ?? 0;
        const offset = lengths.slice(0, i).reduce((sum, one) => sum + one, 0) % APART[kind];
        return <Chevrons key={i} from={from} to={to} length={length} offset={offset} ribbon={ribbon} />;
      })}
    </g>
  );
});

/** The chevrons of one straight run. */
function Chevrons({
  from,
  to,
  length,
  offset,
  ribbon,
}: {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
  readonly offset: number;
  readonly ribbon: Ribbon;
}) {
  const { kind, width_px: width } = ribbon;
  const apart = APART[kind];
  const half = Math.max(4, width / 2);
  const arm = Math.max(1.6, half * 0.5);
  const count = Math.ceil(length / apart) + 2;
  const tip = (x: number): string => `M${x - arm} ${half - arm}l${arm} ${arm}l${-arm} ${arm}`;
  const d = Array.from({ length: count }, (_, i) => i * apart - offset - apart / 2).map((x) =>
    kind === 'fault' ? `${tip(x)}${tip(x + arm + 3)}` : tip(x),
  );
  const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  const every_s = apart / Math.max(CALM, Math.abs(ribbon.speed));
  return (
    <g transform={`translate(${from.x} ${from.y}) rotate(${degrees})`}>
      <svg x={0} y={-half} width={length} height={2 * half} overflow="hidden">
        <path
          className="ribbon-chevrons"
          d={d.join('')}
          style={{ '--apart': `${apart}px`, animationDuration: `${every_s.toFixed(2)}s` } as React.CSSProperties}
        />
      </svg>
    </g>
  );
}
