import { assign, setup } from 'xstate';
import type { StateValue } from 'xstate';
import type { Build, Conditions, Installation } from '../installation/index.ts';
import { deviceRegion } from './breaker.ts';
import { defectRegion } from './defect.ts';
import { personRegion } from './person.ts';
import type { ScenarioSnapshot } from './timeline.ts';

/** Everything that can be told to the machine of a scenario. No clock is among it: moments are the scheduler's. */
export type ScenarioEvent =
  | { readonly type: 'danger.begins' }
  | { readonly type: 'device.operated'; readonly device: string }
  | { readonly type: 'handle.closed'; readonly device: string }
  | { readonly type: 'person.released'; readonly person: string }
  | { readonly type: 'condition.set'; readonly condition: string; readonly option: string };

/** The machine of this installation: one region for each insulation fault, device and person, all parallel. The input is
 *  what is given (chosen options by condition name); setting another option starts the run anew. Step it purely, with
 *  `initialTransition` and `transition`: nothing in it waits, calls or remembers. */
export function scenarioMachine(build: Build) {
  const { conditions } = build.installation;
  const isGiven = (given: Conditions, name: string): boolean => {
    const usual = conditions[name]?.options[0];
    return (Object.hasOwn(given, name) ? given[name] : usual) !== usual;
  };
  return setup({
    types: {} as { context: { readonly given: Conditions }; events: ScenarioEvent; input: Conditions },
    guards: {
      isGiven: ({ context }, params: { readonly condition: string }) => isGiven(context.given, params.condition),
      // Somebody about whom no condition says what they touch touches all they can reach.
      isTouchGiven: ({ context }, { conditions: touchings }: { readonly conditions: readonly string[] }) =>
        touchings.length === 0 || touchings.some((name) => isGiven(context.given, name)),
      isThisDevice: ({ event }, params: { readonly device: string }) =>
        'device' in event && event.device === params.device,
      isThisPerson: ({ event }, params: { readonly person: string }) =>
        'person' in event && event.person === params.person,
    },
    actions: {
      give: assign(({ context, event }) =>
        event.type === 'condition.set' ? { given: { ...context.given, [event.condition]: event.option } } : context,
      ),
    },
  }).createMachine({
    id: 'scenario',
    context: ({ input }) => ({ given: input }),
    type: 'parallel',
    on: { 'condition.set': { target: '#scenario', reenter: true, actions: 'give' } },
    states: {
      defects: {
        type: 'parallel',
        states: Object.fromEntries(insulationFaults(build.installation).map((name) => [name, defectRegion(name)])),
      },
      devices: {
        type: 'parallel',
        states: Object.fromEntries(build.devices.map(({ name }) => [name, deviceRegion(name)])),
      },
      people: {
        type: 'parallel',
        states: Object.fromEntries(
          build.people.map(({ name }) => [name, personRegion(name, touchingsOf(build.installation, name))]),
        ),
      },
    },
  });
}

/** Names of the conditions that are insulation faults, in file order. */
export function insulationFaults(installation: Installation): readonly string[] {
  return Object.entries(installation.conditions).flatMap(([name, { kind }]) =>
    kind === 'insulation-fault' ? [name] : [],
  );
}

/** Names of the conditions that say what this person touches. */
export function touchingsOf(installation: Installation, person: string): readonly string[] {
  return Object.entries(installation.conditions).flatMap(([name, condition]) =>
    condition.kind === 'touching' && condition.person === person ? [name] : [],
  );
}

/** The state value of the machine as plain data. @throws RangeError if it is the value of another machine */
export function snapshotOf(value: StateValue): ScenarioSnapshot {
  return {
    defects: region(value, 'defects', ['absent', 'struck']),
    devices: region(value, 'devices', ['closed', 'tripped']),
    people: region(value, 'people', ['away', 'touching', 'released']),
  };
}

function region<State extends string>(
  value: StateValue,
  name: string,
  states: readonly State[],
): Readonly<Record<string, State>> {
  const regions = typeof value === 'string' ? undefined : value[name];
  if (regions === undefined || typeof regions === 'string') throw new RangeError(`snapshotOf: no region ${name}`);
  return Object.fromEntries(
    Object.entries(regions).map(([key, current]) => {
      const state = states.find((candidate) => candidate === current);
      if (state === undefined) throw new RangeError(`snapshotOf: ${key} is in no state of ${name}`);
      return [key, state];
    }),
  );
}
