import { expect, test } from 'vitest';
import { picturedPlace } from './pictured.ts';
import layout from '../../assets/places/flat/layout.json';
import routes from '../../assets/places/flat/routes.json';
import wiring from '../../assets/places/flat/wiring.json';
import { type Depiction } from '../../src/depiction/index.ts';
import { placeOf } from '../../src/depiction/place.ts';

const { build: flat, pictured } = picturedPlace('flat');

const SOLID = { 'line touches the washing machine': 'solid' };

function kindsOf({ ribbons }: Depiction): Readonly<Record<string, string>> {
  return Object.fromEntries(ribbons.map(({ id, kind }) => [id, kind]));
}

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
