import { describe, expect, test } from 'vitest';
import { initialTransition, transition } from 'xstate';
import { adjacencyMapToArray, getAdjacencyMap } from 'xstate/graph';
import type { Conditions } from '../../src/installation/index.ts';
import { run, scenarioMachine } from '../../src/scenario/index.ts';
import { snapshotOf } from '../../src/scenario/scenarioMachine.ts';
import type { ScenarioEvent } from '../../src/scenario/scenarioMachine.ts';
import { stepperOf } from '../../src/scenario/stepper.ts';
import { chance } from './anyCase.ts';
import { bakery, usual } from './bakery.ts';
import { broken } from './holds.ts';

const machine = scenarioMachine(bakery);
const all = Object.entries(bakery.installation.conditions);
/** The ten main conditions: name, and its two options. */
const MAIN = [
  ['line touches the case', 'no', 'solid'],
  ['protective conductor open', 'no', 'yes'],
  ['bonding jumper missing', 'no', 'yes'],
  ['service neutral open', 'no', 'yes'],
  ['line and neutral reversed', 'no', 'yes'],
  ['neutral linked to the case', 'no', 'yes'],
  ['protective conductor to its own rod', 'no', 'yes'],
  ['loose joint', 'no', 'yes'],
  ['mixer running', 'no', 'yes'],
  ['baker touches', 'nothing', 'the case'],
] as const;
const toggles: readonly ScenarioEvent[] = all.flatMap(([condition, { options }]) =>
  options.map((option): ScenarioEvent => ({ type: 'condition.set', condition, option })),
);

/** How many things are other than when the place opens. */
function departures(given: Conditions): number {
  return all.filter(([name, { options }]) => {
    const opening = usual[name] ?? options[0];
    return (given[name] ?? opening) !== opening;
  }).length;
}

function keyOf(given: Conditions): string {
  return all.map(([name, { options }]) => given[name] ?? options[0]).join('|');
}

describe('the machine of a scenario', () => {
  test('it begins with nothing struck, nothing tripped and everybody away', () => {
    const [start] = initialTransition(machine, { 'line touches the case': 'solid', 'baker touches': 'the case' });
    expect(snapshotOf(start.value)).toEqual({
      defects: { 'line touches the case': 'absent' },
      devices: {
        'main breaker': 'closed',
        'mixer breaker': 'closed',
        gfci: 'closed',
        'oven breaker': 'closed',
        'lamp breaker': 'closed',
      },
      people: { baker: 'away' },
    });
  });

  test('a fault and a hand that are not given do not come when danger begins', () => {
    const [start] = initialTransition(machine, usual);
    const [after] = transition(machine, start, { type: 'danger.begins' });
    expect(after.value).toEqual(start.value);
  });

  test('a handle closed by hand closes that device and no other', () => {
    const [start] = initialTransition(machine, {});
    const [one] = transition(machine, start, { type: 'device.operated', device: 'gfci' });
    const [two] = transition(machine, one, { type: 'device.operated', device: 'lamp breaker' });
    const [reset] = transition(machine, two, { type: 'handle.closed', device: 'gfci' });
    expect(snapshotOf(reset.value).devices).toMatchObject({ gfci: 'closed', 'lamp breaker': 'tripped' });
  });

  test('setting a condition starts the run anew with that condition and no other changed', () => {
    const [start] = initialTransition(machine, { ...usual, 'line touches the case': 'solid' });
    const [struck] = transition(machine, start, { type: 'danger.begins' });
    const [tripped] = transition(machine, struck, { type: 'device.operated', device: 'mixer breaker' });
    const [anew] = transition(machine, tripped, { type: 'condition.set', condition: 'gfci fitted', option: 'yes' });
    expect(anew.value).toEqual(start.value);
    expect(anew.context.given).toEqual({ ...usual, 'line touches the case': 'solid', 'gfci fitted': 'yes' });
  });

  test('no order of events reopens what is open, unstrikes a fault or lets a hand go that does not touch', () => {
    // Every order of danger, five devices operating and the hand letting go: 2 · 3 person states · 2⁵ devices at most.
    const events: ScenarioEvent[] = [
      { type: 'danger.begins' },
      ...bakery.devices.map(({ name }): ScenarioEvent => ({ type: 'device.operated', device: name })),
      { type: 'person.released', person: 'baker' },
    ];
    const map = getAdjacencyMap(machine, {
      input: { 'line touches the case': 'solid', 'baker touches': 'the case' },
      events,
      serializeState: ({ value }) => JSON.stringify(value),
    });
    expect(Object.keys(map)).toHaveLength(3 * 2 ** 5);
    for (const { state, event, nextState } of adjacencyMapToArray(map)) {
      const before = snapshotOf(state.value);
      const after = snapshotOf(nextState.value);
      if (before.defects['line touches the case'] === 'struck') expect(after.defects).toEqual(before.defects);
      for (const { name } of bakery.devices) {
        const operated = event.type === 'device.operated' && event.device === name;
        expect(after.devices[name]).toBe(operated ? 'tripped' : before.devices[name]);
      }
      if (event.type === 'person.released')
        expect(after.people['baker']).toBe(before.people['baker'] === 'away' ? 'away' : 'released');
    }
  });
});

