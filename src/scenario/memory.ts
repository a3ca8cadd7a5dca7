import type { Build } from '../installation/index.ts';
import type { Operation, Tolerance } from '../protection/index.ts';
import { AT_REST, COLD, memoryAfter, memoryFromLongBefore, outlook } from './device.ts';
import type { DeviceMemory } from './device.ts';
import { exposureAfter, untouched } from './exposure.ts';
import type { Exposure } from './exposure.ts';
import { willLetGo } from './person.ts';
import type { SeenByPerson } from './person.ts';
import type { Phase } from './phase.ts';

/** What devices and people bring along when a phase begins; parallel to the devices and people of the build. */
export interface Memory {
  readonly devices: readonly DeviceMemory[];
  readonly people: readonly PersonMemory[];
}

/** What a person brings along. */
export interface PersonMemory {
  readonly exposure: Exposure;
  /** Since when a current has flowed that makes them let go, s on the timeline; Infinity while none does. */
  readonly urgedSince_s: number;
}

/** The memory at 0 s when this phase has gone on for long and nobody has touched anything yet. */
export function memoryAtZero(build: Build, phase: Phase, tolerance: Tolerance): Memory {
  return {
    devices: phase.devices.map(({ seen }) => memoryFromLongBefore(seen, tolerance)),
    people: build.people.map(({ limits }) => ({ exposure: untouched(limits), urgedSince_s: Infinity })),
  };
}

/** The memory when this phase begins at this moment, s, out of the one before it. */
export function entering(phase: Phase, memory: Memory, now_s: number): Memory {
  const urged = (seen: SeenByPerson, since_s: number): number =>
    willLetGo(seen) ? Math.min(since_s, now_s) : Infinity;
  return {
    ...memory,
    people: memory.people.map((person, index) => {
      const seen = phase.people[index];
      return seen === undefined ? person : { ...person, urgedSince_s: urged(seen, person.urgedSince_s) };
    }),
  };
}

/** The memory when this phase has lasted this time, s. */
export function leaving(phase: Phase, memory: Memory, time_s: number, tolerance: Tolerance): Memory {
  return {
    devices: memory.devices.map((device, index) => {
      const seen = phase.devices[index]?.seen;
      return seen === undefined ? device : memoryAfter(seen, device, time_s, tolerance);
    }),
    people: memory.people.map((person, index) => {
      const heart_A = phase.people[index]?.heart_A ?? 0;
      return { ...person, exposure: exposureAfter(person.exposure, heart_A, time_s) };
    }),
  };
}

/** When each device opens, counted from where its memory stands; an open one never does. */
export function outlooks(phase: Phase, memory: Memory, tolerance: Tolerance): readonly Operation[] {
  return phase.devices.map(({ seen, state }, index) =>
    state === 'open' || state === 'warning' ? AT_REST : outlook(seen, memory.devices[index] ?? COLD, tolerance),
  );
}
