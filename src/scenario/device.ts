import type { Phasors } from '../electrics/index.ts';
import type { Conditions, DeviceInfo } from '../installation/index.ts';
import { elementAfter, elementOperation, elementsOf, firstOf } from '../protection/index.ts';
import type { DeviceSettings, Operation, Seen, Tolerance } from '../protection/index.ts';
import { largestPole_A } from './breaker.ts';
import { insulation_ohm, loop_ohm, type Probe } from './probe.ts';
import { residual_A } from './residualDevice.ts';

/** What an element of a device brings along from before. */
export interface ElementMemory {
  /** Heat of its bimetal, in (I / rating)². */
  readonly heat: number;
  /** Share, 0 to 1, of an operation already gone by when the current changed under way. */
  readonly share: number;
}

/** What a device brings along: each of its elements by itself, in their order. */
export type DeviceMemory = readonly ElementMemory[];

/** A device that has carried nothing yet. */
export const COLD: DeviceMemory = [];
const COLD_ELEMENT: ElementMemory = { heat: 0, share: 0 };

/** A device and what it sees now. */
export interface SeenByDevice extends Seen {
  readonly info: DeviceInfo;
  readonly settings: DeviceSettings;
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

/** What of the network a device feels beside the current at its frequency. */
export interface Around {
  readonly frequency_Hz: number;
  /** Branch currents of each harmonic. */
  readonly harmonics: readonly Phasors[];
  /** κ of a fault that has struck. */
  readonly peakFactor: number;
  readonly probe: Probe;
}

/** More of a residual current in harmonics than this share of the rest, and it is no longer what a device for sinusoidal
 *  current is tested with (assumption). */
const SINUSOIDAL = 0.1;

/** What this device sees of these branch currents, and of the network where it sends something out itself. */
export function seenByDevice(
  info: DeviceInfo,
  conditions: Conditions,
  amperes: Phasors,
  { frequency_Hz, harmonics, peakFactor, probe }: Around,
): SeenByDevice {
  const settings = info.settings(conditions);
  const residual = residual_A(info, amperes, harmonics);
  const sine = residual_A(info, amperes) ?? 0;
  const compares = 'residual' in settings ? settings.residual : settings;
  return {
    info,
    settings,
    amperes: largestPole_A(info, amperes, harmonics),
    peakFactor,
    ...(residual === undefined ? {} : { residual_A: residual, frequency_Hz }),
    ...(residual !== undefined && residual > Math.hypot(1, SINUSOIDAL) * sine ? { content: 'composite' as const } : {}),
    ...(compares?.family === 'ul943-class-a' && info.residual !== undefined
      ? { loop_ohm: loop_ohm(probe, info.residual) }
      : {}),
    ...(info.monitors === undefined ? {} : { insulation_ohm: insulation_ohm(probe, info.monitors) }),
  };
}

/** When this device operates if what it sees stays as it is, s from now: when the first of its elements does. */
export function outlook(seen: SeenByDevice, memory: DeviceMemory, tolerance: Tolerance): Operation {
  return firstOf(
    elementsOf(seen.settings, seen).map((element, index) => {
      const own = memory[index] ?? COLD_ELEMENT;
      const fresh = elementOperation(element, own, seen, tolerance);
      return isTimed(fresh) ? scaled(fresh, 1 - own.share) : fresh;
    }),
  );
}

/** What the device remembers after this time, s, at what it sees. */
export function memoryAfter(
  seen: SeenByDevice,
  memory: DeviceMemory,
  time_s: number,
  tolerance: Tolerance,
): DeviceMemory {
  return elementsOf(seen.settings, seen).map((element, index) => {
    const own = memory[index] ?? COLD_ELEMENT;
    const fresh = elementOperation(element, own, seen, tolerance);
    const gone = fresh.at_s > 0 ? Math.min(1, own.share + time_s / fresh.at_s) : 1;
    const share = isTimed(fresh) ? gone : 0;
    return { heat: elementAfter(element, own, seen, time_s, tolerance).heat, share };
  });
}

/** The memory of a device that has carried this for long before the run. A current that would have opened it cannot
 *  have lasted, so such a device starts cold. */
export function memoryFromLongBefore(seen: SeenByDevice, tolerance: Tolerance): DeviceMemory {
  return outlook(seen, COLD, tolerance).at_s < Infinity ? COLD : memoryAfter(seen, COLD, Infinity, tolerance);
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

/** Whether this operation takes a time of its own rather than following the heat of a bimetal. */
function isTimed({ region }: Operation): boolean {
  return region !== 'none' && region !== 'thermal';
}

function scaled(operation: Operation, by: number): Operation {
  if (by === 1) return operation;
  // A slower device may not be under way at all: never stays never.
  const part = (time_s: number): number => (time_s === Infinity ? Infinity : time_s * by);
  const { at_s, earliest_s, latest_s } = operation;
  return { ...operation, at_s: part(at_s), earliest_s: part(earliest_s), latest_s: part(latest_s) };
}
