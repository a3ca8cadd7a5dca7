import { createSolver } from '../electrics/index.ts';
import type { Solver } from '../electrics/index.ts';
import type { Build, Conditions } from '../installation/index.ts';
import type { Operation, Tolerance } from '../protection/index.ts';
import { intervals } from './intervals.ts';
import { entering, leaving, memoryAtZero, outlooks } from './memory.ts';
import type { Memory } from './memory.ts';
import { REACTION_S } from './person.ts';
import { phaseOf } from './phase.ts';
import type { Phase } from './phase.ts';
import type { ScenarioEvent } from './scenarioMachine.ts';
import { stepperOf } from './stepper.ts';
import type { Stepper } from './stepper.ts';
import type { Happening, Interval, ScenarioSnapshot, Timeline } from './timeline.ts';

/** Events later than this are not looked for, s: long enough for the 135 % point of every breaker (UL 489: 2 h at most). */
const HORIZON_S = 7200;

/** Where the shown time begins, s; it stands for "long before". */
const BEFORE_S = -1;

interface Next {
  readonly at_s: number;
  /** Of things at the same moment the lower rank comes first. */
  readonly rank: number;
  /** Of those of one rank whoever sees the most for what it is built for: the smaller of two in series. */
  readonly multiple: number;
  readonly event: ScenarioEvent;
  readonly because: Happening;
}

const RESIDUAL_FIRST = 0;
const THEN_BREAKERS = 1;
const THEN_HANDS = 2;

/** What happens, in order of time, when this installation stands under these conditions.
 *
 *  It begins long before 0 s with everything as given except insulation faults and touches. At 0 s the faults strike
 *  and the hands go on. From then on every closed device and every touching person is asked "when next?", the earliest
 *  happens and the network is solved again. Nothing recloses and nobody touches twice, so at most 2 + devices + people
 *  states are solved.
 *  @throws RangeError naming an unknown condition or option, or for a horizon below zero */
export function run(
  build: Build,
  conditions: Conditions,
  options: { readonly tolerance?: Tolerance; readonly horizon_s?: number } = {},
): Timeline {
  const { tolerance = 'middle', horizon_s = HORIZON_S } = options;
  if (!(horizon_s >= 0)) throw new RangeError(`run: the horizon is ${horizon_s} s; write zero or more`);
  const { stepper, solver } = engineOf(build);
  const laid: Interval[] = [];

  let snapshot = stepper.start;
  let phase = phaseOf(build, solver, conditions, snapshot);
  let memory = memoryAtZero(build, phase, tolerance);
  let because: Happening = { kind: 'begins' };
  let start_s = BEFORE_S;
  let from_s = 0;

  const endangered = stepper.after(snapshot, { type: 'danger.begins' }, conditions);
  const danger = firstDanger(endangered);
  if (danger !== undefined) {
    const asked = outlooks(phase, memory, tolerance);
    laid.push(...intervals(phase, asked, memory, { because, start_s, from_s, end_s: 0 }));
    snapshot = endangered;
    phase = phaseOf(build, solver, conditions, snapshot);
    because = danger;
    start_s = 0;
  }

  for (let events = build.devices.length + build.people.length; ; events -= 1) {
    memory = entering(phase, memory, from_s);
    const asked = outlooks(phase, memory, tolerance);
    const next = events > 0 ? earliest(phase, asked, memory, from_s) : undefined;
    const end_s = next !== undefined && next.at_s <= horizon_s ? next.at_s : Infinity;
    laid.push(...intervals(phase, asked, memory, { because, start_s, from_s, end_s }));
    if (next === undefined || end_s === Infinity) return { build, conditions, tolerance, intervals: laid, horizon_s };
    memory = leaving(phase, memory, end_s - from_s, tolerance);
    snapshot = stepper.after(snapshot, next.event, conditions);
    phase = phaseOf(build, solver, conditions, snapshot);
    because = next.because;
    start_s = from_s = end_s;
  }
}

/** What happens next in this phase; among equals by rank, then by overload, then in the order of the file. */
function earliest(phase: Phase, asked: readonly Operation[], memory: Memory, from_s: number): Next | undefined {
  const devices = phase.devices.flatMap(({ seen, state }, index): Next[] => {
    const operation = asked[index];
    if (state !== 'closed' || operation === undefined) return [];
    const device = seen.info.name;
    return [
      {
        at_s: from_s + operation.at_s,
        rank: seen.residual_A !== undefined && operation.region !== 'magnetic' ? RESIDUAL_FIRST : THEN_BREAKERS,
        multiple: operation.multiple,
        event: { type: 'device.operated', device },
        because: { kind: seen.info.monitors === undefined ? 'device-operated' : 'device-warned', device, operation },
      },
    ];
  });
  const people = phase.people.map(({ person }, index): Next => ({
    at_s: (memory.people[index]?.urgedSince_s ?? Infinity) + REACTION_S,
    rank: THEN_HANDS,
    multiple: 0,
    event: { type: 'person.released', person },
    because: { kind: 'person-released', person },
  }));
  return [...devices, ...people]
    .filter(({ at_s }) => at_s < Infinity)
    .sort((one, other) => one.at_s - other.at_s || one.rank - other.rank || other.multiple - one.multiple)[0];
}

/** What the change at 0 s is called: the fault if one strikes, else the first touch. */
function firstDanger({ defects, people }: ScenarioSnapshot): Happening | undefined {
  const condition = Object.keys(defects).find((name) => defects[name] === 'struck');
  if (condition !== undefined) return { kind: 'fault-strikes', condition };
  const person = Object.keys(people).find((name) => people[name] === 'touching');
  return person === undefined ? undefined : { kind: 'touches', person };
}

interface Engine {
  readonly stepper: Stepper;
  readonly solver: Solver;
}

// Finding the order of elimination and laying out the machine takes longer than a run; neither changes with conditions.
const engines = new WeakMap<Build, Engine>();

function engineOf(build: Build): Engine {
  const known = engines.get(build);
  if (known !== undefined) return known;
  const engine = { stepper: stepperOf(build), solver: createSolver(build.network) };
  engines.set(build, engine);
  return engine;
}
