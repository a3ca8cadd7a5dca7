import type { Point } from '../depiction.ts';
import type { Circuit, Inner, Lead, Term, Unit } from './circuit.ts';
import type { Side } from './form.ts';
import { blocksOf, GAP, PITCH, rowsOf, type Row, type Tap } from './rows.ts';

/** Height of a line of words. */
const LINE = 21;
const COLUMN = 38;
const WIDE_GAP = 44; // where a bar’s own wires leave on both sides
const LETTER = 10.2; // wide, on average
const EDGE = 12;
const PERSON_HEIGHT = 128;
const WIDTHS: Readonly<Partial<Record<Unit['form'], number>>> = {
  source: 128,
  transformer: 140,
  through: 74,
  load: 80,
  bars: 60,
  'two-pole': 84,
  electrode: 16,
  pipe: 84,
  person: 76,
};

/** A stretch inside a box, in the box's own units. */
export interface Piece {
  readonly part: string;
  readonly terms: readonly Term[];
  readonly route: readonly Point[];
  /** The branch whose symbol stands in its middle. */
  readonly symbol?: number;
}

/** A place on the edge of a box at which a wire arrives. */
export interface Port {
  readonly lead: string;
  readonly end: 0 | 1;
  readonly side: Side;
  readonly y: number;
  /** How far in the wire goes on to its terminal. */
  readonly bar: number;
}

/** A box with its measures and everything in it. */
export interface Box {
  readonly unit: Unit;
  readonly width: number;
  readonly height: number;
  /** Height kept free above for its name. */
  readonly head: number;
  readonly ports: readonly Port[];
  readonly pieces: readonly Piece[];
  /** Terminals at which several wires meet. */
  readonly bars: readonly {
    readonly terminal: string;
    readonly x: number;
    readonly from: number;
    readonly to: number;
  }[];
  /** Where its way to the soil leaves its lower edge. */
  readonly drop_x: number;
}

/** What flows into a terminal at a height. */
interface Inflow {
  readonly y: number;
  readonly terms: readonly Term[];
}

/** Room for words: lines, and letters of the longest. */
export interface Words {
  readonly lines: number;
  readonly letters: number;
}

/** Measures every box and lays what is inside it.
 *  @param words the room that the words over each box take */
export function boxesOf({ units, leads }: Circuit, words: (unit: Unit) => Words): readonly Box[] {
  return units.map((unit) => boxOf(unit, leads, words(unit)));
}

