import { initialTransition, transition } from 'xstate';
import type { Build, Conditions } from '../installation/index.ts';
import { scenarioMachine, snapshotOf } from './scenarioMachine.ts';
import type { ScenarioEvent } from './scenarioMachine.ts';
import type { ScenarioSnapshot } from './timeline.ts';

/** Steps the machine of one build from snapshot to snapshot. */
export interface Stepper {
  /** Where every run begins. */
  readonly start: ScenarioSnapshot;
  /** Where this event leads from this snapshot while these conditions are given. */
  after(snapshot: ScenarioSnapshot, event: ScenarioEvent, given: Conditions): ScenarioSnapshot;
}

/** A stepper that remembers where each event led: a step of the machine costs more than solving the network, its answer
 *  never changes, and runs of one place ask for few different ones. */
export function stepperOf(build: Build): Stepper {
  const machine = scenarioMachine(build);
  const [{ value }] = initialTransition(machine, {});
  const known = new Map<string, ScenarioSnapshot>();
  // All that guards read of the conditions.
  const guarding = Object.entries(build.installation.conditions).flatMap(([name, { kind }]) =>
    kind === 'insulation-fault' || kind === 'touching' ? [name] : [],
  );
  return {
    start: snapshotOf(value),
    after(snapshot, event, given) {
      const key = JSON.stringify([snapshot, event, guarding.map((name) => given[name])]);
      const remembered = known.get(key);
      if (remembered !== undefined) return remembered;
      const state = machine.resolveState({ value: { ...snapshot }, context: { given } });
      const [next] = transition(machine, state, event);
      const reached = snapshotOf(next.value);
      known.set(key, reached);
      return reached;
    },
  };
}
