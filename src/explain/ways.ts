import { abs, dividePaths, project, type Complex, type Path } from '../electrics/index.ts';
import type { Build } from '../installation/index.ts';
import type { FaultShare, Interval } from '../scenario/index.ts';
import type { WayKind } from './finding.ts';
import { fromImpedance, isTouch, nameWay, stationsOf, stepsOf, type Step } from './route.ts';

/** One way home before it is worded. */
export interface Way {
  readonly key: string;
  readonly kind: WayKind;
  /** What distinguishes it: the electrode where it leaves metal, the person and limbs, the load, plain impedances; empty where the kind says it all. */
  readonly by: readonly string[];
  readonly amperes: number;
  /** Terminals and joints from the fault or the load to the winding, of the path with most current. */
  readonly stations: readonly string[];
  readonly branches: readonly number[];
  /** True if it is metal from the fault or load to the winding. */
  readonly metal: boolean;
}

/** How one current divides, before it is worded. */
export interface Division {
  readonly of: 'fault' | 'load';
  readonly total_A: number;
  readonly circulating_A: number;
  readonly ways: readonly Way[];
}

/** Below this a way is counted among the smaller ones, A: a fifth of what anybody can feel (0.5 mA, IEC 60479-1). */
const SMALL_A = 1e-4;
/** Below this there is no current to divide, A. */
const NO_CURRENT_A = 1e-4;
/** All the smaller ways together are left untold below this share of the whole: three figures do not show them. */
const UNTOLD = 1e-5;

/** So much of a fault current may stand in for what loads no longer take without being told apart. */
const BESIDE = 0.05;

const known = new WeakMap<Interval, Division | 'none'>();

/** Divides the current of an interval into its ways home, or null if there is none to speak of.
 *
 *  A fault is counted as the change that closing it makes, in phase with the fault current, loops cut at the windings:
 *  from the fault's side that was not live, back to a winding. What ends at the fault's other side, in place of what the loads
 *  beside the fault no longer take, belongs to the way by which it left while it is little; more is a way of its own.
 *  Without a fault, or where the fault
 *  only gives a working current another road, what the windings deliver is divided. */
export function divide(build: Build, interval: Interval): Division | null {
  const before = known.get(interval);
  if (before !== undefined) return before === 'none' ? null : before;
  const division =
    (interval.fault === undefined ? null : ofFault(build, interval, interval.fault)) ?? ofLoad(build, interval);
  known.set(interval, division ?? 'none');
  return division;
}

function ofFault(build: Build, interval: Interval, fault: FaultShare): Division | null {
  const total_A = abs(fault.amperes);
  const ends = build.network.branches[fault.branch];
  if (total_A < NO_CURRENT_A || ends === undefined) return null;
  const flow = project(fault.change.amperes, fault.amperes);
  const reversed = voltsBefore(interval, fault, ends.from) < voltsBefore(interval, fault, ends.to);
  const start = reversed ? ends.from : ends.to;
  const other = reversed ? ends.to : ends.from;
  if (reversed) flow.forEach((amperes, branch) => (flow[branch] = -amperes));
  const { paths, circulating_A } = dividePaths(build.network, flow, [...build.sources, fault.branch]);
  const routes = routesOf(build, paths).filter(({ steps }) => steps[0]?.from === start);
  const home_A = sum(routes.filter(({ steps }) => steps.at(-1)?.to !== other));
  if (home_A < total_A / 2) return null;
  const little = total_A - home_A < total_A * BESIDE;
  const ways = routes.map(({ steps, amperes }): Way => {
    const load = steps.at(-1)?.to === other ? steps.find(({ info }) => info.role === 'load') : undefined;
    const told = load === undefined ? steps : steps.slice(0, steps.indexOf(load));
    const way = wayOf(build, interval, 'fault', amperes, steps, told, told, start);
    if (load === undefined || (little && told.length > 0)) return way;
    return { ...way, key: `load:relief:${load.info.part}`, kind: 'load', by: ['relief', load.info.part] };
  });
  return { of: 'fault', total_A, circulating_A, ways: tidy(ways, total_A) };
}

/** Volts of a node before the fault: the live side of a fault is the one that stood higher, home begins at the other. */
function voltsBefore({ solution }: Interval, { change }: FaultShare, node: number): number {
  const { re, im } = solution.volts;
  return Math.hypot((re[node] ?? 0) - (change.volts.re[node] ?? 0), (im[node] ?? 0) - (change.volts.im[node] ?? 0));
}

function ofLoad(build: Build, interval: Interval): Division | null {
  const { amperes } = interval.solution;
  let busiest: Complex = { re: 0, im: 0 };
  let part = '';
  for (const source of build.sources) {
    const here = { re: amperes.re[source] ?? 0, im: amperes.im[source] ?? 0 };
    if (abs(here) <= abs(busiest)) continue;
    busiest = here;
    part = build.branches[source]?.part ?? '';
  }
  if (abs(busiest) < NO_CURRENT_A) return null;
  // In phase with the busiest winding, so that the whole is what an ammeter at its terminal reads.
  const { paths, circulating_A } = dividePaths(build.network, project(amperes, busiest), build.sources);
  const all = routesOf(build, paths).filter(({ steps }) => isOf(build, part, steps));
  const working = all.filter(({ steps }) => !isSeriesJoint(build, interval, steps));
  const routes = working.length === 0 ? all : working;
  const total_A = sum(routes);
  if (total_A < NO_CURRENT_A) return null;
  const ways = routes.map(({ steps, amperes }) => {
    const out = outward(build, steps);
    const turn = out.findIndex(({ info }) => info.role === 'load');
    const home = out.slice((turn < 0 ? out.findIndex((step) => isTouch(build, step)) : turn) + 1);
    const start = home[0]?.from ?? 0;
    const way = wayOf(build, interval, 'load', amperes, out, out, home, start);
    const passed = fromImpedance(build, out);
    if (way.kind !== 'other' || passed.length === 0) return way;
    // Of the impedances that name it the first is passed too, though home begins behind it.
    return { ...way, stations: stationsOf(build, interval, start, passed).slice(1) };
  });
  return { of: 'load', total_A, circulating_A, ways: tidy(ways, total_A) };
}

