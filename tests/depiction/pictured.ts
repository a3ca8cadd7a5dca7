import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import './drawnPlaces.ts';
import { depict, type Depiction } from '../../src/depiction/index.ts';
import {
  compile,
  initialConditions,
  readInstallation,
  type Build,
  type Conditions,
} from '../../src/installation/index.ts';
import { run, type Timeline } from '../../src/scenario/index.ts';

/** A drawn place of Kestrel Yard, compiled once. */
export interface Pictured {
  readonly build: Build;
  /** A run in which these conditions differ from its everyday. */
  readonly runOf: (conditions?: Conditions) => Timeline;
  /** The picture at a moment of such a run, in the words of its region. */
  readonly pictured: (time_s: number, conditions?: Conditions) => Depiction;
  /** Any conditions of the place, each with any of its options. */
  readonly anyConditions: fc.Arbitrary<Conditions>;
}

/** The place of this name in lessons/places.
 *  @throws Error if its file cannot be read */
export function picturedPlace(name: string): Pictured {
  const file = `lessons/places/${name}.yaml`;
  const reading = readInstallation(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(`${file} cannot be read`);
  const { installation } = reading;
  const build = compile(installation);
  const usual = initialConditions(installation);
  const runOf = (conditions: Conditions = {}): Timeline => run(build, { ...usual, ...conditions });
  const options = Object.entries(installation.conditions).map(([condition, made]) => [
    condition,
    fc.constantFrom(...made.options),
  ]);
  return {
    build,
    runOf,
    pictured: (time_s, conditions) => depict(runOf(conditions), time_s, installation.region),
    anyConditions: fc.record(Object.fromEntries(options)),
  };
}

/** The bakery, which most tests of pictures look at. */
export const { build: bakery, runOf, pictured, anyConditions } = picturedPlace('bakery');

/** A moment that runs pass through: ordinary work, the fault, soon after, long after. */
export const anyMoment = fc.constantFrom(-0.5, 0, 0.005, 0.3, 60);
