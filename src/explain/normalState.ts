import { type Build, type Conditions } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { Finding, FindingOf } from './finding.ts';
import { aboveFloor_V, between_V, branch_A, LIVE_V, touchables } from './metal.ts';
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
    ...legs(build, interval),
    ...live(build, interval),
  ];
}

/** Working current on protective conductors, in soil, pipes or people. */
export function strays(build: Build, interval: Interval): readonly FindingOf<'stray-current'>[] {
  const division = divide(build, interval);
  if (division?.of !== 'load') return [];
  const at_s = interval.start_s;
  const sums = new Map<'protective' | 'soil' | 'pipe' | 'person', number>();
  for (const { kind, amperes } of division.ways)
    if (kind === 'protective' || kind === 'soil' || kind === 'pipe' || kind === 'person')
      sums.set(kind, (sums.get(kind) ?? 0) + amperes);
  const told = [...sums].filter(([, amperes]) => amperes >= STRAY_A).toSorted(([, a], [, b]) => b - a);
  return told.map(([way, amperes]) => ({ kind: 'stray-current', at_s, way, amperes }));
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

function working(build: Build, { solution, start_s }: Interval): FindingOf<'working'> {
  const loads = build.branches.flatMap(({ role, part }, branch) => {
    const amperes = branch_A(solution, branch);
    return role === 'load' && amperes >= OFF_A ? [{ part, amperes, both: acrossBoth(build, part) }] : [];
  });
  const given = build.sources.map((source) => branch_A(solution, source)).toSorted((one, other) => other - one);
  const [source_A = 0, other_A = 0] = given;
  const shorted = source_A > SHORTED * (1 + loads.reduce((sum, { amperes }) => sum + amperes, 0));
  return { kind: 'working', at_s: start_s, source_A, other_A, shorted, loads };
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

/** How unevenly the two halves of a split supply stand at the panel, if they do. */
export function legs(build: Build, { solution, start_s }: Interval): readonly Finding[] {
  const parts = Object.entries(build.installation.parts);
  const source = parts.flatMap(([, part]) =>
    part.kind === 'centre-tapped-transformer' ? [part.secondary_V / 2] : [],
  )[0];
  if (source === undefined) return [];
  return parts.flatMap(([part, { kind }]): Finding[] => {
    if (kind !== 'service-panel') return [];
    const volts = ['a', 'b'].map((leg) => between_V(build, solution, `${part}.${leg}`, `${part}.neutral bar`));
    const [low_V, high_V] = [Math.min(...volts), Math.max(...volts)];
    const off = Math.max(high_V - source, source - low_V) / source;
    return off < LEG_SHARE ? [] : [{ kind: 'leg-volts', at_s: start_s, low_V, high_V, nominal_V: source }];
  });
}

function live(build: Build, { solution, start_s }: Interval): readonly Finding[] {
  return touchables(build.installation).flatMap(({ part, what, terminal }): Finding[] => {
    const volts = aboveFloor_V(build, solution, terminal);
    return volts < LIVE_V ? [] : [{ kind: 'live-metal', at_s: start_s, part, what, volts, until_s: Infinity }];
  });
}
