import { memo } from 'react';
import type { CardView, Schematic } from '../../depiction/index.ts';
import { RibbonStroke } from './RibbonStroke.tsx';
import { symbolsOf, type Drawing } from './symbols.ts';

const BREAK = 13;
const DEPTH = 400; // of the soil, far below the sheet

/** An installation as symbols and wires with what flows in them, in units of the sheet. */
export const SchematicChart = memo(function SchematicChart({
  schematic,
  region,
  covered,
  still,
  isLit,
}: {
  readonly schematic: Schematic;
  readonly region: 'north-america' | 'iec';
  /** Figures and currents are hidden. */
  readonly covered: boolean;
  readonly still: boolean;
  readonly isLit: (part: string) => boolean;
}) {
  const { cards, wires, bars, dots, symbols, ribbons, spark, width, height, ground } = schematic;
  const drawings = symbolsOf(region);
  return (
    <svg className="schematic" viewBox={`0 0 ${width} ${height}`} aria-hidden="true" data-still={still}>
      <defs>
        <pattern
          id="schematic-hazard"
          width="10"
          height="10"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect className="hazard-ground" width="10" height="10" />
          <rect className="hazard-stripe" width="4" height="10" />
        </pattern>
      </defs>
      <rect className="schematic-soil" x={-4000} y={ground} width={8000 + width} height={height - ground + DEPTH} />
      {cards.map((card) => (
        <Card key={card.part} card={card} covered={covered} lit={isLit(card.part)} />
      ))}
      {wires.map(({ id, route, style }) => (
        <polyline key={id} className={`wire wire-${style}`} points={points(route)} />
      ))}
      {bars.map(
        ({ id, x, from, to }) => to > from && <line key={id} className="bar" x1={x} x2={x} y1={from - 5} y2={to + 5} />,
      )}
      {dots.map(({ x, y }, i) => (
        <circle key={i} className="dot" cx={x} cy={y} r={4} />
      ))}
      {!covered && ribbons.map((ribbon) => !ribbon.faint && <RibbonStroke key={ribbon.id} ribbon={ribbon} />)}
      {symbols.map(({ id, symbol, at, upright, open, faint, part }) => (
        <Symbol
          key={id}
          drawing={drawings[symbol]}
          x={at.x}
          y={at.y}
          upright={upright}
          open={open && !covered}
          name={`${faint ? 'faint ' : ''}${isLit(part) ? 'lit ' : ''}symbol-${symbol.replace(' ', '-')}`}
        />
      ))}
      {wires.map(
        ({ id, route, broken, loose }) => (broken || loose) && <Mark key={id} route={route} broken={broken} />,
      )}
      {spark && !covered && (
        <path
          className="schematic-spark"
          transform={`translate(${spark.x} ${spark.y})`}
          d="M0 -19L5 -8L16 -12L10 -2L20 5L8 6L8 18L0 9L-9 17L-7 6L-19 4L-10 -3L-15 -13L-4 -8Z"
        />
      )}
    </svg>
  );
});

const LINE = 21;

function Card({ card, covered, lit }: { readonly card: CardView; readonly covered: boolean; readonly lit: boolean }) {
  const { rect, name, figure, shape, level, faint, reaction } = card;
  const middle = rect.x + rect.width / 2;
  const round = shape === 'cable' ? Math.min(rect.height / 2, 22) : 7;
  const lines = [...name, ...(covered || figure === '' ? [] : [figure])];
  const first = shape === 'foot' ? rect.y + 14 : rect.y - 9 - (lines.length - 1) * LINE;
  return (
    <g className={`card card-${shape}${faint ? ' faint' : ''}${lit ? ' lit' : ''}`} data-part={card.part}>
      {(shape === 'card' || shape === 'cable') && (
        <>
          <rect
            className="card-shadow"
            x={rect.x + 3}
            y={rect.y + 5}
            width={rect.width}
            height={rect.height}
            rx={round}
          />
          <rect className="card-sheet" x={rect.x} y={rect.y} width={rect.width} height={rect.height} rx={round} />
          {level !== 'none' && !covered && (
            <rect
              className="card-hazard"
              x={rect.x + 3}
              y={rect.y + 3}
              width={rect.width - 6}
              height={rect.height - 6}
              rx={5}
              stroke="url(#schematic-hazard)"
            />
          )}
        </>
      )}
      {shape === 'person' && (
        <Figure x={middle} y={rect.y} height={rect.height} reaction={covered ? 'calm' : reaction} />
      )}
      {lines.map((line, i) => (
        <text key={i} className={i >= name.length ? 'card-figure' : 'card-name'} x={middle} y={first + i * LINE}>
          {line}
        </text>
      ))}
    </g>
  );
}

function Figure({
  x,
  y,
  height,
  reaction,
}: {
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly reaction: string;
}) {
  return (
    <g className={`figure figure-${reaction}`} transform={`translate(${x} ${y})`}>
      <circle cx={0} cy={14} r={13} />
      <path d={`M-17 32Q0 24 17 32L22 74L13 76L12 ${height}H2L0 86L-2 ${height}H-12L-13 76L-22 74Z`} />
    </g>
  );
}

function Symbol({
  drawing,
  x,
  y,
  upright,
  open,
  name,
}: {
  readonly drawing: Drawing;
  readonly x: number;
  readonly y: number;
  readonly upright: boolean;
  readonly open: boolean;
  readonly name: string;
}) {
  const lines = open ? (drawing.open ?? drawing.d) : drawing.d;
  return (
    <g className={`symbol ${name}`} transform={`translate(${x} ${y})`}>
      <g transform={upright ? 'rotate(90)' : undefined}>
        {drawing.gap > 0 && !drawing.body && (
          <line className="symbol-gap" x1={-drawing.gap} x2={drawing.gap} y1={0} y2={0} />
        )}
        {drawing.body && <path className="symbol-body" d={drawing.body} />}
        <path className="symbol-casing" d={lines} />
        <path className="symbol-lines" d={lines} />
        {drawing.ink && <path className="symbol-ink" d={drawing.ink} />}
      </g>
      {drawing.letter && (
        <text className="symbol-letter" y={6}>
          {drawing.letter}
        </text>
      )}
    </g>
  );
}

/** Where a wire is interrupted or its joint is loose: the middle of its longest run. */
function Mark({
  route,
  broken,
}: {
  readonly route: readonly { readonly x: number; readonly y: number }[];
  readonly broken: boolean;
}) {
  const runs = route.slice(1).map((to, i) => ({ from: route[i] ?? to, to }));
  const longest = runs.toSorted((a, b) => span(b) - span(a))[0];
  if (!longest) return null;
  const { from, to } = longest;
  const upright = from.x === to.x;
  return (
    <g
      className="mark"
      transform={`translate(${(from.x + to.x) / 2} ${(from.y + to.y) / 2})${upright ? ' rotate(90)' : ''}`}
    >
      {broken ? (
        <>
          <line className="mark-gap" x1={-BREAK} x2={BREAK} y1={0} y2={0} />
          <path d={`M${-BREAK - 5} 8L${-BREAK + 5} -8M${BREAK - 5} 8L${BREAK + 5} -8`} />
        </>
      ) : (
        <path d="M-14 0l5 -7l6 14l6 -14l6 14l5 -7" />
      )}
    </g>
  );
}

function span({
  from,
  to,
}: {
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
}): number {
  return Math.abs(from.x - to.x) + Math.abs(from.y - to.y);
}

function points(route: readonly { readonly x: number; readonly y: number }[]): string {
  return route.map(({ x, y }) => `${x},${y}`).join(' ');
}
