import { severity } from '../body/index.ts';
import type { Zone } from '../body/index.ts';
import type { Solution } from '../electrics/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval, PersonMoment, Timeline } from '../scenario/index.ts';

/** The branches a name stands for: the branch of that name, or all of a part. Empty if there is neither. */
export function branchesOf(build: Build, name: string): readonly number[] {
  const exact = build.branches.findIndex((branch) => branch.name === name);
  if (exact >= 0) return [exact];
  return build.branches.flatMap(({ part, role }, index) => (part === name && role !== 'insulation' ? [index] : []));
}

/** Largest current r.m.s. in a branch or part, A. */
export function amperesThrough(build: Build, { amperes }: Solution, name: string): number {
  return Math.max(0, ...branchesOf(build, name).map((b) => Math.hypot(amperes.re[b] ?? 0, amperes.im[b] ?? 0)));
}

/** No-load volts r.m.s. of the winding that gives most. */
export function supply_V(build: Build, { values: { emf } }: Interval): number {
  return Math.max(0, ...build.sources.map((source) => Math.hypot(emf.re[source] ?? 0, emf.im[source] ?? 0)));
}

/** When a device has opened, s; Infinity if it never does. */
export function opensAt({ intervals }: Timeline, device: string): number {
  const found = intervals.find(({ because }) => because.kind === 'device-operated' && because.device === device);
  return found?.start_s ?? Infinity;
}

/** A person in an interval. @throws RangeError if there is no such person */
export function personIn({ people }: Interval, person: string): PersonMoment {
  const found = people.find((moment) => moment.person === person);
  if (found === undefined) throw new RangeError(`lesson: there is no person "${person}"`);
  return found;
}

/** The worst zone a person comes to in a run. */
export function worstZone({ intervals }: Timeline, person: string): Zone {
  const reached = intervals.map((interval) => personIn(interval, person).zone);
  return reached.reduce((worst, zone) => (severity(zone) > severity(worst) ? zone : worst), reached[0] ?? 'AC-1');
}
