import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import './drawnPlaces.ts';
import layout from '../../assets/places/flat/layout.json';
import routes from '../../assets/places/flat/routes.json';
import wiring from '../../assets/places/flat/wiring.json';
import { depict, type Depiction } from '../../src/depiction/index.ts';
import { LEAST_A } from '../../src/depiction/flow.ts';
import { placeOf } from '../../src/depiction/place.ts';
import { abs, phasor } from '../../src/electrics/index.ts';
import { compile, initialConditions, readInstallation, type Conditions } from '../../src/installation/index.ts';
import { at, run, type Timeline } from '../../src/scenario/index.ts';

const file = 'lessons/places/flat.yaml';
const reading = readInstallation(readFileSync(file, 'utf8'), file);
if (!reading.ok) throw new Error(`${file} cannot be read`);
const flat = compile(reading.installation);
const usual = initialConditions(reading.installation);

const SOLID = { 'line touches the washing machine': 'solid' };

function runOf(conditions: Conditions = {}): Timeline {
  return run(flat, { ...usual, ...conditions });
}

function pictured(time_s: number, conditions: Conditions = {}): Depiction {
  return depict(runOf(conditions), time_s, 'iec');
}

function kindsOf({ ribbons }: Depiction): Readonly<Record<string, string>> {
  return Object.fromEntries(ribbons.map(({ id, kind }) => [id, kind]));
}

const anyConditions: fc.Arbitrary<Conditions> = fc.record(
  Object.fromEntries(
    Object.entries(reading.installation.conditions).map(([name, { options }]) => [name, fc.constantFrom(...options)]),
  ),
);
const anyMoment = fc.constantFrom(-0.5, 0, 0.005, 0.3, 60);

test('every way that current can take in the flat is drawn, and nothing else is', () => {
  const drawn = new Set(placeOf('flat')?.stretches.both.flatMap(({ of }) => of));
  const known = new Set(flat.branches.map(({ name }) => name));
  expect([...drawn].filter((name) => !known.has(name))).toEqual([]);
  const missing = flat.branches
    .filter(({ name, role }) => !drawn.has(name) && role !== 'insulation')
    .map(({ name }) => name);
  // A join between two drawn things carries what they carry.
  expect(missing.filter((name) => !name.includes(' – '))).toEqual([]);
});

test('what flows into a junction of the flat flows out of it', () => {
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
      for (const [key, { sum, ids }] of net)
        expect(Math.abs(sum), `${key}: ${ids.join(', ')}`).toBeLessThan(4 * LEAST_A);
    }),
    { numRuns: 80, seed: 31 },
  );
});

test('every ampere in the picture of the flat is the solution’s', () => {
  fc.assert(
    fc.property(anyConditions, anyMoment, (conditions, time_s) => {
      const timeline = runOf(conditions);
      const { solution } = at(timeline, time_s);
      for (const { id, branches, amperes } of depict(timeline, time_s, 'iec').ribbons) {
        if (branches.length === 0) continue; // soil between electrodes: the junctions above check it
        const sum = branches
          .map((name) => phasor(solution.amperes, flat.branch(name)))
          .reduce((a, b) => ({ re: a.re + b.re, im: a.im + b.im }));
        expect(amperes / abs(sum), id).toBeCloseTo(1, 9);
      }
    }),
    { numRuns: 30, seed: 32 },
  );
});

test('a solid fault in the washing machine comes home on the protective conductor, the split and the PEN', () => {
  expect(kindsOf(pictured(0.005, { ...SOLID, 'rcd fitted': 'no' }))).toMatchObject({
    'washer cable.line': 'fault',
    'washer cable.protective': 'fault',
    'PEN split': 'fault',
    'service cable.PEN': 'fault',
    'street main.PEN': 'fault',
  });
});

test('with the PEN lost in the street the gas pipe carries the street’s neutral current through soil to the substation', () => {
  const kinds = kindsOf(pictured(-0.5, { 'PEN lost in the street': 'yes' }));
  expect(kinds).toMatchObject({ 'gas pipe': 'stray', 'substation earth': 'stray', neighbours: 'load' });
  expect(kinds['street main.PEN']).toBeUndefined();
});

test('a clamp that is off the gas pipe is seen beside it', () => {
  const seen = pictured(-0.5, { 'gas pipe not bonded': 'yes' }).conductors.map(({ id }) => id);
  expect(seen).toContain('wire end, gas pipe not bonded');
  expect(seen).not.toContain('main earthing terminal – gas pipe.bond');
});

test('every route of the flat is used, every condition that it names exists, every part has its plate and its target', () => {
  const used = new Set(wiring.pieces.map((piece) => ('route' in piece ? piece.route : piece.id)));
  expect(Object.keys(routes.routes).filter((key) => !used.has(key))).toEqual([]);
  const { conditions, parts } = flat.installation;
  for (const condition of Object.values(wiring.offers)) expect(Object.keys(conditions)).toContain(condition);
  for (const part of Object.keys(parts)) {
    expect(Object.keys(layout.labels), part).toContain(part);
    expect(Object.keys(layout.targets), part).toContain(part);
  }
});
