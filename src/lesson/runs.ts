import { setConditions, type Build, type Conditions } from '../installation/index.ts';
import type { Tolerance } from '../protection/index.ts';
import { run, type Interval, type Timeline } from '../scenario/index.ts';

const known = new WeakMap<Build, Map<string, Timeline>>();

/** The run of a place under these assignments, each done once.
 *  @throws RangeError naming an assignment the place does not know */
export function runWith(build: Build, assignments: readonly string[], tolerance: Tolerance = 'middle'): Timeline {
  const runs = known.get(build) ?? new Map<string, Timeline>();
  known.set(build, runs);
  const key = JSON.stringify([tolerance, assignments]);
  const before = runs.get(key);
  if (before !== undefined) return before;
  const timeline = run(build, conditionsOf(build, assignments), { tolerance });
  runs.set(key, timeline);
  return timeline;
}

/** The conditions these assignments amount to. @throws RangeError naming an assignment the place does not know */
export function conditionsOf(build: Build, assignments: readonly string[]): Conditions {
  const setting = setConditions(build.installation, assignments);
  if (setting.ok) return setting.conditions;
  throw new RangeError(`lesson: ${setting.problems.map(({ message }) => message).join('; ')}`);
}

/** The instant after the fault strikes or the hand touches; ordinary work where neither happens. */
export function instant({ intervals }: Timeline): Interval {
  const found =
    intervals.find(({ because: { kind } }) => kind === 'fault-strikes' || kind === 'touches') ?? intervals[0];
  if (found === undefined) throw new RangeError('instant: a timeline has at least one interval');
  return found;
}
