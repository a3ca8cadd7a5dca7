import type { DeviceInfo } from '../installation/index.ts';
import type { DeviceMoment, Interval, Timeline } from '../scenario/index.ts';
import type { DeviceFact, Finding, ShutBecause } from './finding.ts';

/** A device belongs to the story if it carries at least this share of the fault current. */
const IN_THE_WAY = 0.1;
/** Less than this missing is nothing missing, A: insulation leaks as much. */
const BALANCED_A = 1e-4;

/** What the devices in the way of the fault see when it strikes. */
export function devicesSee(timeline: Timeline, struck: Interval): readonly Finding[] {
  const { conditions } = timeline;
  return concerned(timeline, struck).flatMap(({ info, moment }): Finding[] =>
    moment.state === 'not fitted' ? [] : [{ kind: 'device-sees', ...fact(info, moment, conditions, struck.start_s) }],
  );
}

/** Who opened, in order of time, with what it saw until then. */
export function devicesOperated({ build, conditions, intervals }: Timeline): readonly Finding[] {
  return intervals.flatMap(({ because, start_s }, index): Finding[] => {
    if (because.kind !== 'device-operated') return [];
    const info = build.devices.find(({ name }) => name === because.device);
    const before = intervals[index - 1]?.devices.find(({ device }) => device === because.device);
    if (info === undefined || before === undefined) return [];
    return [
      { kind: 'device-operated', ...fact(info, { ...before, operation: because.operation }, conditions, start_s) },
    ];
  });
}

/** Who stays shut to the end and why: the jammed, the missing, and, where nothing at all opens, everybody in the way. */
export function devicesShut(timeline: Timeline, struck: Interval): readonly Finding[] {
  const { conditions, intervals, horizon_s } = timeline;
  const opened = intervals.some(({ because }) => because.kind === 'device-operated');
  const at_s = intervals.at(-1)?.start_s ?? 0;
  return concerned(timeline, struck).flatMap(({ info, moment }): Finding[] => {
    const silent = moment.state === 'closed';
    if (silent && opened) return [];
    if (moment.state === 'not fitted' && opened) return [];
    const because = why(moment, fact(info, moment, conditions, at_s), horizon_s);
    return [{ kind: 'device-stays-shut', because, ...fact(info, moment, conditions, at_s) }];
  });
}

/** A breaker is the one of the fault's own circuit if it carries at least this share of what the one that carries most does. */
const NEAREST = 0.9;

interface Concerned {
  /** what the fault adds to its current, A */
  readonly change_A: number;
  readonly info: DeviceInfo;
  readonly moment: DeviceMoment;
}

/** Devices that carry the fault current, or would miss it; of several breakers the smallest, and whoever opens. */
function concerned({ build, conditions, intervals }: Timeline, struck: Interval): readonly Concerned[] {
  const { fault } = struck;
  const operated = intervals.flatMap(({ because }) => (because.kind === 'device-operated' ? [because.device] : []));
  const found = build.devices.flatMap((info): Concerned[] => {
    const moment = struck.devices.find(({ device }) => device === info.name);
    if (moment === undefined || moment.state === 'open') return [];
    if (info.kind === 'residual-device')
      return (moment.residual_A ?? 0) > BALANCED_A || (fault !== undefined && moment.state !== 'not fitted')
        ? [{ info, moment, change_A: 0 }]
        : [];
    if (fault === undefined) return Number.isFinite(moment.operation.at_s) ? [{ info, moment, change_A: 0 }] : [];
    const change_A = Math.max(
      ...info.poles.map((pole) => Math.hypot(fault.change.amperes.re[pole] ?? 0, fault.change.amperes.im[pole] ?? 0)),
    );
    const whole = Math.hypot(fault.amperes.re, fault.amperes.im);
    return change_A > whole * IN_THE_WAY ? [{ info, moment, change_A }] : [];
  });
  const breakers = found.filter(({ info }) => info.kind === 'breaker');
  const most_A = Math.max(0, ...breakers.map(({ change_A }) => change_A));
  const inTheWay = breakers.filter(({ change_A }) => change_A >= NEAREST * most_A);
  const nearest = inTheWay.reduce<Concerned | undefined>(
    (best, one) =>
      best === undefined || rating_A(one.info, conditions) < rating_A(best.info, conditions) ? one : best,
    undefined,
  );
  return found.filter(
    ({ info, moment }) =>
      info.kind === 'residual-device' ||
      info.name === nearest?.info.name ||
      moment.state === 'jammed' ||
      operated.includes(info.name),
  );
}

function fact(info: DeviceInfo, moment: DeviceMoment, conditions: Timeline['conditions'], at_s: number): DeviceFact {
  return {
    at_s,
    device: info.name,
    amperes: moment.amperes,
    rating_A: rating_A(info, conditions),
    ...(moment.residual_A === undefined ? {} : { residual_A: moment.residual_A }),
    operation: moment.operation,
  };
}

/** What a breaker carries for ever; what a residual device must act on, A. */
function rating_A(info: DeviceInfo, conditions: Timeline['conditions']): number {
  const settings = info.settings(conditions);
  return 'rating_A' in settings ? settings.rating_A : RESIDUAL_MUST_A[settings.family];
}

/** From this residual current a device of the family must act, A (UL 943 class A: 6 mA). */
const RESIDUAL_MUST_A = { 'ul943-class-a': 0.006 } as const;

function why(moment: DeviceMoment, { amperes, rating_A, residual_A }: DeviceFact, horizon_s: number): ShutBecause {
  if (moment.state === 'not fitted') return 'not-fitted';
  if (moment.state === 'jammed') return 'jammed';
  if (moment.operation.at_s > horizon_s && Number.isFinite(moment.operation.at_s)) return 'too-late';
  if (residual_A !== undefined) return residual_A < BALANCED_A ? 'balanced' : 'below-threshold';
  return amperes <= rating_A ? 'below-rating' : 'may-not';
}