describe('stepping from snapshot to snapshot', () => {
  test('is what the machine does, whatever was asked before', () => {
    const stepper = stepperOf(bakery);
    const next = chance(7);
    const events: readonly ScenarioEvent[] = [
      { type: 'danger.begins' },
      ...bakery.devices.flatMap(({ name }): ScenarioEvent[] => [
        { type: 'device.operated', device: name },
        { type: 'handle.closed', device: name },
      ]),
      { type: 'person.released', person: 'baker' },
    ];
    for (let round = 0; round < 100; round += 1) {
      const given = {
        ...usual,
        'line touches the case': next() < 0.5 ? 'no' : '1 ohm',
        'baker touches': next() < 0.5 ? 'nothing' : 'the case and the sink',
      };
      let [state] = initialTransition(machine, given);
      let snapshot = stepper.start;
      for (let step = 0; step < 8; step += 1) {
        const event = events[Math.floor(next() * events.length)]!;
        [state] = transition(machine, state, event);
        snapshot = stepper.after(snapshot, event, given);
        expect(snapshot).toEqual(state.value);
      }
    }
  });
});

describe('every reachable combination of the conditions', () => {
  test('of up to three departures from the bakery as it opens holds every invariant', { timeout: 60_000 }, () => {
    const map = getAdjacencyMap(machine, {
      input: usual,
      events: ({ context }) =>
        toggles.filter(
          (event) =>
            event.type === 'condition.set' &&
            departures({ ...context.given, [event.condition]: event.option }) > departures(context.given),
        ),
      stopWhen: ({ context }) => departures(context.given) >= 3,
      serializeState: ({ context }) => keyOf(context.given),
      limit: 1e6,
    });
    const reached = [usual, ...adjacencyMapToArray(map).map(({ nextState }) => nextState.context.given)];
    const combinations = [...new Map(reached.map((given) => [keyOf(given), given])).values()];
    expect(combinations.length).toBe(combinationsUpTo(3));
    for (const given of combinations)
      expect({ given, broken: broken(run(bakery, given)) }).toEqual({ given, broken: [] });
  });
});

describe('every combination of the main conditions', () => {
  test('of the ten, in each kind of shoe, holds every invariant', { timeout: 60_000 }, () => {
    for (let bits = 0; bits < 2 ** MAIN.length; bits += 1) {
      const given = Object.fromEntries(MAIN.map(([name, off, on], bit) => [name, (bits >> bit) & 1 ? on : off]));
      const shoes = given['baker touches'] === 'nothing' ? ['dry shoes'] : ['dry shoes', 'wet shoes', 'bare feet'];
      for (const wears of shoes) {
        const conditions = { ...usual, ...given, 'baker wears': wears };
        expect({ conditions, broken: broken(run(bakery, conditions)) }).toEqual({ conditions, broken: [] });
      }
    }
  });
});

/** How many ways there are to depart in at most this many conditions: coefficients of Π (1 + (options − 1)·x). */
function combinationsUpTo(most: number): number {
  const ways = all.reduce(
    (sofar, [, { options }]) =>
      sofar.map((count, departed) => count + (options.length - 1) * (sofar[departed - 1] ?? 0)),
    [1, ...Array.from({ length: most }, () => 0)],
  );
  return ways.reduce((sum, count) => sum + count, 0);
}