/** Behind a transformer of the place itself a circuit of its own begins: only that of the busiest winding is divided. */
function isOf(build: Build, part: string, steps: readonly Step[]): boolean {
  const own = (one: string) => build.installation.parts[one]?.kind;
  const apart = build.sources.some((source) => DERIVED.has(own(build.branches[source]?.part ?? '') ?? ''));
  if (!apart) return true;
  const ends = build.sources.flatMap((source) =>
    build.branches[source]?.part === part ? (build.network.branches[source] ?? []) : [],
  );
  const start = steps[0]?.from;
  const end = steps.at(-1)?.to;
  return ends.some(({ from, to }) => start === from || start === to || end === from || end === to);
}

const DERIVED: ReadonlySet<string> = new Set(['isolating-transformer', 'ideal-transformer', 'coupled-windings']);

/** Two windings in series give one current, not two: metal from one to another that takes next to none of their volts. */
const NO_DROP = 0.01;

function isSeriesJoint(build: Build, { solution, values }: Interval, steps: readonly Step[]): boolean {
  const [from, to] = [steps[0]?.from ?? 0, steps.at(-1)?.to ?? 0];
  const ends = build.sources.flatMap((source) => build.network.branches[source] ?? []);
  const same = ends.some((winding) => winding.to === from && winding.from === to);
  if (same || steps.some(({ info }) => info.medium !== 'metal')) return false;
  const { re, im } = solution.volts;
  const drop_V = Math.hypot((re[from] ?? 0) - (re[to] ?? 0), (im[from] ?? 0) - (im[to] ?? 0));
  const emf_V = Math.max(0, ...build.sources.map((at) => Math.hypot(values.emf.re[at] ?? 0, values.emf.im[at] ?? 0)));
  return drop_V < NO_DROP * emf_V;
}

interface Route {
  readonly steps: readonly Step[];
  readonly amperes: number;
}

function routesOf(build: Build, paths: readonly Path[]): readonly Route[] {
  return paths.flatMap((path) => {
    const steps = stepsOf(build, path);
    return steps.length === 0 ? [] : [{ steps, amperes: path.amperes }];
  });
}

function sum(ways: readonly { readonly amperes: number }[]): number {
  return ways.reduce((whole, { amperes }) => whole + amperes, 0);
}

function wayOf(
  build: Build,
  interval: Interval,
  of: 'fault' | 'load',
  amperes: number,
  steps: readonly Step[],
  told: readonly Step[],
  home: readonly Step[],
  start: number,
): Way {
  return {
    ...nameWay(build, of, told),
    amperes,
    stations: stationsOf(build, interval, start, home),
    branches: steps.map(({ branch }) => branch),
    metal: home.every(({ info }) => info.medium === 'metal'),
  };
}

/** A working current that sets out from the middle of a winding is told the other way round: out on the line, home on
 *  the rest. It alternates; which half cycle is looked at is ours to choose. */
function outward(build: Build, steps: readonly Step[]): readonly Step[] {
  const start = steps[0]?.from;
  if (!build.sources.some((source) => build.network.branches[source]?.from === start)) return steps;
  return steps.toReversed().map((step) => ({ ...step, from: step.to, to: step.from }));
}

/** Ways with one name become one; largest first; what is too small to tell apart comes last, or goes into the largest
 *  where three figures would not show it. The sum is the total. */
function tidy(ways: readonly Way[], total_A: number): readonly Way[] {
  const groups = new Map<string, { way: Way; largest_A: number }>();
  for (const way of ways) groups.set(way.key, joined(groups.get(way.key), way));
  const least_A = Math.min(SMALL_A, total_A / 100);
  const all = [...groups.values()].map(({ way }) => way);
  const told = all.filter(({ kind, by, amperes }) => (kind !== 'other' || by.length > 0) && amperes >= least_A);
  told.sort((a, b) => b.amperes - a.amperes);
  const rest_A = total_A - sum(told);
  const [largest, ...others] = told;
  if (largest !== undefined && rest_A < total_A * UNTOLD)
    return [{ ...largest, amperes: total_A - sum(others) }, ...others];
  const branches = all.filter((way) => !told.includes(way)).flatMap((way) => way.branches);
  const rest = { key: 'other', kind: 'other', by: [], amperes: rest_A, stations: [], metal: false } as const;
  return [...told, { ...rest, branches: [...new Set(branches)] }];
}

function joined(group: { way: Way; largest_A: number } | undefined, way: Way): { way: Way; largest_A: number } {
  if (group === undefined) return { way, largest_A: way.amperes };
  const [main, side] = way.amperes > group.largest_A ? [way, group.way] : [group.way, way];
  return {
    way: {
      ...main,
      by: [...new Set([...main.by, ...side.by])],
      amperes: group.way.amperes + way.amperes,
      branches: [...new Set([...main.branches, ...side.branches])],
      metal: main.metal && side.metal,
    },
    largest_A: Math.max(group.largest_A, way.amperes),
  };
}
