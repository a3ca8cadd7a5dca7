import { abs, arg } from '../electrics/index.ts';
import { STRAY_A } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { Drain, Point, Ribbon } from './depiction.ts';
import { backward, distances, type Step } from './distance.ts';
import { LEAST_A, type Flow } from './flow.ts';
import { lengthOf } from './route.ts';
import { reference } from './source.ts';

/** Width of a ribbon, px: 3 at 1 mA, 2.2 more for every tenfold, 14 at most. */
export function ribbonWidth_px(amperes: number): number {
  return Math.min(14, Math.max(2.5, 3 + 2.2 * Math.log10(amperes / 0.001)));
}

const STEP_PER_DECADE = 22; // units of the drawing per second, for every tenfold above the least that is drawn
const OUT_s = 0.15; // the way out lights up
const HOME_s = 0.45; // then the way home, hop by hop: 0.6 s together
const TOUCH_s = 0.3;
const DRAIN_s = 0.4;

/** Everything that carries at least 0.5 mA. */
export function ribbons(build: Build, interval: Interval, all: readonly Flow[]): readonly Ribbon[] {
  const shown = all.filter(({ amperes }) => amperes >= LEAST_A);
  const along = reference(build, interval);
  const graph = graphOf(shown, ({ inPhase_A }) => inPhase_A);
  const winding = new Set(build.sources.map((branch) => build.branches[branch]?.name));
  const isSource = (one: Flow): boolean => winding.has(one.stretch?.of[0]);
  const reach = distances(
    graph.steps.filter((_, i) => !isSource(at(shown, i))),
    sourceEnds(graph.steps, shown, isSource),
  );
  const arrival = arrivals(shown, interval, isSource);
  return shown.map((one, i): Ribbon => {
    const sign = one.inPhase_A < 0 ? -1 : 1;
    const step = at(graph.steps, i);
    return {
      id: one.id,
      part: one.part,
      branches: one.stretch?.of ?? [],
      route: one.route,
      kind: one.kind,
      amperes: one.amperes,
      inPhase_A: one.inPhase_A,
      width_px: ribbonWidth_px(one.amperes),
      speed: sign * STEP_PER_DECADE * Math.log10(one.amperes / LEAST_A + 1),
      phase_rad: turned(arg({ re: one.current.re * sign, im: one.current.im * sign }) - arg(along)),
      reach: isSource(one) ? -step.length : (reach.get(step.from) ?? 0),
      ...arrival(one, i),
      casing: !(one.stretch?.bare ?? false),
      faint: one.kind === 'stray' && one.amperes < STRAY_A && abs(one.change) < LEAST_A,
      ...(one.stretch?.wire ? { wire: one.stretch.wire } : {}),
      over: one.role === 'person' ? 'people' : 'parts',
    };
  });
}

/** How the ribbons of the interval before empty away from a device that has just opened. */
export function drains(
  build: Build,
  interval: Interval,
  before: readonly Flow[],
  now: readonly Flow[],
): readonly Drain[] {
  if (interval.because.kind !== 'device-operated') return [];
  const { device } = interval.because;
  const poles = new Set(
    build.devices.find(({ name }) => name === device)?.poles.map((pole) => build.branches[pole]?.name),
  );
  const carrying = new Set(now.filter(({ amperes }) => amperes >= LEAST_A).map(({ id }) => id));
  const gone = before.filter(({ amperes, id }) => amperes >= LEAST_A && !carrying.has(id));
  const { steps } = graphOf(gone, () => 1);
  const breaks = steps.filter((_, i) => at(gone, i).stretch?.of.some((name) => poles.has(name)));
  const away = distances(
    [...steps, ...backward(steps)],
    breaks.flatMap(({ from, to }) => [from, to]),
  );
  const far = Math.max(
    1,
    ...steps.map(({ from, to, length }) => length + Math.min(away.get(from) ?? 0, away.get(to) ?? 0)),
  );
  return gone.map(({ id }, i) => {
    const { from, to, length } = at(steps, i);
    const [a, b] = [away.get(from) ?? 0, away.get(to) ?? 0];
    return {
      id,
      from: a <= b ? 'start' : 'end',
      delay_s: (Math.min(a, b) / far) * DRAIN_s,
      run_s: (length / far) * DRAIN_s,
    };
  });
}

