import type { Operation } from '../protection/index.ts';
import { AT_REST, remaining } from './device.ts';
import { zoneRises } from './exposure.ts';
import type { Memory } from './memory.ts';
import type { Phase } from './phase.ts';
import type { DeviceMoment, Happening, Interval, PersonMoment } from './timeline.ts';

/** Where a phase stands in time, s. */
export interface Span {
  readonly because: Happening;
  /** Where its first interval begins on the timeline. */
  readonly start_s: number;
  /** From where devices and exposures count; later than the start only before the danger. */
  readonly from_s: number;
  readonly end_s: number;
}

/** The intervals of this phase: one more begins wherever somebody reaches a worse zone, with the same solution.
 *  @param asked what each device answered when the phase began */
export function intervals(phase: Phase, asked: readonly Operation[], memory: Memory, span: Span): readonly Interval[] {
  const { from_s, end_s } = span;
  const rises = phase.people.map((seen, index) => {
    const exposure = memory.people[index]?.exposure;
    return exposure === undefined ? [] : zoneRises(exposure, seen.heart_A);
  });
  const cuts = phase.people
    .flatMap(({ person }, index) =>
      (rises[index] ?? []).map((rise) => ({ person, ...rise, at_s: from_s + rise.time_s })),
    )
    .filter(({ at_s }) => at_s > from_s && at_s < end_s)
    .sort((one, other) => one.at_s - other.at_s);
  const starts = [
    { start_s: span.start_s, because: span.because },
    ...cuts.map(({ at_s, person, zone }): { start_s: number; because: Happening } => ({
      start_s: at_s,
      because: { kind: 'zone-reached', person, zone },
    })),
  ];
  const { snapshot, conditions, values, solution, harmonics, fault } = phase;
  return starts.map(({ start_s, because }, place) => {
    const until_s = starts[place + 1]?.start_s ?? end_s;
    const elapsed_s = Math.max(0, start_s - from_s);
    return {
      start_s,
      end_s: until_s,
      because,
      snapshot,
      conditions,
      values,
      solution,
      devices: phase.devices.map(({ seen, state }, index): DeviceMoment => {
        const { info, amperes, residual_A } = seen;
        const reads_ohm = seen.insulation_ohm ?? seen.loop_ohm;
        return {
          device: info.name,
          state,
          amperes,
          ...(residual_A === undefined ? {} : { residual_A }),
          ...(reads_ohm === undefined ? {} : { reads_ohm }),
          operation: remaining(asked[index] ?? AT_REST, elapsed_s),
        };
      }),
      people: phase.people.map((seen, index): PersonMoment => {
        const reached = rises[index]?.findLast((rise) => from_s + rise.time_s <= Math.max(start_s, from_s));
        const before_s = memory.people[index]?.exposure.time_s ?? 0;
        const felt_s = seen.heart_A > seen.perception_A ? until_s - from_s : 0;
        return { ...seen, zone: reached?.zone ?? 'AC-1', exposure_s: before_s + felt_s };
      }),
      ...(harmonics === undefined ? {} : { harmonics }),
      ...(fault === undefined ? {} : { fault }),
    };
  });
}
