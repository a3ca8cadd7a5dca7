import type { DeviceInfo } from '../installation/index.ts';
import { letThrough_A2s, mustActFrom_A, selectivity, type DeviceSettings } from '../protection/index.ts';
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
    const own = info.settings(conditions);
    const others = build.devices.flatMap((other) => {
      const moment = intervals[index - 1]?.devices.find(({ device }) => device === other.name);
      if (other.name === info.name || other.monitors !== undefined || moment?.state !== 'closed') return [];
      if (moment.operation.earliest_s >= before.operation.latest_s) return [];
      const above = other.settings(conditions);
      const rated = 'rating_A' in above && 'rating_A' in own && above.rating_A > own.rating_A;
      return [{ device: other.name, alone_A: rated ? selectivity(above, own, before.amperes).upTo_A : 0 }];
    });
    const seen = fact(info, { ...before, operation: because.operation }, conditions, start_s);
    if (!('rating_A' in own)) return [{ kind: 'device-operated', ...seen, others }];
    const { least, most } = letThrough_A2s(own, before.amperes);
    return [{ kind: 'device-operated', ...seen, others, letsThrough: { least_A2s: least, most_A2s: most } }];
  });
}

/** Monitors that warned, and what they read. */
export function devicesWarned({ build, conditions, intervals }: Timeline): readonly Finding[] {
  return intervals.flatMap(({ because, start_s }, index): Finding[] => {
    if (because.kind !== 'device-warned') return [];
    const settings = build.devices.find(({ name }) => name === because.device)?.settings(conditions);
    const before = intervals[index - 1]?.devices.find(({ device }) => device === because.device);
    if (settings?.family !== 'insulation-monitor' || before?.reads_ohm === undefined) return [];
    const { threshold_ohm } = settings;
    return [
      { kind: 'device-warned', at_s: start_s, device: because.device, reads_ohm: before.reads_ohm, threshold_ohm },
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
    if (moment === undefined || moment.state === 'open' || info.monitors !== undefined) return [];
    if (!countsAmperes(info, conditions))
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
  const breakers = found.filter(({ info }) => countsAmperes(info, conditions));
  const most_A = Math.max(0, ...breakers.map(({ change_A }) => change_A));
  const inTheWay = breakers.filter(({ change_A }) => change_A >= NEAREST * most_A);
  const nearest = inTheWay.reduce<Concerned | undefined>(
    (best, one) =>
      best === undefined || rating_A(one.info, conditions) < rating_A(best.info, conditions) ? one : best,
    undefined,
  );
  return found.filter(
    ({ info, moment }) =>
      !countsAmperes(info, conditions) ||
      info.name === nearest?.info.name ||
      moment.state === 'jammed' ||
      operated.includes(info.name),
  );
}

/** What is to be said of a device at this moment: of one that both counts amperes and compares, by what it acts on. */
function fact(info: DeviceInfo, moment: DeviceMoment, conditions: Timeline['conditions'], at_s: number): DeviceFact {
  const { amperes, residual_A, reads_ohm, operation } = moment;
  const settings = info.settings(conditions);
  const rating_A = 'rating_A' in settings ? settings.rating_A : 0;
  const must_A = residualMust_A(settings);
  const compares =
    must_A !== undefined &&
    (COMPARING.has(operation.region) || rating_A === 0 || (operation.region === 'none' && amperes <= rating_A));
  return {
    at_s,
    device: info.name,
    amperes,
    rating_A: compares ? must_A : rating_A,
    ...(compares && residual_A !== undefined ? { residual_A } : {}),
    ...(operation.region === 'grounded-neutral' && reads_ohm !== undefined ? { reads_ohm } : {}),
    operation,
  };
}

const COMPARING: ReadonlySet<string> = new Set(['residual', 'ground-fault', 'grounded-neutral']);

function countsAmperes(info: DeviceInfo, conditions: Timeline['conditions']): boolean {
  return 'rating_A' in info.settings(conditions);
}

/** What a breaker carries for ever, A. */
function rating_A(info: DeviceInfo, conditions: Timeline['conditions']): number {
  const settings = info.settings(conditions);
  return 'rating_A' in settings ? settings.rating_A : Infinity;
}

/** From this residual current on a device must act, A; undefined for one that compares nothing. */
export function residualMust_A(settings: DeviceSettings): number | undefined {
  switch (settings.family) {
    case 'adjustable':
      return settings.ground?.pickup_A;
    case 'ul943-class-a':
    case 'iec61008':
    case 'equipment':
      return mustActFrom_A(settings);
    default:
      return 'residual' in settings && settings.residual !== undefined ? mustActFrom_A(settings.residual) : undefined;
  }
}

function why(moment: DeviceMoment, { amperes, rating_A, residual_A }: DeviceFact, horizon_s: number): ShutBecause {
  if (moment.state === 'not fitted') return 'not-fitted';
  if (moment.state === 'jammed') return 'jammed';
  if (moment.operation.at_s > horizon_s && Number.isFinite(moment.operation.at_s)) return 'too-late';
  if (residual_A !== undefined) return residual_A < BALANCED_A ? 'balanced' : 'below-threshold';
  return amperes <= rating_A ? 'below-rating' : 'may-not';
}
