import { type Build, type Conditions } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { Finding, FindingOf } from './finding.ts';
import { leakage } from './leakage.ts';
import { aboveFloor_V, between_V, branch_A, LIVE_V, rms_A, touchables } from './metal.ts';
import { divide } from './ways.ts';

/** From here a current where none belongs is told, A: below it the soil beside a sound neutral carries as much (invented). */
export const STRAY_A = 0.01;
/** A winding that gives this many times what the loads take (and 1 A) feeds a short circuit. */
const SHORTED = 2;
/** A load below this is off, A. */
const OFF_A = 1e-3;
/** How far a leg may be from its nominal voltage before it is told: 10 % (ANSI C84.1 and EN 50160 allow about as much, from memory). */
const LEG_SHARE = 0.1;

/** What stands in ordinary work, before anything strikes: who takes how much, what flows where none belongs, what is live. */
export function normalState(build: Build, interval: Interval, given: Conditions): readonly Finding[] {
  const work = working(build, interval);
  const stray = strays(build, interval);
  return [
    work,
    ...swapped(build, given),
    ...(work.shorted ? stray.slice(0, 1) : stray),
    ...offVolts(build, interval),
    ...harmonicNeutrals(build, interval),
    ...leakage(build, interval),
    ...liveInOrdinaryWork(build, interval),
  ];
}

/** Working current on protective conductors, in soil, pipes or people. */
export function strays(build: Build, interval: Interval): readonly FindingOf<'stray-current'>[] {
  const division = divide(build, interval);
  if (division?.of !== 'load') return [];
  const at_s = interval.start_s;
  const sums = new Map<'protective' | 'soil' | 'pipe' | 'person' | 'other', number>();
  for (const { kind, by, amperes } of division.ways)
    if (kind === 'protective' || kind === 'soil' || kind === 'pipe' || kind === 'person' || by[0] === 'screen')
      if (kind !== 'neutral' && kind !== 'load') sums.set(kind, (sums.get(kind) ?? 0) + amperes);
  const told = [...sums].filter(([, amperes]) => amperes >= STRAY_A).toSorted(([, a], [, b]) => b - a);
  const pipe = division.ways.find(({ kind }) => kind === 'pipe')?.by[0];
  return told.map(([way, amperes]) => ({
    kind: 'stray-current',
    at_s,
    way,
    ...(way === 'pipe' && pipe !== undefined ? { part: pipe } : {}),
    amperes,
  }));
}

/** The second of the two states: what the neutral carries, and what flows where none belongs. */
export function normalVerdict(build: Build, interval: Interval, at_s: number): Finding {
  const neutral = divide(build, interval)?.ways.filter(({ kind }) => kind === 'neutral') ?? [];
  return {
    kind: 'normal-state',
    at_s,
    neutral_A: neutral.reduce((sum, { amperes }) => sum + amperes, 0),
    stray_A: strays(build, interval).reduce((sum, { amperes }) => sum + amperes, 0),
  };
}

function working(build: Build, interval: Interval): FindingOf<'working'> {
  // What a transformer takes, the loads behind it take from it.
  const wound = new Set(
    [...build.network.windings, ...(build.network.cores ?? [])].flatMap(({ branches }) => branches),
  );
  const loads = build.branches.flatMap(({ role, part }, branch) => {
    const amperes = rms_A(interval, branch);
    const wiring = wound.has(branch) || isWiring(build, interval, branch);
    const takes = role === 'load' && amperes >= OFF_A && !wiring;
    return takes ? [{ part, amperes, both: acrossBoth(build, part) }] : [];
  });
  const given = build.sources
    .map((source) => ({ part: build.branches[source]?.part, amperes: rms_A(interval, source) }))
    .toSorted((one, other) => other.amperes - one.amperes);
  const source_A = given[0]?.amperes ?? 0;
  // Halves belong to one winding with its middle brought out, not to sources that stand beside each other.
  const halves = given.filter(({ part }) => part === given[0]?.part);
  const other_A = halves.length === 2 ? (halves[1]?.amperes ?? 0) : 0;
  const shorted = source_A > SHORTED * (1 + loads.reduce((sum, { amperes }) => sum + amperes, 0));
  return { kind: 'working', at_s: interval.start_s, source_A, other_A, shorted, loads };
}

/** A plain impedance that takes less of the supply's volts is told as wiring, not as a load (invented: the drop allowed to the
 *  farthest load is about as much). */
const WIRING = 0.05;

function isWiring(build: Build, { solution, values }: Interval, branch: number): boolean {
  const ends = build.network.branches[branch];
  const kind = build.installation.parts[build.branches[branch]?.part ?? '']?.kind;
  if (kind === 'capacitance') return true;
  if (ends === undefined || kind !== 'impedance') return false;
  const { re, im } = solution.volts;
  const volts = Math.hypot((re[ends.from] ?? 0) - (re[ends.to] ?? 0), (im[ends.from] ?? 0) - (im[ends.to] ?? 0));
  const emf_V = Math.max(0, ...build.sources.map((at) => Math.hypot(values.emf.re[at] ?? 0, values.emf.im[at] ?? 0)));
  return volts < WIRING * emf_V;
}

