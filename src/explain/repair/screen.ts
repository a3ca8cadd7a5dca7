import { coldOutlook, steadyState } from '../../scenario/index.ts';
import type { Solution } from '../../electrics/index.ts';
import type { Build, Conditions, DeviceInfo } from '../../installation/index.ts';
import { branch_A } from '../metal.ts';
import { legs, liveInOrdinaryWork, STRAY_A } from '../normalState.ts';
import { solverOf } from '../verdicts/standing.ts';
import type { Case } from './repairs.ts';
import { conductorsProtected, polarityRight } from './rules.ts';

/** No disconnection time is longer, s; a device that has carried its load for long is this many times quicker than a cold one
 *  at most, and the first peak of an offset current is less than twice as high (careful bounds, common practice, no source). */
const LONGEST_S = 5;
const QUICKER = 20;
const HIGHER = 2;

/** Whether one of the rules is broken for certain, found with two solutions of the network and no run. False decides nothing:
 *  then the run itself must be judged. */
export function cannotHold(candidate: Case): boolean {
  if (!polarityRight(candidate) || !conductorsProtected(candidate)) return true;
  const { build, conditions } = candidate;
  if (build.harmonics.length > 0 || build.limits.length > 0) return false;
  const solver = solverOf(build);
  const faults = Object.entries(build.installation.conditions).filter(([, { kind }]) => kind === 'insulation-fault');
  const before = {
    ...conditions,
    ...Object.fromEntries(faults.map(([name, { options }]) => [name, options[0] ?? ''])),
  };
  const calm = solver.solve(build.values(before, new Set()));
  const normal = { solution: calm, start_s: -1 };
  if (legs(build, normal).length > 0 || liveInOrdinaryWork(build, normal).length > 0) return true;
  const everybody = new Set(build.people.map(({ name }) => name));
  const { solution } = steadyState(build, solver, conditions, new Set(), everybody);
  const flows = faults.some(([name]) => branch_A(solution, build.branch(name)) >= STRAY_A);
  return flows && !build.devices.some((device) => mayOpen(build, device, conditions, solution));
}

function mayOpen(build: Build, device: DeviceInfo, conditions: Conditions, solution: Solution): boolean {
  if (!device.fitted(conditions) || device.jammed(conditions)) return false;
  // What compares currents or watches insulation is left to the run.
  if (device.residual !== undefined || device.monitors !== undefined) return true;
  const amperes = HIGHER * Math.max(0, ...device.poles.map((pole) => branch_A(solution, pole)));
  const { frequency_Hz } = build.installation;
  const { earliest_s } = coldOutlook(device, conditions, { amperes, residual_A: 0, frequency_Hz });
  return earliest_s <= QUICKER * LONGEST_S;
}
