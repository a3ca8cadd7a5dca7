import { initialConditions, type Conditions } from '../installation/index.ts';
import { run, type Timeline } from '../scenario/index.ts';
import { struckInterval } from './faultState.ts';
import type { Finding, Remaining } from './finding.ts';
import { findings } from './findings.ts';
import { isDangerous, lasting } from './danger.ts';

/** Whether a run ends well: nobody is in danger of a shock, and a fault current is over within the disconnection time. */
export function isSafe(timeline: Timeline): boolean {
  return !isDangerous(timeline) && lasting(timeline) === undefined;
}

function remaining(timeline: Timeline): Remaining {
  const flow = lasting(timeline);
  const initial = initialConditions(timeline.build.installation);
  // What the place is built with is not left to be put right.
  const left = defects(timeline).flatMap(([condition, , option]) =>
    initial[condition] === option ? [] : [{ condition, option }],
  );
  const oversized = oversizedDevice(timeline);
  return {
    left,
    ...(flow === undefined ? {} : { flow }),
    ...(oversized === undefined ? {} : { oversized }),
  };
}

/** A device that a condition sets larger than the file builds it. */
function oversizedDevice({ build, conditions }: Timeline): Remaining['oversized'] {
  const found = Object.entries(build.installation.conditions).flatMap(([name, made]) => {
    if (made.kind !== 'setting' || (conditions[name] ?? made.options[0]) === made.options[0]) return [];
    const part = build.installation.parts[made.device];
    const built_A = part !== undefined && 'rating_A' in part ? part.rating_A : undefined;
    const { device, rating_A } = made;
    if (built_A === undefined || rating_A === undefined || rating_A <= built_A) return [];
    return [{ device, rating_A, built_A }];
  });
  return found[0];
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
  const { build, conditions, tolerance, horizon_s } = timeline;
  const all = run(build, { ...conditions, ...Object.fromEntries(changes) }, { tolerance, horizon_s });
  const together = dangerous ? !isDangerous(all) : isSafe(all);
  return [...already, { kind: 'none-alone', at_s, tried: changes.length, together }];
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