type Arrival = Pick<Ribbon, 'delay_s' | 'run_s'>;

/** When each ribbon appears after the interval has begun: the way out from the winding, then the way home from the fault. */
function arrivals(
  shown: readonly Flow[],
  interval: Interval,
  isSource: (one: Flow) => boolean,
): (one: Flow, i: number) => Arrival {
  const fault = interval.fault;
  const graph = graphOf(shown, ({ changeInPhase_A, inPhase_A }) => (fault ? changeInPhase_A : inPhase_A));
  const faultIndex = shown.findIndex(({ stretch }) => stretch?.of.includes(fault?.condition ?? ''));
  const start = graph.steps[faultIndex];
  if (!fault || !start)
    return (one) => (one.kind === 'person' ? { delay_s: 0, run_s: TOUCH_s } : { delay_s: 0, run_s: 0 });
  const brought = (one: Flow): boolean => one.kind !== 'load' && Math.abs(one.changeInPhase_A) >= LEAST_A / 2;
  const passable = (one: Flow): boolean => brought(one) || one.role === 'neutral';
  const cutOpen = graph.steps.filter((_, i) => passable(at(shown, i)) && !isSource(at(shown, i)) && i !== faultIndex);
  const home = distances(cutOpen, [start.to]);
  const out = distances(cutOpen, sourceEnds(graph.steps, shown, isSource));
  const longestHome = Math.max(
    1,
    ...graph.steps.map(({ from, length }, i) => (brought(at(shown, i)) ? (home.get(from) ?? 0) + length : 0)),
  );
  const longestOut = Math.max(1, out.get(start.from) ?? 1);
  return (one, i) => {
    const { from, length } = at(graph.steps, i);
    if (one.kind === 'load' || (one.kind !== 'person' && Math.abs(one.changeInPhase_A) < LEAST_A / 2))
      return { delay_s: 0, run_s: 0 };
    const passed = home.get(from);
    if (passed !== undefined && i !== faultIndex)
      return { delay_s: OUT_s + (passed / longestHome) * HOME_s, run_s: (length / longestHome) * HOME_s };
    const left = Math.min(longestOut, out.get(from) ?? 0);
    return { delay_s: (left / longestOut) * OUT_s, run_s: (length / longestOut) * OUT_s };
  };
}

/** The stretches as directed steps between the points where they meet. */
function graphOf(shown: readonly Flow[], direction: (one: Flow) => number): { readonly steps: readonly Step[] } {
  const steps = shown.map((one, branch): Step => {
    const { start, end, length } = spanOf(one.route);
    return direction(one) < 0 ? { branch, from: end, to: start, length } : { branch, from: start, to: end, length };
  });
  return { steps };
}

/** Length of a route and where it begins and ends, as numbers that are equal where routes meet. Routes never change. */
interface Span {
  readonly start: number;
  readonly end: number;
  readonly length: number;
}

const spans = new WeakMap<readonly Point[], Span>();

function spanOf(route: readonly Point[]): Span {
  const known = spans.get(route);
  if (known) return known;
  const spot = (point: Point | undefined): number => Math.round(point?.x ?? 0) * 100_000 + Math.round(point?.y ?? 0);
  const made = { start: spot(route[0]), end: spot(route.at(-1)), length: lengthOf(route) };
  spans.set(route, made);
  return made;
}

function sourceEnds(
  steps: readonly Step[],
  shown: readonly Flow[],
  isSource: (one: Flow) => boolean,
): readonly number[] {
  return steps.filter((_, i) => isSource(at(shown, i))).map(({ to }) => to);
}

function at<Item>(list: readonly Item[], i: number): Item {
  const item = list[i];
  if (item === undefined) throw new RangeError(`ribbons: no item ${i} of ${list.length}`);
  return item;
}

/** The same angle within ±π. */
function turned(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}
