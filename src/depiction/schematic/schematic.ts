import { abs, add, type Complex } from '../../electrics/index.ts';
import type { Vocabulary } from '../../explain/index.ts';
import type { Build } from '../../installation/index.ts';
import { at, type Interval, type Timeline } from '../../scenario/index.ts';
import type { Drain, Hotspot, Point, Ribbon } from '../depiction.ts';
import { kindOf, LEAST_A, type Flow } from '../flow.ts';
import { touchable } from '../halos.ts';
import { hotspots } from '../hotspots.ts';
import { personView } from '../person.ts';
import { drains, ribbons } from '../ribbons.ts';
import { inPhase, reference } from '../source.ts';
import type { Term } from './circuit.ts';
import { cardsOf, rectsOf, type CardView } from './cards.ts';
import { middle } from './middle.ts';
import { absent, marksOf } from './now.ts';
import { symbolOf, type SymbolName } from './symbolOf.ts';
import type { Sheet, Stretch } from './sheet.ts';

/** A symbol where it stands; turned by a quarter where its wire runs upright. */
export interface SymbolView {
  readonly id: string;
  readonly part: string;
  readonly symbol: SymbolName;
  readonly at: Point;
  readonly upright: boolean;
  readonly open: boolean;
  /** Not there, or switched off. */
  readonly faint: boolean;
}

/** A conductor as it is now. */
export interface WireView {
  readonly id: string;
  readonly route: readonly Point[];
  readonly style: 'live' | 'neutral' | 'protective' | 'limb' | 'soil';
  readonly broken: boolean;
  readonly loose: boolean;
}

/** Everything on the sheet at one moment. */
export interface Schematic {
  readonly width: number;
  readonly height: number;
  readonly ground: number;
  readonly cards: readonly CardView[];
  readonly wires: readonly WireView[];
  readonly bars: readonly { readonly id: string; readonly x: number; readonly from: number; readonly to: number }[];
  readonly dots: readonly Point[];
  readonly symbols: readonly SymbolView[];
  readonly ribbons: readonly Ribbon[];
  readonly drains: readonly Drain[];
  readonly hotspots: readonly Hotspot[];
  readonly spark?: Point;
}

/** What the sheet of an installation shows at a moment of a run. */
export function schematic(sheet: Sheet, timeline: Timeline, time_s: number, vocabulary: Vocabulary): Schematic {
  const { build, intervals } = timeline;
  const interval = at(timeline, time_s);
  const gone = absent(build, interval);
  const there = sheet.stretches.filter(
    (stretch) => !stretch.terms.some(({ branch }) => stretch.terms.length === 1 && gone.has(branch)),
  );
  const flows = flowsOf(build, interval, there);
  const before = interval.because.kind === 'device-operated' ? intervals[intervals.indexOf(interval) - 1] : undefined;
  const metal = touchable(build, interval);
  const person = personView(timeline, interval, vocabulary);
  const rects = rectsOf(sheet, build);
  const marks = marksOf(build, interval);
  const place = {
    plates: Object.fromEntries([...rects].map(([part, { x, y, width }]) => [part, { x: x + width / 2, y: y + 12 }])),
    targets: Object.fromEntries(rects),
    ranks: {},
    offers: {},
    appears: {},
  };
  const fault = there.find(
    ({ terms }) => terms.length === 1 && terms[0]?.branch === interval.fault?.branch && terms[0] !== undefined,
  );
  const struck = flows.find(({ id }) => id === fault?.id);
  return {
    width: sheet.width,
    height: sheet.height,
    ground: sheet.ground,
    cards: cardsOf(sheet, build, interval, metal, person.reaction, vocabulary),
    wires: there.flatMap((stretch) => wireView(stretch, build, interval, marks)),
    bars: sheet.placed.flatMap(({ box, card }) =>
      box.bars.map(({ terminal, x, from, to }) => ({
        id: terminal,
        x: card.x + x,
        from: card.y + from,
        to: card.y + to,
      })),
    ),
    dots: sheet.placed.flatMap(({ box, card }) =>
      box.bars.flatMap(({ x, from, to }) => (to > from ? [] : [{ x: card.x + x, y: card.y + from }])),
    ),
    symbols: [...there.flatMap((stretch) => symbolView(stretch, build, interval)), ...feetOf(sheet, build)],
    ribbons: ribbons(build, interval, flows),
    drains: before ? drains(build, interval, flowsOf(build, before, there), flows) : [],
    hotspots: hotspots(build, interval, place, metal, person, vocabulary),
    ...(fault && (struck?.amperes ?? 0) >= LEAST_A ? { spark: middle(fault.route).at } : {}),
  };
}

