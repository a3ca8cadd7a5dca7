import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import './drawnPlaces.ts';
import { depict, type Depiction } from '../../src/depiction/index.ts';
import { LEAST_A } from '../../src/depiction/flow.ts';
import { compile, initialConditions, readInstallation, type Conditions } from '../../src/installation/index.ts';
import { run, type Timeline } from '../../src/scenario/index.ts';

const file = 'lessons/places/pump.yaml';
const reading = readInstallation(readFileSync(file, 'utf8'), file);
if (!reading.ok) throw new Error(`${file} cannot be read`);
const pump = compile(reading.installation);
const usual = initialConditions(reading.installation);

const SOLID = { 'line touches the pump': 'solid' };
const UNGUARDED = { 'main rcd fitted': 'no', 'pump rcd fitted': 'no' };
const HANDS_ON = { 'gardener touches': 'the pump', 'gardener wears': 'bare feet' };

function runOf(conditions: Conditions = {}): Timeline {
  return run(pump, { ...usual, ...conditions });
}

function pictured(time_s: number, conditions: Conditions = {}): Depiction {
  return depict(runOf(conditions), time_s, 'iec');
}

function ids({ ribbons }: Depiction): readonly string[] {
  return ribbons.map(({ id }) => id);
}

const anyConditions: fc.Arbitrary<Conditions> = fc.record(
  Object.fromEntries(
    Object.entries(reading.installation.conditions).map(([name, { options }]) => [name, fc.constantFrom(...options)]),
  ),
);
const anyMoment = fc.constantFrom(-0.5, 0, 0.005, 0.3, 60);

test('what flows into a junction of the pump’s picture flows out of it', () => {
  fc.assert(
    fc.property(anyConditions, anyMoment, (conditions, time_s) => {
      const net = new Map<string, { sum: number; ids: string[] }>();
      for (const { id, route, inPhase_A } of depict(runOf(conditions), time_s, 'iec').ribbons)
        for (const [end, sign] of [
          [route[0], -1],
          [route.at(-1), 1],
        ] as const) {
          const key = `${Math.round(end?.x ?? 0)} ${Math.round(end?.y ?? 0)}`;
          const { sum, ids } = net.get(key) ?? { sum: 0, ids: [] };
          net.set(key, { sum: sum + sign * inPhase_A, ids: [...ids, id] });
        }
      // What is too small to be drawn may be missing at a junction; a handful of such ways can meet in one.
      for (const [key, { sum, ids }] of net)
        expect(Math.abs(sum), `${key}: ${ids.join(', ')}`).toBeLessThan(4 * LEAST_A);
    }),
    { numRuns: 150, seed: 41 },
  );
});

test('a solid fault of the pump goes home through its rod and the soil, and by no metal', () => {
  const picture = pictured(0.005, SOLID);
  expect(ids(picture)).toEqual(
    expect.arrayContaining([
      'pump cable.protective',
      'board.earth bar – electrode lead',
      'dry soil',
      'rod',
      'soil, transformer earth to rod',
      'transformer earth',
      'transformer.neutral – transformer earth',
    ]),
  );
  expect(ids(picture)).not.toContain('neutral joined to the earth bar');
  const rod = picture.ribbons.find(({ id }) => id === 'rod')?.amperes ?? 0;
  const line = picture.ribbons.find(({ id }) => id === 'line touches the pump')?.amperes ?? 0;
  expect(rod / line).toBeCloseTo(1, 2);
});

test('without residual devices the soil keeps carrying the fault and the breaker stays shut', () => {
  expect(ids(pictured(60, { ...SOLID, ...UNGUARDED }))).toContain('rod');
  expect(ids(pictured(60, SOLID))).not.toContain('rod');
});

test('neutral joined to the earth bar sends working current through the rod', () => {
  const picture = pictured(-0.5, { 'neutral joined to the earth bar': 'yes' });
  expect(ids(picture)).toEqual(expect.arrayContaining(['neutral joined to the earth bar', 'rod', 'transformer earth']));
  expect(picture.parts.map(({ id }) => id)).toContain('board, linked');
});

test('a bare-footed hand on the pump carries the fault where its protective conductor is open', () => {
  const picture = pictured(0.005, { ...SOLID, ...UNGUARDED, ...HANDS_ON, 'pump without protective conductor': 'yes' });
  expect(ids(picture)).toEqual(expect.arrayContaining(['gardener.right hand', 'gardener.feet', 'wellhead']));
  expect(ids(picture)).not.toContain('pump cable.protective');
  expect(picture.conductors.find(({ id }) => id === 'pump cable.protective')?.broken).toBeDefined();
});

test('dry soil shows round the rod, in the bed and in the well', () => {
  const seen = pictured(-0.5, { 'soil dried out': 'yes' }).parts.map(({ id }) => id);
  expect(seen).toEqual(expect.arrayContaining(['rod, dry', 'bed, dry', 'well, dry']));
  expect(pictured(-0.5).parts.map(({ id }) => id)).not.toContain('rod, dry');
});

test('water runs and the impeller turns only while the pump is running', () => {
  const shown = (conditions: Conditions) =>
    pictured(-0.5, conditions).parts.map(({ id, opacity, turning }) => [
      id,
      id === 'trough, lit' ? opacity > 0.5 : turning,
    ]);
  expect(shown({})).toEqual(
    expect.arrayContaining([
      ['trough, lit', true],
      ['pump impeller', true],
    ]),
  );
  expect(shown({ 'pump running': 'no' })).toEqual(
    expect.arrayContaining([
      ['trough, lit', false],
      ['pump impeller', false],
    ]),
  );
});