function boxOf(unit: Unit, leads: readonly Lead[], { lines, letters }: Words): Box {
  const taps = leads.flatMap((lead) =>
    ([0, 1] as const).flatMap((end): Tap[] => (lead.ends[end].unit === unit.id ? [{ lead, end }] : [])),
  );
  const at = (terminal: string, side: Side): readonly Tap[] =>
    taps.filter(({ lead, end }) => lead.ends[end].terminal === terminal && lead.ends[end].side === side);
  const head = lines * LINE + (lines > 0 ? 5 : 0);
  const blocks = blocksOf(unit, at);
  const straight = (inner: Inner): boolean =>
    blocks.some(
      ({ west, east }) => west !== east && [west, east].every((end) => end === inner.from || end === inner.to),
    );
  const star = starOf(unit);
  const columned = unit.inner.filter((inner) => !straight(inner) && !star?.arms.includes(inner));
  const rows = rowsOf(
    blocks,
    at,
    head + EDGE + (unit.form === 'person' ? 22 : 0),
    columned.length === 0 ? 0 : unit.form === 'two-pole' ? GAP : WIDE_GAP,
  );
  const rowOf = (terminal: string): Row =>
    rows.find(({ west, east }) => west === terminal || east === terminal) ?? NOWHERE;
  const mid = rows.every(({ west, east }) => west === east);
  const lanes = lanesOf(columned, rowOf);
  const used = lanes.length === 0 ? 0 : Math.max(...lanes) + 1;
  const width = Math.max(
    WIDTHS[unit.form] ?? 80,
    letters * LETTER + 6,
    (mid ? 2 * 40 : 64) + (used - (mid && unit.form === 'two-pole' ? 1 : 0)) * COLUMN,
  );
  const bottom =
    Math.max(head + 2 * EDGE, ...rows.map(({ y, rows: n }) => y + (n - 1) * PITCH + PITCH / 2)) + EDGE - PITCH / 2 + 4;
  const height = unit.form === 'person' ? Math.max(bottom, head + PERSON_HEIGHT) : bottom;
  const onEast = unit.form === 'source';
  const centre = unit.form === 'electrode' || unit.form === 'person' || (mid && used === 0) || unit.form === 'two-pole';
  const barOf = (terminal: string): number => {
    const { west, east } = rowOf(terminal);
    if (west !== east) return east === terminal ? width - EDGE : EDGE;
    return mid ? (centre ? (used > 1 ? 40 : width / 2) : 30) : EDGE;
  };
  const columnX = (lane: number): number => {
    if (mid && unit.form === 'two-pole') return barOf(unit.terminals[0] ?? '') + lane * COLUMN;
    return onEast
      ? width - EDGE - (lane + 0.9) * COLUMN
      : (mid ? barOf(unit.terminals[0] ?? '') : EDGE) + (lane + 0.9) * COLUMN;
  };

  const inflows = new Map<string, Inflow[]>(unit.terminals.map((terminal) => [terminal, []]));
  const feed = (terminal: string, y: number, terms: readonly Term[]): void => {
    inflows.get(terminal)?.push({ y, terms });
  };
  const pieces: Piece[] = [];
  const ports = taps.map(({ lead, end }): Port => {
    const { terminal, side } = lead.ends[end];
    const row = rowOf(terminal);
    const y = row.y + at(terminal, side).findIndex((tap) => tap.lead === lead && tap.end === end) * PITCH;
    feed(terminal, y, [{ branch: lead.branch, sign: end === 1 ? 1 : -1 }]);
    return { lead: lead.id, end, side, y, bar: barOf(terminal) };
  });
  const own = unit.part ?? unit.id;

  for (const inner of unit.inner.filter(straight)) {
    const y = rowOf(inner.from).y;
    pieces.push({
      part: inner.part,
      terms: [{ branch: inner.branch, sign: 1 }],
      route: [inner.from, inner.to].map((terminal) => ({ x: barOf(terminal), y })),
      symbol: inner.branch,
    });
    feed(inner.from, y, [{ branch: inner.branch, sign: -1 }]);
    feed(inner.to, y, [{ branch: inner.branch, sign: 1 }]);
  }
  if (star) {
    const bus = 30;
    const meet: Inflow[] = [];
    for (const { branch, from, to, part } of star.arms) {
      const outward = from === star.point;
      const tip = outward ? to : from;
      const { y } = rowOf(tip);
      const sign = outward ? 1 : -1;
      pieces.push({
        part,
        terms: [{ branch, sign }],
        route: [
          { x: bus, y },
          { x: barOf(tip), y },
        ],
        symbol: branch,
      });
      feed(tip, y, [{ branch, sign }]);
      meet.push({ y, terms: [{ branch, sign: sign === 1 ? -1 : 1 }] });
    }
    const { y } = rowOf(star.point);
    const out = meet.flatMap(({ terms }) => terms);
    pieces.push({
      part: own,
      terms: out,
      route: [
        { x: bus, y },
        { x: barOf(star.point), y },
      ],
    });
    feed(star.point, y, out);
    pieces.push(...barPieces(own, bus, [...meet, { y, terms: reversed(out) }]));
  }
  const reaching = new Map<string, { readonly y: number; readonly x: number; readonly terms: readonly Term[] }[]>();
  columned.forEach((inner, i) => {
    const [a, b] = [rowOf(inner.from), rowOf(inner.to)];
    const down = a.y <= b.y;
    const aside = (row: Row): number => (row.west === row.east && unit.form !== 'two-pole' ? PITCH / 2 : 0);
    const [ya, yb] = down ? [lastOf(a) + aside(a), b.y - aside(b)] : [a.y - aside(a), lastOf(b) + aside(b)];
    const x = columnX(lanes[i] ?? 0);
    pieces.push({
      part: inner.part,
      terms: [{ branch: inner.branch, sign: 1 }],
      route: [
        { x, y: ya },
        { x, y: yb },
      ],
      symbol: inner.branch,
    });
    for (const [terminal, y, sign] of [
      [inner.from, ya, 1],
      [inner.to, yb, -1],
    ] as const)
      reaching.set(terminal, [...(reaching.get(terminal) ?? []), { y, x, terms: [{ branch: inner.branch, sign }] }]);
  });
  for (const [terminal, all] of reaching)
    for (const y of new Set(all.map((one) => one.y)))
      for (const way of [-1, 1]) {
        const bar = barOf(terminal);
        const along = all
          .filter((one) => one.y === y && Math.sign(one.x - bar || 1) === way)
          .toSorted((p, q) => (p.x - q.x) * way);
        if (along.length === 0) continue;
        let x = bar;
        along.forEach((one, i) => {
          const terms = along.slice(i).flatMap((further) => further.terms);
          if (one.x !== x)
            pieces.push({
              part: own,
              terms,
              route: [
                { x, y },
                { x: one.x, y },
              ],
            });
          x = one.x;
        });
        feed(terminal, y, reversed(along.flatMap(({ terms }) => terms)));
      }
  if (unit.drop) feed(unit.drop.from, height, reversed(unit.drop.terms));

  const bars = [...inflows].flatMap(([terminal, all]) => {
    const x = barOf(terminal);
    pieces.push(...barPieces(own, x, all));
    const ys = ports
      .filter(({ lead, end }) =>
        taps.some((tap) => tap.lead.id === lead && tap.end === end && tap.lead.ends[end].terminal === terminal),
      )
      .map(({ y }) => y);
    return unit.form !== 'person' && (unit.form === 'bars' || new Set(ys).size > 1)
      ? [{ terminal, x, from: Math.min(rowOf(terminal).y, ...ys), to: Math.max(rowOf(terminal).y, ...ys) }]
      : [];
  });
  return { unit, width, height, head, ports, pieces, bars, drop_x: unit.drop ? barOf(unit.drop.from) : width / 2 };
}

