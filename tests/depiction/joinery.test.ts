import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import './drawnPlaces.ts';
import { depict, type Depiction } from '../../src/depiction/index.ts';
import { LEAST_A } from '../../src/depiction/flow.ts';
import { abs, phasor } from '../../src/electrics/index.ts';
import { compile, initialConditions, readInstallation, type Conditions } from '../../src/installation/index.ts';
import { at, run, type Timeline } from '../../src/scenario/index.ts';

const file = 'lessons/places/joinery.yaml';
const reading = readInstallation(readFileSync(file, 'utf8'), file);
if (!reading.ok) throw new Error(`${file} cannot be read`);
const joinery = compile(reading.installation);
const usual = initialConditions(reading.installation);

const SOLID = { 'line touches the saw': 'solid' };
const OLD = { 'feeder without protective conductor': 'yes', 'neutral joined to earth in the workshop': 'yes' };

function runOf(conditions: Conditions = {}): Timeline {
  return run(joinery, { ...usual, ...conditions });
}

function pictured(time_s: number, conditions: Conditions = {}): Depiction {
  return depict(runOf(conditions), time_s, 'north-america');
}

const anyConditions: fc.Arbitrary<Conditions> = fc.record(
  Object.fromEntries(
    Object.entries(reading.installation.conditions).map(([name, { options }]) => [name, fc.constantFrom(...options)]),
  ),
);
const anyMoment = fc.constantFrom(-0.5, 0, 0.005, 0.3, 60);

test('what flows into a junction of the joinery flows out of it', () => {
  fc.assert(
    fc.property(anyConditions, anyMoment, (conditions, time_s) => {
      const net = new Map<string, { sum: number; ids: string[] }>();
      for (const { id, route, inPhase_A } of depict(runOf(conditions), time_s, 'north-america').ribbons)
        for (const [end, sign] of [
          [route[0], -1],
          [route.at(-1), 1],
        ] as const) {
          const key = `${Math.round(end?.x ?? 0)} ${Math.round(end?.y ?? 0)}`;
          const { sum, ids } = net.get(key) ?? { sum: 0, ids: [] };
          net.set(key, { sum: sum + sign * inPhase_A, ids: [...ids, id] });
        }
      for (const [key, { sum, ids }] of net)
        expect(Math.abs(sum), `${key}: ${ids.join(', ')}`).toBeLessThan(4 * LEAST_A);
    }),
    { numRuns: 60, seed: 21 },
  );
});

test('every ampere in the picture of the joinery is the solution’s', () => {
  fc.assert(
    fc.property(anyConditions, anyMoment, (conditions, time_s) => {
      const timeline = runOf(conditions);
      const { solution } = at(timeline, time_s);
      for (const { id, branches, amperes } of depict(timeline, time_s, 'north-america').ribbons) {
        if (branches.length === 0) continue; // soil between electrodes: the junctions above check it
        const sum = branches
          .map((name) => phasor(solution.amperes, joinery.branch(name)))
          .reduce((a, b) => ({ re: a.re + b.re, im: a.im + b.im }));
        expect(amperes / abs(sum), id).toBeCloseTo(1, 9);
      }
    }),
    { numRuns: 30, seed: 22 },
  );
});

test('a solid fault in the saw comes home on the protective conductor, the bonding jumper and the utility’s neutral', () => {
  const { ribbons } = pictured(0.005, SOLID);
  const kinds = Object.fromEntries(ribbons.map(({ id, kind }) => [id, kind]));
  expect(kinds).toMatchObject({
    'saw run.line': 'fault',
    'saw run.protective': 'fault',
    'feeder.protective': 'fault',
    'bonding jumper': 'fault',
    'service drop.neutral': 'fault',
    'extractor run.a': 'load',
    'workshop rod': 'stray',
  });
});

test('over the old feeder of three wires the fault comes home on the feeder’s neutral', () => {
  const picture = pictured(0.005, { ...SOLID, ...OLD });
  const kinds = Object.fromEntries(picture.ribbons.map(({ id, kind }) => [id, kind]));
  expect(kinds['feeder.neutral']).toBe('fault');
  expect(kinds['feeder.protective']).toBeUndefined();
  expect(picture.conductors.map(({ id }) => id)).not.toContain('feeder.protective');
  expect(picture.parts.map(({ id }) => id)).toContain('workshop link');
});

test('the three lines of the joinery wear three colours', () => {
  const worn = new Map(pictured(-0.5).conductors.map(({ id, insulation }) => [id, insulation]));
  expect(['feeder.a', 'feeder.b', 'feeder.c'].map((id) => worn.get(id))).toEqual(['line', 'line-b', 'line-c']);
});
