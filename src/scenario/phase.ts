import { phasor } from '../electrics/index.ts';
import type { Solver } from '../electrics/index.ts';
import type { Build, Conditions } from '../installation/index.ts';
import { peakFactor } from '../protection/index.ts';
import { seenByDevice } from './device.ts';
import type { Around, SeenByDevice } from './device.ts';
import { faultShare } from './faultShare.ts';
import { seenByPerson } from './person.ts';
import type { SeenByPerson } from './person.ts';
import { probeOf } from './probe.ts';
import { insulationFaults, touchingsOf } from './scenarioMachine.ts';
import { steadyState } from './steadyState.ts';
import type { SteadyState } from './steadyState.ts';
import type { DeviceMoment, Interval, ScenarioSnapshot } from './timeline.ts';

/** A device during a phase: what it sees and, while its contacts are closed, when it would open. */
export interface DevicePhase {
  readonly seen: SeenByDevice;
  readonly state: DeviceMoment['state'];
}

/** The network solved for one snapshot: it holds until a device operates or a hand lets go. */
export interface Phase
  extends
    Pick<Interval, 'snapshot' | 'conditions' | 'values' | 'solution'>,
    Partial<Pick<Interval, 'fault' | 'harmonics'>> {
  readonly devices: readonly DevicePhase[];
  readonly people: readonly SeenByPerson[];
}

/** Solves what this snapshot of the given conditions amounts to. */
export function phaseOf(build: Build, solver: Solver, given: Conditions, snapshot: ScenarioSnapshot): Phase {
  const conditions = inForce(build, given, snapshot);
  const open = namesIn(snapshot.devices, 'tripped');
  const steady = steadyState(build, solver, conditions, open, namesIn(snapshot.people, 'touching'));
  const { values, solution } = steady;
  const fault = faultShare(build, solver, conditions, open, steady);
  const harmonics = build.harmonics.map((order) => ({
    order,
    solution: solver.solve(build.values(conditions, open, steady.limb_ohm, order)),
  }));
  const around: Around = {
    frequency_Hz: build.installation.frequency_Hz,
    harmonics: harmonics.map((harmonic) => harmonic.solution.amperes),
    peakFactor: isFaulted(build, snapshot) ? peakFactor(xOverR(build, steady)) : 1,
    probe: probeOf(solver, values),
  };
  return {
    snapshot,
    conditions,
    values,
    solution,
    devices: build.devices.map((info) => ({
      seen: seenByDevice(info, conditions, solution.amperes, around),
      state: open.has(info.name)
        ? info.monitors === undefined
          ? 'open'
          : 'warning'
        : !info.fitted(conditions)
          ? 'not fitted'
          : info.jammed(conditions)
            ? 'jammed'
            : 'closed',
    })),
    people: build.people.map((person) => seenByPerson(person, steady)),
    ...(harmonics.length === 0 ? {} : { harmonics }),
    ...(fault === undefined ? {} : { fault }),
  };
}

/** The conditions as they are now: what has not struck and whoever does not touch read as the first option. */
function inForce(build: Build, given: Conditions, snapshot: ScenarioSnapshot): Conditions {
  const { installation } = build;
  const waived = [
    ...insulationFaults(installation).filter((name) => snapshot.defects[name] !== 'struck'),
    ...build.people.flatMap(({ name }) =>
      snapshot.people[name] === 'touching' ? [] : touchingsOf(installation, name),
    ),
  ];
  const usual = waived.map((name) => [name, installation.conditions[name]?.options[0] ?? ''] as const);
  return { ...given, ...Object.fromEntries(usual) };
}

function isFaulted(build: Build, { defects }: ScenarioSnapshot): boolean {
  return insulationFaults(build.installation).some((name) => defects[name] === 'struck');
}

/** Reactance over resistance of all that the sources drive, by the power they give: while a fault draws nearly everything
 *  that is the ratio of its loop. */
function xOverR(build: Build, { values, solution }: SteadyState): number {
  let active = 0;
  let reactive = 0;
  for (const source of build.sources) {
    const [e, i] = [phasor(values.emf, source), phasor(solution.amperes, source)];
    active += e.re * i.re + e.im * i.im;
    reactive += e.im * i.re - e.re * i.im;
  }
  return active > 0 ? Math.max(0, reactive) / active : 0;
}

function namesIn(regions: Readonly<Record<string, string>>, state: string): ReadonlySet<string> {
  return new Set(Object.keys(regions).filter((name) => regions[name] === state));
}
