import type { Phasors } from '../electrics/index.ts';
import type { Conditions, DeviceInfo } from '../installation/index.ts';
import { breakerAfter, breakerOperation, residualOperation } from '../protection/index.ts';
import type { BreakerSettings, Operation, ResidualSettings, Tolerance } from '../protection/index.ts';
import { largestPole_A } from './breaker.ts';
import { residual_A } from './residualDevice.ts';

/** What a device brings along from before: the heat of its bimetal and how far an operation had already gone. */
export interface DeviceMemory {
  readonly heat: number;
  /** Share, 0 to 1, of a magnetic or residual operation already gone by when the current changed under way. */
  readonly share: number;
}

/** A device that has carried nothing yet. */
export const COLD: DeviceMemory = { heat: 0, share: 0 };

/** A device and what it sees now, A r.m.s. */
export interface SeenByDevice {
  readonly info: DeviceInfo;
  readonly settings: BreakerSettings | ResidualSettings;
  readonly amperes: number;
  readonly residual_A?: number;
}

/** What a device that is open looks forward to: nothing operates after it has opened. */
export const AT_REST: Operation = {
  at_s: Infinity,
  earliest_s: Infinity,
  latest_s: Infinity,
  region: 'none',
  certain: true,
  multiple: 0,
};

/** What this device sees of these branch currents at the installation's frequency and its harmonics. */
export function seenByDevice(
  info: DeviceInfo,
  conditions: Conditions,
  amperes: Phasors,
  harmonics: readonly Phasors[] = [],
): SeenByDevice {
  const residual = residual_A(info, amperes, harmonics);
  return {
    info,
    settings: info.settings(conditions),
    amperes: largestPole_A(info, amperes, harmonics),
    ...(residual === undefined ? {} : { residual_A: residual }),
  };
}

/** When this device operates if what it sees stays as it is, s from now. */
export function outlook(seen: SeenByDevice, memory: DeviceMemory, tolerance: Tolerance): Operation {
  const fresh = freshOutlook(seen, memory, tolerance);
  return isTimed(fresh) ? scaled(fresh, 1 - memory.share) : fresh;
}

/** When this device would open, from cold, at a current and, if it compares any, a residual current that stay, A. */
export function coldOutlook(
  info: DeviceInfo,
  conditions: Conditions,
  { amperes, residual_A }: Pick<SeenByDevice, 'amperes' | 'residual_A'>,
): Operation {
  const settings = info.settings(conditions);
  const residual = info.residual === undefined || residual_A === undefined ? {} : { residual_A };
  return outlook({ info, settings, amperes, ...residual }, COLD, 'middle');
}

/** What the device remembers after this time, s, at what it sees. */
export function memoryAfter(
  seen: SeenByDevice,
  memory: DeviceMemory,
  time_s: number,
  tolerance: Tolerance,
): DeviceMemory {
  const fresh = freshOutlook(seen, memory, tolerance);
  const share = isTimed(fresh) ? (fresh.at_s > 0 ? Math.min(1, memory.share + time_s / fresh.at_s) : 1) : 0;
  return { heat: heatAfter(seen, memory, time_s, tolerance), share };
}

/** The memory of a device that has carried this for long before the run. A current that would have opened it cannot
 *  have lasted, so such a device starts cold. */
export function memoryFromLongBefore(seen: SeenByDevice, tolerance: Tolerance): DeviceMemory {
  if (freshOutlook(seen, COLD, tolerance).at_s < Infinity) return COLD;
  return { heat: heatAfter(seen, COLD, Infinity, tolerance), share: 0 };
}

/** This outlook as it reads when some of the time, s, has gone by. */
export function remaining(operation: Operation, elapsed_s: number): Operation {
  const left = (time_s: number): number => Math.max(0, time_s - elapsed_s);
  return elapsed_s === 0
    ? operation
    : {
        ...operation,
        at_s: left(operation.at_s),
        earliest_s: left(operation.earliest_s),
        latest_s: left(operation.latest_s),
      };
}

function freshOutlook(seen: SeenByDevice, { heat }: DeviceMemory, tolerance: Tolerance): Operation {
  const { settings } = seen;
  return settings.family === 'ul943-class-a'
    ? residualOperation(settings, seen.residual_A ?? 0, tolerance)
    : breakerOperation(settings, { heat }, seen.amperes, tolerance);
}

function heatAfter(seen: SeenByDevice, { heat }: DeviceMemory, time_s: number, tolerance: Tolerance): number {
  const { settings } = seen;
  return settings.family === 'ul943-class-a'
    ? 0
    : breakerAfter(settings, { heat }, seen.amperes, time_s, tolerance).heat;
}

/** Whether this operation takes a time of its own rather than following the heat. */
function isTimed(operation: Operation): boolean {
  return operation.region === 'magnetic' || operation.region === 'residual';
}

function scaled(operation: Operation, by: number): Operation {
  if (by === 1) return operation;
  // A slower device may not be under way at all: never stays never.
  const part = (time_s: number): number => (time_s === Infinity ? Infinity : time_s * by);
  const { at_s, earliest_s, latest_s } = operation;
  return { ...operation, at_s: part(at_s), earliest_s: part(earliest_s), latest_s: part(latest_s) };
}
