import { area } from 'd3-shape';
import { overcurrentBand, type OvercurrentSettings } from '../protection/index.ts';
import { LogChart, type LogAxis } from './LogChart.tsx';

const SAMPLES = 240;

/** The time–current band of one breaker, from the earliest to the latest that any of its kind opens, with this run's point. */
export function BreakerChart({
  settings,
  point,
  title,
  pointLabel,
  across,
  up,
  width,
}: {
  readonly settings: OvercurrentSettings;
  /** Multiple of the rating, and when it opens, s; Infinity for never. */
  readonly point: { readonly multiple: number; readonly at_s: number };
  readonly title: string;
  readonly pointLabel: string;
  readonly across: LogAxis;
  readonly up: LogAxis;
  /** px */
  readonly width: number;
}) {
  const band = sampleBand(settings, across.least, across.most);
  return (
    <LogChart across={across} up={up} title={title} width={width}>
      {({ x, y }) => {
        const shape = area<(typeof band)[number]>()
          .x(({ multiple }) => x(multiple))
          .y0(({ earliest_s }) => y(earliest_s))
          .y1(({ latest_s }) => y(Math.min(latest_s, up.most)));
        const [px, py] = [x(Math.max(point.multiple, across.least)), y(Math.min(point.at_s, up.most))];
        const right = px < width / 2;
        return (
          <>
            <path className="chart-band" d={shape(band.filter(({ earliest_s }) => earliest_s < up.most)) ?? ''} />
            <line className="chart-lead" x1={px} x2={px} y1={py} y2={y(up.least)} />
            <circle className="chart-point" cx={px} cy={py} r="7" />
            <text
              className="chart-said"
              x={px + (right ? 12 : -12)}
              y={Math.max(py - 10, 28)}
              textAnchor={right ? 'start' : 'end'}
            >
              {pointLabel}
            </text>
          </>
        );
      }}
    </LogChart>
  );
}

/** The band at evenly spread multiples of the rating. */
export function sampleBand(
  settings: OvercurrentSettings,
  least: number,
  most: number,
): readonly { readonly multiple: number; readonly earliest_s: number; readonly latest_s: number }[] {
  return Array.from({ length: SAMPLES + 1 }, (_, index) => {
    const multiple = least * (most / least) ** (index / SAMPLES);
    return { multiple, ...overcurrentBand(settings, multiple) };
  });
}
