import { line } from 'd3-shape';
import { zoneCurve } from '../body/index.ts';
import { LogChart, type LogAxis } from './LogChart.tsx';

const CURVES = ['a', 'b', 'c1', 'c2', 'c3'] as const;
type Point = ReturnType<typeof zoneCurve>[number];

/** The time–current zones of IEC 60479-1 for alternating current, left hand to feet, with the point of one person. */
export function ZoneChart({
  point,
  title,
  pointLabel,
  zones,
  across,
  up,
  width,
}: {
  /** Left-hand-to-feet equivalent, A, and how long it lasts, s. */
  readonly point: { readonly heart_A: number; readonly exposure_s: number } | null;
  readonly title: string;
  readonly pointLabel: string;
  /** Names of the zones and where they are written. */
  readonly zones: readonly { readonly name: string; readonly amperes: number; readonly time_s: number }[];
  readonly across: LogAxis;
  readonly up: LogAxis;
  /** px */
  readonly width: number;
}) {
  return (
    <LogChart across={across} up={up} title={title} width={width}>
      {({ x, y }) => {
        const shape = line<Point>()
          .x(({ amperes }) => x(amperes))
          .y(({ time_s }) => y(time_s));
        return (
          <>
            {CURVES.map((curve) => (
              <path
                key={curve}
                className={`chart-curve chart-curve-${curve}`}
                d={shape([...held(zoneCurve(curve), up)]) ?? ''}
              />
            ))}
            {zones.map(({ name, amperes, time_s }) => (
              <text key={name} className="chart-zone" x={x(amperes)} y={y(time_s)} textAnchor="middle">
                {name}
              </text>
            ))}
            {point && (
              <>
                <circle
                  className="chart-point chart-point-person"
                  cx={x(point.heart_A)}
                  cy={y(Math.min(Math.max(point.exposure_s, up.least), up.most))}
                  r="7"
                />
                <text
                  className="chart-said"
                  x={x(point.heart_A) + (x(point.heart_A) < width / 2 ? 12 : -12)}
                  y={y(Math.min(Math.max(point.exposure_s, up.least), up.most)) + 18}
                  textAnchor={x(point.heart_A) < width / 2 ? 'start' : 'end'}
                >
                  {pointLabel}
                </text>
              </>
            )}
          </>
        );
      }}
    </LogChart>
  );
}

/** A boundary drawn to both ends of the chart: before its first and after its last point it is held. */
function held(points: readonly Point[], { least, most }: LogAxis): readonly Point[] {
  const [first] = points;
  const last = points[points.length - 1];
  if (!first || !last) return [];
  return [
    { ...first, time_s: least },
    ...points.filter(({ time_s }) => time_s > least && time_s < most),
    { ...last, time_s: most },
  ];
}
