import type { Timeline } from '../scenario/index.ts';
import { conductorLimit } from './conductorLimit.ts';
import { devicesOperated, devicesSee, devicesShut, devicesWarned } from './devices.ts';
import { faultState, faultVerdict, liveMetal, struckInterval } from './faultState.ts';
import type { Finding } from './finding.ts';
import { normalState, normalVerdict } from './normalState.ts';
import { peopleFindings } from './people.ts';

const known = new WeakMap<Timeline, readonly Finding[]>();

/** Every fact of a run, in order of time; what holds to the end stands last. What would have made it safe is asked
 *  separately (`remedies`), because it takes further runs. */
export function findings(timeline: Timeline): readonly Finding[] {
  let found = known.get(timeline);
  if (found === undefined) {
    found = find(timeline);
    known.set(timeline, found);
  }
  return found;
}

function find(timeline: Timeline): readonly Finding[] {
  const { build, conditions, intervals } = timeline;
  const normal = intervals[0];
  if (normal === undefined) throw new RangeError('findings: a timeline has at least one interval');
  const struck = struckInterval(timeline);
  const at_s = intervals.at(-1)?.start_s ?? 0;
  const last = intervals.at(-1) ?? normal;
  const happened = [
    ...normalState(build, normal, conditions),
    ...(struck === undefined
      ? devicesSee(timeline, normal)
      : [...faultState(timeline, struck), ...devicesSee(timeline, struck)]),
    ...peopleFindings(timeline),
    ...devicesOperated(timeline),
    ...devicesWarned(timeline),
    ...(struck === undefined ? [] : conductorLimit(timeline, struck)),
  ];
  // A wire may reach its limit after the last thing that changes the network.
  return [
    ...happened.filter((finding) => finding.at_s <= at_s).toSorted(byTime),
    ...devicesShut(timeline, struck ?? normal),
    ...(struck === undefined ? [] : faultVerdict(timeline, struck)),
    ...(struck === undefined || last === struck ? [] : stillLive(timeline)),
    normalVerdict(build, normal, at_s),
    ...happened.filter((finding) => finding.at_s > at_s).toSorted(byTime),
  ];
}

function byTime(one: Finding, other: Finding): number {
  return one.at_s - other.at_s;
}

/** Metal that is live after all that could open has opened. */
function stillLive(timeline: Timeline): readonly Finding[] {
  const last = timeline.intervals.at(-1);
  if (last === undefined || !timeline.intervals.some(({ because }) => because.kind === 'device-operated')) return [];
  return liveMetal(timeline, last).filter((finding) => finding.kind === 'live-metal' && finding.volts >= 25);
}
