import type { Build } from '../installation/index.ts';
import type { FaultShare, Interval, Timeline } from '../scenario/index.ts';
import type { Finding } from './finding.ts';
import { aboveFloor_V, between_V, branch_A, LIVE_V, TOUCH_LIMIT_V, touchables, type Metal } from './metal.ts';
import { legs, strays } from './normalState.ts';
import { disconnectionTime_s } from './verdicts/disconnection.ts';
import { earthingOf } from './verdicts/earthing.ts';
import { divide } from './ways.ts';

/** Below this a fault has found nothing to drive through it, A. */
const NO_CURRENT_A = 1e-3;

/** A way that carries less is in the ledger, not in the story, A: below what people feel (0.5 mA, IEC 60479-1). */
const WORTH_TELLING_A = 5e-4;

/** Metal at fewer volts is not spoken of even where the fault reaches it, V (invented). */
const NO_VOLTS_V = 0.01;

/** Volts beyond this many times those of one line come from two. */
const BETWEEN_LINES = 1.2;

/** A stray current that the fault raises by less is not told again. */
const MORE = 1.1;

/** The interval in which the fault strikes, or undefined. */
export function struckInterval(timeline: Timeline): Interval | undefined {
  return timeline.intervals.find(({ because }) => because.kind === 'fault-strikes');
}

/** What the fault does in the instant it strikes: its current, its ways home, what it makes live. */
export function faultState(timeline: Timeline, struck: Interval): readonly Finding[] {
  const { build } = timeline;
  const opens = timeline.intervals.some(({ because }) => because.kind === 'device-operated');
  return [
    ...current(build, struck, timeline),
    ...ways(build, struck),
    ...liveMetal(timeline, struck),
    ...(opens ? [] : legs(build, struck)),
  ];
}

/** What is to be said of the fault when all is over: does the load work on, did it end in time, was there metal. */
export function faultVerdict(timeline: Timeline, struck: Interval): readonly Finding[] {
  const last = timeline.intervals.at(-1);
  if (last === undefined) return [];
  const at_s = last.start_s;
  return [
    ...runsOn(timeline, struck, last),
    ...inTime(timeline, struck, at_s),
    ...metalHome(timeline.build, struck, at_s),
  ];
}

/** Metal that is live from this interval on, and until when; first the metal the fault reaches, however few its volts. */
export function liveMetal(timeline: Timeline, from: Interval): readonly Finding[] {
  const { build } = timeline;
  const faulty = from.fault === undefined ? undefined : faultedPart(build, from.fault.condition);
  const metals = touchables(build.installation);
  const inOrder = [...metals.filter(({ part }) => part === faulty), ...metals.filter(({ part }) => part !== faulty)];
  return inOrder.flatMap((metal): Finding[] => {
    const volts = aboveFloor_V(build, from.solution, metal.terminal);
    if (volts < LIVE_V && (metal.part !== faulty || volts < NO_VOLTS_V)) return [];
    const until_s = deadFrom(timeline, metal, from, Math.min(LIVE_V, volts / 2));
    return [{ kind: 'live-metal', at_s: from.start_s, part: metal.part, what: metal.what, volts, until_s }];
  });
}

/** Longest time a final circuit of this supply may take to disconnect, s. */
export function disconnectionLimit_s(build: Build, nominal_V: number): number {
  return disconnectionTime_s(earthingOf(build), nominal_V);
}

/** How the supply of a fault is earthed. Metal that is no case says nothing of it: where only soil leads home it is TT. */
function earthingUnder(build: Build, struck: Interval): 'TN' | 'TT' | 'IT' {
  const made = struck.fault && build.installation.parts[faultedPart(build, struck.fault.condition) ?? ''];
  const ways = divide(build, struck)?.ways ?? [];
  const soil = ways.length > 0 && ways.every(({ metal }) => !metal) && ways[0]?.kind === 'soil';
  return made?.kind === 'fitting' && soil ? 'TT' : earthingOf(build, feeding(build, struck).source);
}

/** Longest time this fault may last, s. */
export function allowedUnder_s(build: Build, struck: Interval): number {
  return disconnectionTime_s(earthingUnder(build, struck), feeding(build, struck).volts);
}

/** Volts of one winding, no load: what a line stands at against a neutral. */
export function nominal_V(build: Build, { values }: Pick<Interval, 'values'>): number {
  return Math.max(
    0,
    ...build.sources.map((source) => Math.hypot(values.emf.re[source] ?? 0, values.emf.im[source] ?? 0)),
  );
}

function current(build: Build, struck: Interval, { conditions, intervals }: Timeline): readonly Finding[] {
  if (struck.fault === undefined) return [];
  const { condition, branch } = struck.fault;
  const told = {
    at_s: struck.start_s,
    condition,
    option: conditions[condition] ?? '',
    amperes: branch_A(struck.solution, branch),
  };
  if (told.amperes < NO_CURRENT_A) {
    const volts = openVolts(build, struck, struck.fault);
    return [{ kind: 'no-fault-current', ...told, volts, live: makesLive(build, struck) }];
  }
  if (divide(build, struck)?.of !== 'fault')
    return [{ kind: 'fault-current', ...told }, ...newStrays(build, struck, intervals[0])];
  const source_V = drivingVolts(build, struck, struck.fault);
  return [{ kind: 'fault-current', ...told, source_V, loop_ohm: source_V / told.amperes }];
}

/** What drives a fault: the volts of a line, or, where the fault lies between two lines, what stood across it before. */
function drivingVolts(build: Build, struck: Interval, fault: FaultShare): number {
  const open_V = openVolts(build, struck, fault);
  const { volts } = feeding(build, struck);
  return open_V > BETWEEN_LINES * volts ? open_V : volts;
}

