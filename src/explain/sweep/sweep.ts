import type { Zone } from '../../body/index.ts';
import { severity } from '../../body/index.ts';
import { compile, type Conditions, type Installation } from '../../installation/index.ts';
import { run, type Timeline } from '../../scenario/index.ts';
import { liveMetal, struckInterval } from '../faultState.ts';
import { branch_A } from '../metal.ts';
import { isSafe } from '../remedies.ts';
import { withValue } from './value.ts';

/** One value and the range it is swept over. */
export interface Axis {
  /** as in the file: `mixer run.length_m` */
  readonly path: string;
  readonly from: number;
  readonly to: number;
  /** how many values, both ends among them */
  readonly steps: number;
}

/** What comes of one choice of values. */
export interface SweepPoint {
  /** In the order of the axes. */
  readonly values: readonly number[];
  /** Through the fault when it strikes; 0 where none does. */
  readonly fault_A: number;
  /** When the first device opens; Infinity = never. */
  readonly opens_s: number;
  /** The highest metal when the fault strikes, above the floor. */
  readonly metal_V: number;
  /** Through whoever carries most. */
  readonly body_A: number;
  readonly zone: Zone;
  readonly safe: boolean;
}

/** More points than this are refused. */
const MOST_POINTS = 100_000;

/** Runs an installation once for every choice of values, the last axis fastest, and hands out each as it is done.
 *  @throws RangeError for an axis of no steps, too many points, or a value that is not there */
export function* sweep(
  installation: Installation,
  conditions: Conditions,
  axes: readonly Axis[],
): Generator<SweepPoint, void> {
  const scales = axes.map(valuesOf);
  const count = scales.reduce((all, scale) => all * scale.length, 1);
  if (count > MOST_POINTS) throw new RangeError(`sweep: ${count} points are too many; take fewer steps`);
  for (let point = 0; point < count; point += 1) {
    let left = point;
    const values = scales
      .toReversed()
      .map((scale) => {
        const value = scale[left % scale.length] ?? 0;
        left = Math.floor(left / scale.length);
        return value;
      })
      .toReversed();
    const changed = axes.reduce((made, { path }, axis) => withValue(made, path, values[axis] ?? 0), installation);
    yield { values, ...outcomeOf(run(compile(changed), conditions)) };
  }
}

/** The values of an axis, evenly spaced. @throws RangeError for steps or ends that are none */
export function valuesOf({ path, from, to, steps }: Axis): readonly number[] {
  if (!(Number.isInteger(steps) && steps >= 1) || !Number.isFinite(from) || !Number.isFinite(to))
    throw new RangeError(`sweep: ${path} from ${from} to ${to} in ${steps} steps; write numbers and one step or more`);
  if (steps === 1) return [from];
  return Array.from({ length: steps }, (_, step) => from + ((to - from) * step) / (steps - 1));
}

function outcomeOf(timeline: Timeline): Omit<SweepPoint, 'values'> {
  const { intervals } = timeline;
  const struck = struckInterval(timeline);
  const opened = intervals.find(({ because, start_s }) => because.kind === 'device-operated' && start_s >= 0);
  const people = intervals.flatMap((interval) => interval.people);
  const worst = people.toSorted((one, other) => severity(other.zone) - severity(one.zone))[0];
  const live = struck === undefined ? [] : liveMetal(timeline, struck);
  return {
    fault_A: struck?.fault === undefined ? 0 : branch_A(struck.solution, struck.fault.branch),
    opens_s: opened?.start_s ?? Infinity,
    metal_V: Math.max(0, ...live.map((finding) => (finding.kind === 'live-metal' ? finding.volts : 0))),
    body_A: Math.max(0, ...people.map(({ body_A }) => body_A)),
    zone: worst?.zone ?? 'AC-1',
    safe: isSafe(timeline),
  };
}
