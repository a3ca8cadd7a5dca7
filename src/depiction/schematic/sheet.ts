import type { Box as Rect, Point } from '../depiction.ts';
import type { Box } from './box.ts';
import type { Lead, Term } from './circuit.ts';
import type { Plan } from './graph.ts';

/** What the layout library answers: places of the boxes, bends of the wires. */
export interface Laid {
  readonly children?: readonly { readonly id: string; readonly x?: number; readonly y?: number }[];
  readonly edges?: readonly {
    readonly id: string;
    readonly sources: readonly string[];
    readonly sections?: readonly {
      readonly startPoint: Point;
      readonly endPoint: Point;
      readonly bendPoints?: readonly Point[];
    }[];
  }[];
}

/** A stretch of the sheet with what flows along it. */
export interface Stretch {
  readonly id: string;
  readonly part: string;
  readonly terms: readonly Term[];
  readonly route: readonly Point[];
  readonly symbol?: number;
  readonly earthing: boolean;
  /** Of the soil, not of any metal. */
  readonly soil: boolean;
}

/** An electrode, a floor or the earth itself, at the foot of the sheet. */
export interface Foot {
  readonly part: string | undefined;
  readonly at: Point;
  readonly branch: number;
}

/** A box in its place. */
export interface Placed {
  readonly box: Box;
  readonly card: Rect;
}

/** An installation laid out: the same for every condition, moment and vocabulary. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly placed: readonly Placed[];
  readonly stretches: readonly Stretch[];
  readonly feet: readonly Foot[];
  /** Height of the surface of the soil. */
  readonly ground: number;
}

const FOOT_WIDTH = 112;
const FOOT_HEIGHT = 118;
const LANE = 8;
const ASIDE = 10;
const DEEP = 28;

/** The sheet of an installation, from the places the layout library found. @throws RangeError if one is missing */
export function sheetOf({ circuit, boxes }: Plan, laid: Laid): Sheet {
  const corners = new Map((laid.children ?? []).map(({ id, x = 0, y = 0 }) => [id, { x, y }]));
  const placed = boxes.map((box): Placed => {
    const corner = corners.get(box.unit.id);
    if (!corner) throw new RangeError(`sheetOf: the layout has no place for "${box.unit.id}"`);
    return { box, card: { ...corner, width: box.width, height: box.height } };
  });
  const find = new Map(placed.map((one) => [one.box.unit.id, one]));
  const wires = circuit.leads.map((lead) => wire(lead, laid, find));
  const inside = placed.flatMap(({ box, card }) =>
    box.pieces.map(({ part, terms, route, symbol }, i): Stretch => ({
      id: `${box.unit.id} ${i}`,
      part,
      terms,
      route: route.map(({ x, y }) => ({ x: x + card.x, y: y + card.y })),
      ...(symbol === undefined ? {} : { symbol }),
      earthing: box.unit.form === 'electrode' || box.unit.form === 'pipe',
      soil: false,
    })),
  );
  const lowest = Math.max(
    ...placed.map(({ card }) => card.y + card.height),
    ...wires.flatMap(({ route }) => route.map(({ y }) => y)),
  );
  const { stretches: down, feet, ground, right } = soil(placed, lowest);
  const width =
    Math.max(
      right,
      ...placed.map(({ card }) => card.x + card.width),
      ...wires.flatMap(({ route }) => route.map(({ x }) => x)),
    ) + 24;
  return {
    width,
    height: ground + (feet.length > 0 ? FOOT_HEIGHT : 12),
    placed,
    stretches: [...wires, ...inside, ...down],
    feet,
    ground,
  };
}

function wire({ id, branch, part, earthing, ends }: Lead, laid: Laid, find: ReadonlyMap<string, Placed>): Stretch {
  const edge = laid.edges?.find((one) => one.id === id);
  const section = edge?.sections?.[0];
  if (!edge || !section) throw new RangeError(`sheetOf: the layout has no wire for "${id}"`);
  const run = [section.startPoint, ...(section.bendPoints ?? []), section.endPoint];
  const forth = edge.sources[0] === `${id} 0` ? run : run.toReversed();
  const tips = ([0, 1] as const).map((end): Point => {
    const there = find.get(ends[end].unit);
    const port = there?.box.ports.find((one) => one.lead === id && one.end === end);
    return { x: (there?.card.x ?? 0) + (port?.bar ?? 0), y: (there?.card.y ?? 0) + (port?.y ?? 0) };
  });
  const route = [...tips.slice(0, 1), ...forth, ...tips.slice(1)].map(({ x, y }) => ({ x: tenth(x), y: tenth(y) }));
  return { id, part, terms: [{ branch, sign: 1 }], route: straightened(route), earthing, soil: false };
}

