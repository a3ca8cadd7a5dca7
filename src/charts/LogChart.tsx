import { scaleLog } from 'd3-scale';
import type { ReactNode } from 'react';

/** One axis of a chart with two logarithmic axes. */
export interface LogAxis {
  readonly title: string;
  readonly least: number;
  readonly most: number;
  /** Already worded. */
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
}

/** From values to px. */
export interface LogPlace {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

const HEIGHT = 300;
const LEFT = 68;
const RIGHT = 14;
const TOP = 14;
const BOTTOM = 48;

/** A frame with two logarithmic axes, a grid and their names; what it shows is drawn by `children`. */
export function LogChart({
  across,
  up,
  title,
  width,
  children,
}: {
  readonly across: LogAxis;
  readonly up: LogAxis;
  readonly title: string;
  /** px */
  readonly width: number;
  readonly children: (place: LogPlace) => ReactNode;
}) {
  const x = scaleLog([across.least, across.most], [LEFT, width - RIGHT]).clamp(true);
  const y = scaleLog([up.least, up.most], [HEIGHT - BOTTOM, TOP]).clamp(true);
  return (
    <svg className="log-chart" width={width} height={HEIGHT} role="img" aria-label={title}>
      {across.ticks.map(({ at, label }) => (
        <g key={at}>
          <line className="chart-grid" x1={x(at)} x2={x(at)} y1={TOP} y2={HEIGHT - BOTTOM} />
          <text className="chart-tick" x={x(at)} y={HEIGHT - BOTTOM + 18} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      {up.ticks.map(({ at, label }) => (
        <g key={at}>
          <line className="chart-grid" x1={LEFT} x2={width - RIGHT} y1={y(at)} y2={y(at)} />
          <text className="chart-tick" x={LEFT - 8} y={y(at) + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <text className="chart-title" x={(LEFT + width - RIGHT) / 2} y={HEIGHT - 8} textAnchor="middle">
        {across.title}
      </text>
      <text
        className="chart-title"
        transform={`translate(14 ${(TOP + HEIGHT - BOTTOM) / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {up.title}
      </text>
      {children({ x, y })}
    </svg>
  );
}