const NOWHERE: Row = { west: undefined, east: undefined, y: 0, rows: 1 };

function reversed(terms: readonly Term[]): readonly Term[] {
  return terms.map(({ branch, sign }) => ({ branch, sign: sign === 1 ? -1 : 1 }));
}

function lastOf({ y, rows }: Row): number {
  return y + (rows - 1) * PITCH;
}

/** What flows down a bar between the heights at which something flows in or out. */
function barPieces(part: string, x: number, inflows: readonly Inflow[]): readonly Piece[] {
  const ys = [...new Set(inflows.map(({ y }) => y))].toSorted((a, b) => a - b);
  return ys.slice(1).map((to, i) => {
    const from = ys[i] ?? to;
    const terms = inflows.filter(({ y }) => y <= from).flatMap((one) => one.terms);
    return {
      part,
      terms,
      route: [
        { x, y: from },
        { x, y: to },
      ],
    };
  });
}

/** Three windings or more from one terminal are drawn as a star. */
function starOf({ form, inner }: Unit): { readonly point: string; readonly arms: readonly Inner[] } | undefined {
  if (form !== 'source') return undefined;
  for (const point of new Set(inner.flatMap(({ from, to }) => [from, to]))) {
    const arms = inner.filter(({ from, to }) => from === point || to === point);
    if (arms.length >= 3 || (arms.length === 1 && inner.length === 1 && point.endsWith('neutral')))
      return { point, arms };
  }
  return undefined;
}

/** A lane for each upright branch, so that no two lie on one another; those that only touch share one. */
function lanesOf(inner: readonly Inner[], rowOf: (terminal: string) => Row): readonly number[] {
  const taken: (readonly [number, number])[][] = [];
  return inner.map(({ from, to }) => {
    const [low, high] = [rowOf(from).y, rowOf(to).y].toSorted((a, b) => a - b) as [number, number];
    const free = taken.findIndex((lane) => lane.every(([a, b]) => high <= a || low >= b));
    const lane = free < 0 ? taken.length : free;
    taken[lane] = [...(taken[lane] ?? []), [low, high]];
    return lane;
  });
}