/** Volts that stood across a fault before it closed. */
function openVolts(build: Build, struck: Interval, { branch, change }: FaultShare): number {
  const ends = build.network.branches[branch];
  if (ends === undefined) return 0;
  const { re, im } = struck.solution.volts;
  const before = (all: Float64Array, changed: Float64Array) =>
    (all[ends.from] ?? 0) - (changed[ends.from] ?? 0) - (all[ends.to] ?? 0) + (changed[ends.to] ?? 0);
  return Math.hypot(before(re, change.volts.re), before(im, change.volts.im));
}

/** The supply a fault hangs on and its volts: of several the one nearest to what stood across the fault. */
function feeding(build: Build, struck: Interval): { readonly volts: number; readonly source?: string } {
  const open_V = struck.fault === undefined ? 0 : openVolts(build, struck, struck.fault);
  const far = (volts: number) => Math.abs(Math.log(Math.max(volts, 1e-6) / Math.max(open_V, 1e-6)));
  const all = build.supplies.map(({ part, nominal_V: volts }) => ({ volts, source: part }));
  const [nearest] = all.toSorted((one, other) => far(one.volts) - far(other.volts));
  return all.length < 2 || nearest === undefined ? { volts: nominal_V(build, struck) } : nearest;
}

/** Strays that are there, or larger, only since the fault. */
function newStrays(build: Build, struck: Interval, before: Interval | undefined): readonly Finding[] {
  const old = before === undefined ? [] : strays(build, before);
  return strays(build, struck).filter((finding) => {
    const same = old.find((other) => other.kind === finding.kind && other.way === finding.way);
    return same === undefined || finding.amperes > MORE * same.amperes;
  });
}

function makesLive(build: Build, { solution, fault }: Interval): boolean {
  const faulty = fault === undefined ? undefined : faultedPart(build, fault.condition);
  const metal = touchables(build.installation).find(({ part }) => part === faulty);
  return metal === undefined || aboveFloor_V(build, solution, metal.terminal) >= LIVE_V;
}

function ways(build: Build, struck: Interval): readonly Finding[] {
  const division = divide(build, struck);
  if (division?.of !== 'fault') return [];
  return division.ways
    .filter(({ stations, amperes }, index) => stations.length > 0 && (index === 0 || amperes >= WORTH_TELLING_A))
    .map(({ key, kind, by, stations, amperes }) => ({
      kind: 'way-home',
      at_s: struck.start_s,
      name: key,
      way: kind,
      by,
      stations,
      amperes,
      total_A: division.total_A,
    }));
}

/** The part whose metal the fault reaches. */
export function faultedPart(build: Build, condition: string): string | undefined {
  const made = build.installation.conditions[condition];
  if (made?.kind !== 'insulation-fault') return undefined;
  return touchables(build.installation).find(({ terminal, part }) =>
    made.between.some((end) => end === terminal || end === part),
  )?.part;
}

function deadFrom(timeline: Timeline, { terminal }: Metal, from: Interval, below_V: number): number {
  const later = timeline.intervals.filter(({ start_s }) => start_s > from.start_s);
  const live = (interval: Interval) => aboveFloor_V(timeline.build, interval.solution, terminal) >= below_V;
  const lastLive = later.findLastIndex(live);
  return later[lastLive + 1]?.start_s ?? Infinity;
}

function runsOn({ build, intervals }: Timeline, struck: Interval, last: Interval): readonly Finding[] {
  const part = struck.fault === undefined ? undefined : faultedPart(build, struck.fault.condition);
  if (part === undefined || intervals.some(({ because }) => because.kind === 'device-operated')) return [];
  const branch = build.branches.findIndex((info) => info.role === 'load' && info.part === part);
  const made = build.installation.parts[part];
  if (branch < 0 || made?.kind !== 'appliance') return [];
  const amperes = branch_A(last.solution, branch);
  const [one, other] = made.supply;
  const built_V = made.voltage_V ?? nominal_V(build, struck);
  const share = between_V(build, last.solution, `${part}.${one}`, `${part}.${other}`) / built_V;
  return [{ kind: 'load-runs-on', at_s: last.start_s, part, amperes, share }];
}

function inTime(timeline: Timeline, struck: Interval, at_s: number): readonly Finding[] {
  const dangerous = liveMetal(timeline, struck).flatMap((finding) =>
    finding.kind === 'live-metal' && finding.volts >= TOUCH_LIMIT_V ? [finding.until_s] : [],
  );
  if (dangerous.length === 0) return [];
  const { volts } = feeding(timeline.build, struck);
  const opened_s = Math.max(...dangerous);
  const earthing = earthingUnder(timeline.build, struck);
  const limit_s = disconnectionTime_s(earthing, volts);
  return [{ kind: 'disconnection', at_s, opened_s, limit_s, nominal_V: volts, earthing }];
}

function metalHome(build: Build, struck: Interval, at_s: number): readonly Finding[] {
  const division = divide(build, struck);
  if (division?.of !== 'fault')
    return flowsNot(struck) && makesLive(build, struck) ? [{ kind: 'fault-state', at_s }] : [];
  const home = division.ways.filter(({ by }) => by[0] !== 'relief');
  const sum = (ways: readonly { readonly amperes: number }[]) =>
    ways.reduce((whole, { amperes }) => whole + amperes, 0);
  return [{ kind: 'fault-state', at_s, metal: sum(home.filter(({ metal }) => metal)) / sum(home) }];
}

function flowsNot({ fault, solution }: Interval): boolean {
  return fault !== undefined && branch_A(solution, fault.branch) < NO_CURRENT_A;
}