/** The ways down to the soil, what stands at their feet, and the line in the soil along which all of them meet. */
function soil(
  placed: readonly Placed[],
  lowest: number,
): {
  readonly stretches: readonly Stretch[];
  readonly feet: readonly Foot[];
  readonly ground: number;
  readonly right: number;
} {
  const dropping = placed.flatMap((one) =>
    one.box.unit.drop ? [{ one, drop: one.box.unit.drop, x: clearOf(one, placed) }] : [],
  );
  const sorted = dropping.toSorted((a, b) => a.x - b.x || a.one.card.y - b.one.card.y);
  if (sorted.length === 0) return { stretches: [], feet: [], ground: lowest, right: 0 };
  const ground = lowest + 14 + LANE * sorted.length;
  const stretches: Stretch[] = [];
  const feet: Foot[] = [];
  const deep = ground + DEEP;
  let last = FOOT_WIDTH / 2 - FOOT_WIDTH + 8;
  const into: { readonly x: number; readonly terms: readonly Term[] }[] = [];
  sorted.forEach(({ one, drop, x }, i) => {
    const start = { x: one.card.x + one.box.drop_x, y: one.card.y + one.card.height };
    const at = Math.max(x, last + FOOT_WIDTH);
    last = at;
    const jog = lowest + 10 + LANE * (sorted.length - 1 - i);
    const { part, id } = one.box.unit;
    const foot = { x: at, y: ground };
    const route = [start, { x, y: start.y }, { x, y: jog }, { x: at, y: jog }, foot];
    const earthing = one.box.unit.form !== 'person';
    stretches.push({
      id: `${id} down`,
      part: part ?? id,
      terms: drop.terms,
      route: straightened(route),
      earthing,
      soil: false,
    });
    const under = drop.floor?.terms ?? drop.terms;
    const owner = drop.floor?.part ?? part;
    stretches.push({
      id: `${owner ?? id} into the soil`,
      part: owner ?? 'earth',
      terms: under,
      route: [foot, { x: at, y: deep }],
      earthing: true,
      soil: true,
    });
    feet.push({ part: owner, at: foot, branch: under[0]?.branch ?? -1 });
    into.push({ x: at, terms: under });
  });
  into.slice(1).forEach(({ x }, i) => {
    const before = into[i]?.x ?? x;
    const terms = into.slice(0, i + 1).flatMap((one) => one.terms);
    stretches.push({
      id: `soil ${i}`,
      part: 'earth',
      terms,
      route: [
        { x: before, y: deep },
        { x, y: deep },
      ],
      earthing: true,
      soil: true,
    });
  });
  return { stretches, feet, ground, right: last + FOOT_WIDTH / 2 };
}

/** Straight down where nothing stands below; otherwise beside all that stands there. */
function clearOf({ box, card }: Placed, placed: readonly Placed[]): number {
  const x = card.x + box.drop_x;
  const below = placed.filter(
    ({ card: other }) => other !== card && other.y > card.y && other.x - ASIDE < x && x < other.x + other.width + ASIDE,
  );
  return below.length === 0
    ? x
    : Math.max(card.x + card.width, ...below.map(({ card: other }) => other.x + other.width)) + ASIDE;
}

function straightened(route: readonly Point[]): readonly Point[] {
  const moved = route.filter((point, i) => i === 0 || point.x !== route[i - 1]?.x || point.y !== route[i - 1]?.y);
  return moved.filter((point, i) => {
    const [before, after] = [moved[i - 1], moved[i + 1]];
    if (!before || !after) return true;
    return !((before.x === point.x && point.x === after.x) || (before.y === point.y && point.y === after.y));
  });
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
