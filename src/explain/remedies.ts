import type { Zone } from '../body/index.ts';
import type { Conditions } from '../installation/index.ts';
import { run, type Interval, type Timeline } from '../scenario/index.ts';
import { disconnectionLimit_s, nominal_V, struckInterval } from './faultState.ts';
import type { Finding, Remaining } from './finding.ts';
import { findings } from './findings.ts';
import { branch_A, LIVE_V, TOUCH_LIMIT_V } from './metal.ts';
import { STRAY_A } from './normalState.ts';

const DANGEROUS: readonly Zone[] = ['AC-4.1', 'AC-4.2', 'AC-4.3'];

/** Metal at 25 V to 50 V must be dead within this time, s: what IEC 60364-4-41:2005 411.3.2.3 allows a distribution circuit. */
const DISTRIBUTION_S = 5;

/** Whether a run ends well: nobody is in danger of a shock, and a fault current is over within the disconnection time. */
export function isSafe(timeline: Timeline): boolean {
  return !isDangerous(timeline) && lasting(timeline) === undefined;
}

/** Somebody reaches zone AC-4.1, metal at 50 V or more outlasts the disconnection time (IEC 60364-4-41 table 41.1, TN),
 *  metal at 25 V 5 s, or in ordinary work metal is live, current strays or the halves of a split supply stand unevenly. */
function isDangerous(timeline: Timeline): boolean {
  const found = findings(timeline);
  const hurt = timeline.intervals.some(({ people }) => people.some(({ zone }) => DANGEROUS.includes(zone)));
  return (
    hurt ||
    found.some((finding) => {
      if (finding.kind === 'leg-volts') return true;
      if (finding.kind === 'stray-current') return finding.at_s < 0;
      if (finding.kind === 'person-held') return finding.until_s === Infinity;
      if (finding.kind !== 'live-metal' || finding.volts < LIVE_V) return false;
      return finding.until_s - finding.at_s > (finding.volts >= TOUCH_LIMIT_V ? allowed_s(timeline) : DISTRIBUTION_S);
    })
  );
}

function allowed_s({ build, intervals }: Timeline): number {
  const [first] = intervals;
  return first === undefined ? 0 : disconnectionLimit_s(nominal_V(build, first));
}

/** A fault current that outlasts the disconnection time. */
function lasting(timeline: Timeline): Remaining['flow'] {
  const flows = ({ fault, solution }: Interval) => fault !== undefined && branch_A(solution, fault.branch) >= STRAY_A;
  const last = timeline.intervals.findLast(flows);
  const limit_s = allowed_s(timeline);
  if (last?.fault === undefined || last.end_s <= limit_s) return undefined;
  const amperes = branch_A(last.solution, last.fault.branch);
  const heat_W = amperes ** 2 * (last.values.impedance.re[last.fault.branch] ?? 0);
  return { amperes, heat_W, until_s: last.end_s, limit_s };
}

function remaining(timeline: Timeline): Remaining {
  const flow = lasting(timeline);
  const left = defects(timeline).map(([condition, , option]) => ({ condition, option }));
  return { left, ...(flow === undefined ? {} : { flow }) };
}

/** What would have made it safe: each single restoring change of a path or a device, and a residual device where none is
 *  fitted, is run and judged. Costs one run for each; empty where nothing strikes and nothing is unsafe. Where nobody is in
 *  danger, that stands first, with what is left to be put right. */
export function remedies(timeline: Timeline): readonly Finding[] {
  const at_s = timeline.intervals.at(-1)?.start_s ?? 0;
  const dangerous = isDangerous(timeline);
  const already: readonly Finding[] =
    dangerous || struckInterval(timeline) === undefined ? [] : [{ kind: 'already-safe', at_s, ...remaining(timeline) }];
  if (isSafe(timeline)) return already;
  const person = findings(timeline).find((finding) => finding.kind === 'person-feels')?.person;
  const changes = restoring(timeline);
  const working = changes.flatMap(([condition, option]): Finding[] => {
    const conditions: Conditions = { ...timeline.conditions, [condition]: option };
    const { build, tolerance, horizon_s } = timeline;
    const after = run(build, conditions, { tolerance, horizon_s });
    if (dangerous ? isDangerous(after) : !isSafe(after)) return [];
    const opened = after.intervals.find(({ because }) => because.kind === 'device-operated');
    return [
      {
        kind: 'made-safe-by',
        at_s,
        condition,
        option,
        ...(opened?.because.kind === 'device-operated'
          ? { device: opened.because.device, opened_s: opened.start_s }
          : {}),
        ...(person === undefined ? {} : { person }),
        ...remaining(after),
      },
    ];
  });
  if (working.length > 0 || changes.length === 0) return [...already, ...working];
  return [...already, { kind: 'none-alone', at_s, tried: changes.length }];
}

/** Conditions of the wiring and the devices that are not as they should be: name, sound option, chosen option. */
function defects({ build, conditions }: Timeline): readonly (readonly [string, string, string])[] {
  return Object.entries(build.installation.conditions).flatMap(([name, { kind, group, options }]) => {
    const [usual] = options;
    const chosen = conditions[name] ?? usual;
    if (usual === undefined || chosen === undefined || kind === 'fitted') return [];
    return (group === 'path' || group === 'device') && chosen !== usual ? [[name, usual, chosen] as const] : [];
  });
}

function restoring(timeline: Timeline): readonly (readonly [string, string])[] {
  const { build, conditions } = timeline;
  const broken = new Map(defects(timeline).map(([name, usual]) => [name, usual]));
  return Object.entries(build.installation.conditions).flatMap(([name, { kind, options }]) => {
    const [usual, other] = options;
    const sound = broken.get(name);
    if (sound !== undefined) return [[name, sound] as const];
    const missing = kind === 'fitted' && (conditions[name] ?? usual) === usual;
    return missing && other !== undefined ? [[name, other] as const] : [];
  });
}
