import { severity } from '../body/index.ts';
import type { Conditions } from '../installation/index.ts';
import { run, type Interval, type Timeline } from '../scenario/index.ts';
import { allowedUnder_s, disconnectionLimit_s, liveMetal, nominal_V, struckInterval } from './faultState.ts';
import type { Finding, Remaining } from './finding.ts';
import { branch_A, LIVE_V, TOUCH_LIMIT_V } from './metal.ts';
import { legs, liveInOrdinaryWork, STRAY_A, strays } from './normalState.ts';
import { peopleFindings } from './people.ts';

/** Severity from which the heart can lose its rhythm. */
const FIBRILLATION = severity('AC-4.1');

/** Metal at 25 V to 50 V must be dead within this time, s: what IEC 60364-4-41:2005 411.3.2.3 allows a distribution circuit. */
const DISTRIBUTION_S = 5;

/** Whether somebody is in danger of a shock: hurt, held, or near metal that stays live, or ordinary work itself is unsafe. */
export function isDangerous(timeline: Timeline): boolean {
  return !(nobodyKilled(timeline) && halvesEven(timeline) && metalDeadInTime(timeline) && ordinaryWorkClean(timeline));
}

/** Nobody reaches zone AC-4.1 or is held without end. */
export function nobodyKilled(timeline: Timeline): boolean {
  const hurt = timeline.intervals.some(({ people }) => people.some(({ zone }) => severity(zone) >= FIBRILLATION));
  return !hurt && !peopleFindings(timeline).some((one) => one.kind === 'person-held' && one.until_s === Infinity);
}

/** Metal at 50 V or more is dead within the disconnection time (IEC 60364-4-41 table 41.1, TN), at 25 V within 5 s. */
export function metalDeadInTime(timeline: Timeline): boolean {
  const struck = struckInterval(timeline);
  const last = timeline.intervals.at(-1);
  if (struck === undefined || last === undefined) return true;
  const opened = timeline.intervals.some(({ because }) => because.kind === 'device-operated');
  const still = opened && last !== struck ? liveMetal(timeline, last).filter(isLive) : [];
  return ![...liveMetal(timeline, struck), ...still].some((one) => isLive(one) && outlasts(one, allowed_s(timeline)));
}

function isLive(finding: Finding): boolean {
  return finding.kind === 'live-metal' && finding.volts >= LIVE_V;
}

function outlasts(finding: Finding, limit_s: number): boolean {
  if (finding.kind !== 'live-metal') return false;
  return finding.until_s - finding.at_s > (finding.volts >= TOUCH_LIMIT_V ? limit_s : DISTRIBUTION_S);
}

/** In ordinary work no current flows where none belongs and no metal is live. */
export function ordinaryWorkClean({ build, conditions, intervals }: Timeline): boolean {
  const [normal] = intervals;
  return (
    normal === undefined || (liveInOrdinaryWork(build, normal).length === 0 && straysNone(build, normal, conditions))
  );
}

function straysNone(build: Timeline['build'], normal: Interval, conditions: Conditions): boolean {
  // Where all that could stray is less than the least that counts, there is no need to divide it.
  const most_A = build.branches.reduce(
    (sum, { role, medium }, branch) =>
      role === 'protective' || role === 'pipe' || medium === 'soil' || medium === 'body'
        ? sum + branch_A(normal.solution, branch)
        : sum,
    0,
  );
  if (most_A < STRAY_A) return true;
  const now_A = strays_A(build, normal);
  // What the earthing of the supply itself lets stray, with all its wiring sound, no repair takes away.
  return now_A === 0 || now_A <= AS_BUILT * soundStrays_A(build, conditions);
}

/** Strays of no more than this many times those of the sound wiring are no more than those. */
const AS_BUILT = 1.05;

function strays_A(build: Timeline['build'], normal: Interval): number {
  return strays(build, normal).reduce((sum, { amperes }) => sum + amperes, 0);
}

const sound = new WeakMap<Timeline['build'], Map<string, number>>();

/** What strays in ordinary work where the wiring is sound and the same is running, A. */
function soundStrays_A(build: Timeline['build'], conditions: Conditions): number {
  const chosen = Object.fromEntries(
    Object.entries(build.installation.conditions).map(([name, { group, options }]) => [
      name,
      (group === 'load' ? conditions[name] : undefined) ?? options[0] ?? '',
    ]),
  );
  const known = sound.get(build) ?? new Map<string, number>();
  sound.set(build, known);
  const key = JSON.stringify(chosen);
  let found = known.get(key);
  if (found === undefined) {
    const [normal] = run(build, chosen, { horizon_s: 0 }).intervals;
    known.set(key, (found = normal === undefined ? 0 : strays_A(build, normal)));
  }
  return found;
}

/** The halves of a split supply share evenly, in ordinary work and under a fault that nothing ends. */
export function halvesEven(timeline: Timeline): boolean {
  const { build, intervals } = timeline;
  const opened = intervals.some(({ because }) => because.kind === 'device-operated');
  const struck = opened ? undefined : struckInterval(timeline);
  return [intervals[0], struck].every((interval) => interval === undefined || legs(build, interval).length === 0);
}

/** How long a fault may last here, s. */
function allowed_s(timeline: Timeline): number {
  const { build, intervals } = timeline;
  const struck = struckInterval(timeline);
  if (struck !== undefined) return allowedUnder_s(build, struck);
  const [first] = intervals;
  return first === undefined ? 0 : disconnectionLimit_s(build, nominal_V(build, first));
}

/** A fault current that outlasts the disconnection time. */
export function lasting(timeline: Timeline): Remaining['flow'] {
  const flows = ({ fault, solution }: Interval) => fault !== undefined && branch_A(solution, fault.branch) >= STRAY_A;
  const last = timeline.intervals.findLast(flows);
  const limit_s = allowed_s(timeline);
  if (last?.fault === undefined || last.end_s <= limit_s) return undefined;
  const amperes = branch_A(last.solution, last.fault.branch);
  const heat_W = amperes ** 2 * (last.values.impedance.re[last.fault.branch] ?? 0);
  return { amperes, heat_W, until_s: last.end_s, limit_s };
}
