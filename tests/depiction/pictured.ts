import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import './drawnPlaces.ts';
import { depict, type Depiction } from '../../src/depiction/index.ts';
import { compile, initialConditions, readInstallation, type Conditions } from '../../src/installation/index.ts';
import { run, type Timeline } from '../../src/scenario/index.ts';

const file = 'lessons/places/bakery.yaml';
const reading = readInstallation(readFileSync(file, 'utf8'), file);
if (!reading.ok) throw new Error(`${file} cannot be read`);

/** The bakery, compiled once. */
export const bakery = compile(reading.installation);
const usual = initialConditions(reading.installation);

/** A run of the bakery in which these conditions differ from its everyday. */
export function runOf(conditions: Conditions = {}): Timeline {
  return run(bakery, { ...usual, ...conditions });
}

/** The picture at a moment of such a run. */
export function pictured(time_s: number, conditions: Conditions = {}): Depiction {
  return depict(runOf(conditions), time_s, 'north-america');
}

/** Any conditions of the bakery, each with any of its options. */
export const anyConditions: fc.Arbitrary<Conditions> = fc.record(
  Object.fromEntries(
    Object.entries(reading.installation.conditions).map(([name, { options }]) => [name, fc.constantFrom(...options)]),
  ),
);

/** A moment that runs pass through: ordinary work, the fault, soon after, long after. */
export const anyMoment = fc.constantFrom(-0.5, 0, 0.005, 0.3, 60);
