import { coldOutlook, steadyState } from '../../scenario/index.ts';
import type { Solution } from '../../electrics/index.ts';
import type { Build, Conditions, DeviceInfo } from '../../installation/index.ts';
import { disconnectionLimit_s, nominal_V } from '../faultState.ts';
import { branch_A } from '../metal.ts';
import { legs, liveInOrdinaryWork, STRAY_A } from '../normalState.ts';
import { solverOf } from '../verdicts/standing.ts';
import type { Case } from './repairs.ts';
import { conductorsProtected, polarityRight } from './rules.ts';

/** A device that has carried its load for long is this many times quicker than a cold one at most, and the first peak of an
 *  offset current less than twice as high (careful bounds, common practice, no source). */
const QUICKER = 20;
const HIGHER = 2;
/** What opens by its magnetic part or melts at once has done so by then, s. */
const AT_ONCE_S = 0.1;
/** People in touch change a current by less than this, A: half the supply over the least a body has (575 Ω, IEC 60479-1). */
const BY_PEOPLE_A = 0.5;

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
  const values = build.values(before, new Set());
  const calm = solver.solve(values);
  const normal = { solution: calm, start_s: -1 };
  if (legs(build, normal).length > 0 || liveInOrdinaryWork(build, normal).length > 0) return true;
  // Of several supplies the one that allows most: what the fault hangs on is not known before it is run.
  const volts = [nominal_V(build, { values }), ...build.supplies.map(({ nominal_V: own }) => own)];
  const limit_s = Math.max(...volts.map((one) => disconnectionLimit_s(build, one)));
  const bare = solver.solve(build.values(conditions, new Set()));
  const flows = (solution: Solution): number =>
    Math.max(0, ...faults.map(([name]) => branch_A(solution, build.branch(name))));
  const never = (solution: Solution, more_A: number): boolean =>
    !build.devices.some((device) => mayOpen(build, device, conditions, solution, more_A, limit_s));
  if (flows(bare) >= 2 * BY_PEOPLE_A + STRAY_A) return never(bare, BY_PEOPLE_A);
  const everybody = new Set(build.people.map(({ name }) => name));
  const { solution } = steadyState(build, solver, conditions, new Set(), everybody);
  return flows(solution) >= STRAY_A && never(solution, 0);
}

function mayOpen(
  build: Build,
  device: DeviceInfo,
  conditions: Conditions,
  solution: Solution,
  more_A: number,
  limit_s: number,
): boolean {
  if (!device.fitted(conditions) || device.jammed(conditions)) return false;
  // What compares currents or watches insulation is left to the run.
  if (device.residual !== undefined || device.monitors !== undefined) return true;
  const amperes = more_A + Math.max(0, ...device.poles.map((pole) => branch_A(solution, pole)));
  const { frequency_Hz } = build.installation;
  const at_s = (times: number): number =>
    coldOutlook(device, conditions, { amperes: times * amperes, residual_A: 0, frequency_Hz }).at_s;
  return at_s(1) <= QUICKER * limit_s || at_s(HIGHER) <= AT_ONCE_S;
}