/** What flows along every stretch. */
function flowsOf(build: Build, interval: Interval, stretches: readonly Stretch[]): readonly Flow[] {
  const along = reference(build, interval);
  const sum = (terms: readonly Term[], of: Interval['solution']['amperes']): Complex =>
    terms.reduce<Complex>(
      (total, { branch, sign }) => add(total, { re: sign * (of.re[branch] ?? 0), im: sign * (of.im[branch] ?? 0) }),
      { re: 0, im: 0 },
    );
  return stretches.map(({ id, part, terms, route, earthing }): Flow => {
    const current = sum(terms, interval.solution.amperes);
    const change = interval.fault ? sum(terms, interval.fault.change.amperes) : { re: 0, im: 0 };
    const size = ({ branch }: Term): number =>
      Math.hypot(interval.solution.amperes.re[branch] ?? 0, interval.solution.amperes.im[branch] ?? 0);
    const [main] = terms.toSorted((a, b) => size(b) - size(a));
    const role = build.branches[main?.branch ?? -1]?.role ?? 'line';
    const flow: Flow = {
      id,
      part,
      role,
      route,
      stretch: {
        ...PLAIN,
        id,
        part,
        route,
        of: terms.flatMap(({ branch }) => build.branches[branch]?.name ?? []),
        role,
        earthing,
      },
      current,
      change,
      amperes: abs(current),
      inPhase_A: inPhase(current, along),
      changeInPhase_A: inPhase(change, along),
      kind: 'load',
    };
    return { ...flow, kind: kindOf(flow, build, interval) };
  });
}

const PLAIN = {
  share: 1,
  wire: undefined,
  width: 2,
  bare: true,
  earthed: false,
  absent: [],
  present: [],
  breaks: {},
  loosens: {},
} as const;

function wireView(
  stretch: Stretch,
  build: Build,
  interval: Interval,
  marks: ReturnType<typeof marksOf>,
): readonly WireView[] {
  const { id, terms, route, soil } = stretch;
  if (terms.length === 0) return [];
  const roles = new Set(terms.map(({ branch }) => build.branches[branch]?.role));
  const name = terms.length === 1 ? (build.branches[terms[0]?.branch ?? -1]?.name ?? '') : '';
  const all = (...some: readonly string[]): boolean => [...roles].every((role) => some.includes(role ?? ''));
  const style = soil
    ? 'soil'
    : all('person', 'floor')
      ? 'limb'
      : all('protective', 'bond', 'electrode', 'pipe', 'insulation')
        ? 'protective'
        : all('neutral')
          ? 'neutral'
          : 'live';
  if (style === 'limb' && terms.every(({ branch }) => absent(build, interval).has(branch))) return [];
  if (style === 'soil') return [];
  return [{ id, route, style, broken: marks.broken.has(name), loose: marks.loose.has(name) }];
}

function symbolView(
  { id, part, route, symbol, terms }: Stretch,
  build: Build,
  interval: Interval,
): readonly SymbolView[] {
  const info = build.branches[symbol ?? -1];
  if (symbol === undefined || info === undefined) return [];
  const made = build.installation.parts[part];
  const state = interval.devices.find(({ device }) => device === part)?.state;
  const opens = build.devices.find((one) => one.name === part)?.poles.includes(symbol) ?? false;
  const name = symbolOf(made, info, opens, build.installation.frequency_Hz === 0);
  if (name === undefined) return [];
  const where = middle(route);
  const ohms = Math.hypot(interval.values.impedance.re[symbol] ?? 0, interval.values.impedance.im[symbol] ?? 0);
  return [
    {
      id: `${id} ${terms.length}`,
      part,
      symbol: name,
      at: where.at,
      upright: where.upright,
      open: (opens && state === 'open') || (made?.kind === 'transfer-switch' && ohms > 1e6),
      faint: state === 'not fitted' || (made?.kind === 'appliance' && ohms > 1e6),
    },
  ];
}

function feetOf({ feet }: Sheet, build: Build): readonly SymbolView[] {
  return feet.map(({ part, at: where, branch }, i) => {
    const kind = part === undefined ? undefined : build.installation.parts[part]?.kind;
    return {
      id: `foot ${i} ${branch}`,
      part: part ?? 'earth',
      symbol: kind === undefined ? 'earth' : kind === 'floor' ? 'floor' : 'electrode',
      at: where,
      upright: false,
      open: false,
      faint: false,
    };
  });
}