function acrossBoth({ installation }: Build, part: string): boolean {
  const made = installation.parts[part];
  return made?.kind === 'appliance' && !made.supply.includes('neutral');
}

function swapped(build: Build, given: Conditions): readonly Finding[] {
  return Object.entries(build.installation.conditions).flatMap(([condition, { kind, options }]): Finding[] => {
    const chosen = given[condition] ?? options[0];
    return kind === 'swap' && chosen !== options[0] ? [{ kind: 'polarity-reversed', at_s: -1, condition }] : [];
  });
}

interface Split {
  /** Volts of one half, no load. */
  readonly source: number | undefined;
  readonly panels: readonly string[];
}

const splits = new WeakMap<Build, Split>();

function splitOf(build: Build): Split {
  const known = splits.get(build);
  if (known !== undefined) return known;
  const parts = Object.entries(build.installation.parts);
  const [source] = parts.flatMap(([, part]) =>
    part.kind === 'centre-tapped-transformer' ? [part.secondary_V / 2] : [],
  );
  const found = { source, panels: parts.flatMap(([part, { kind }]) => (kind === 'service-panel' ? [part] : [])) };
  splits.set(build, found);
  return found;
}

/** How unevenly the two halves of a split supply stand at the panel, if they do. */
export function legs(build: Build, { solution, start_s }: Pick<Interval, 'solution' | 'start_s'>): readonly Finding[] {
  const { source, panels } = splitOf(build);
  if (source === undefined) return [];
  return panels.flatMap((part): Finding[] => {
    const volts = ['a', 'b'].map((leg) => between_V(build, solution, `${part}.${leg}`, `${part}.neutral bar`));
    const [low_V, high_V] = [Math.min(...volts), Math.max(...volts)];
    const off = Math.max(high_V - source, source - low_V) / source;
    return off < LEG_SHARE ? [] : [{ kind: 'leg-volts', at_s: start_s, low_V, high_V, nominal_V: source }];
  });
}

/** Legs that stand unevenly; where nothing is known of legs, loads that do not get the volts they are built for. */
function offVolts(build: Build, interval: Interval): readonly Finding[] {
  const uneven = legs(build, interval);
  if (uneven.length > 0) return uneven;
  return Object.entries(build.installation.parts).flatMap(([part, made]): Finding[] => {
    if (made.kind !== 'appliance' || branch_A(interval.solution, build.branch(part)) < OFF_A) return [];
    const nominal_V = made.voltage_V ?? (build.installation.region === 'iec' ? 230 : 120);
    const [one, other] = made.supply;
    const volts = between_V(build, interval.solution, `${part}.${one}`, `${part}.${other}`);
    const off = Math.abs(volts - nominal_V) / nominal_V;
    return off < LEG_SHARE ? [] : [{ kind: 'load-volts', at_s: interval.start_s, part, volts, nominal_V }];
  });
}

/** A neutral is told with its harmonics where they are at least this share of what it carries. */
const HARMONIC_SHARE = 0.3;

function harmonicNeutrals(build: Build, interval: Interval): readonly Finding[] {
  return build.branches.flatMap(({ name, part, role }, branch): Finding[] => {
    const cable = build.installation.parts[part]?.kind === 'cable' && name.startsWith(`${part}.`);
    if (role !== 'neutral' || !cable || name.includes(' – ') || interval.harmonics === undefined) return [];
    const amperes = rms_A(interval, branch);
    const harmonic_A = Math.sqrt(Math.max(0, amperes ** 2 - branch_A(interval.solution, branch) ** 2));
    if (amperes < 1 || harmonic_A < HARMONIC_SHARE * amperes) return [];
    const lines = build.branches.flatMap((other, at) =>
      other.part === part && other.role === 'line' ? [rms_A(interval, at)] : [],
    );
    const line_A = Math.max(0, ...lines);
    return [{ kind: 'neutral-harmonics', at_s: interval.start_s, part, amperes, harmonic_A, line_A }];
  });
}

/** Metal that is live before anything has failed. */
export function liveInOrdinaryWork(
  build: Build,
  { solution, start_s }: Pick<Interval, 'solution' | 'start_s'>,
): readonly Finding[] {
  return touchables(build.installation).flatMap(({ part, what, terminal }): Finding[] => {
    const volts = aboveFloor_V(build, solution, terminal);
    return volts < LIVE_V ? [] : [{ kind: 'live-metal', at_s: start_s, part, what, volts, until_s: Infinity }];
  });
}
