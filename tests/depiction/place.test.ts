import { existsSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import layout from '../../assets/places/bakery/layout.json';
import routes from '../../assets/places/bakery/routes.json';
import wiring from '../../assets/places/bakery/wiring.json';
import { depict } from '../../src/depiction/index.ts';
import { placeOf, type Place } from '../../src/depiction/place.ts';
import { compile, readInstallation } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { bakery, pictured } from './pictured.ts';

const PLACE = drawn('bakery');

function drawn(name: string): Place {
  const place = placeOf(name);
  if (!place) throw new Error(`nobody has drawn ${name}`);
  return place;
}

/** Every file name in a piece of JSON. */
function svgsIn(json: unknown): readonly string[] {
  if (typeof json === 'string') return json.endsWith('.svg') ? [json] : [];
  return json !== null && typeof json === 'object' ? Object.values(json).flatMap(svgsIn) : [];
}

test('every branch that the drawing names exists in the bakery', () => {
  const known = new Set(bakery.branches.map(({ name }) => name));
  for (const { id, of } of PLACE.stretches.hand)
    for (const name of of) expect(known.has(name), `${id} carries ${name}`).toBe(true);
});

test('every way that current can take is drawn, or lies within something that is', () => {
  const shown = new Set(PLACE.stretches.hand.flatMap(({ of }) => of));
  const missing = bakery.branches
    .filter(({ name, role }) => !shown.has(name) && role !== 'insulation')
    .map(({ name }) => name);
  // A join between two drawn things carries what they carry.
  expect(missing.filter((name) => !name.includes(' – '))).toEqual([]);
});

test('every route in the file is used, and every route that is named is in the file', () => {
  const named = new Set(
    wiring.pieces.flatMap((piece) =>
      'routes' in piece ? piece.routes : [('route' in piece ? piece.route : undefined) ?? piece.id],
    ),
  );
  expect(Object.keys(routes.routes).filter((key) => !named.has(key))).toEqual([]);
  for (const posed of Object.values(routes.poses))
    expect(wiring.pieces.filter((piece) => 'posed' in piece && !(piece.id in posed)).map(({ id }) => id)).toEqual([]);
  for (const [route, changed] of Object.entries(routes.variants))
    for (const condition of Object.keys(changed)) {
      expect(condition in bakery.installation.conditions, condition).toBe(true);
      expect(
        wiring.pieces.some((piece) => 'variant' in piece && piece.variant === condition && piece.route === route),
        `${route}, ${condition}`,
      ).toBe(true);
    }
});

test('every drawing that is named is there, and every drawing that is there is used', () => {
  const named = new Set([...svgsIn(layout), ...svgsIn(wiring)]);
  for (const file of named) expect(existsSync(`assets/${file}`), file).toBe(true);
  const there = ['parts', 'places/bakery'].flatMap((folder) =>
    readdirSync(`assets/${folder}`)
      .filter((file) => file.endsWith('.svg'))
      .map((file) => `${folder}/${file}`),
  );
  expect(there.filter((file) => !named.has(file))).toEqual([]);
});

test('every condition that the drawing names exists, and every part has its plate and its target', () => {
  const conditions = Object.keys(bakery.installation.conditions);
  const named = [
    ...Object.values(wiring.offers),
    ...Object.values(wiring.appears),
    ...Object.values(wiring.overlays).flatMap((defects) => Object.values(defects)),
    ...PLACE.stretches.hand.flatMap(({ absent, present, breaks, loosens }) => [
      ...absent,
      ...present,
      ...Object.keys(breaks),
      ...Object.keys(loosens),
    ]),
  ];
  for (const condition of named) expect(conditions, condition).toContain(condition);
  const parts = Object.keys(bakery.installation.parts);
  // The runs to oven and lamps lie side by side under the roof; their ends can be pointed at.
  expect(parts.filter((part) => !(part in layout.labels) || !(part in layout.targets))).toEqual([
    'oven run',
    'lamp run',
  ]);
});

test('what is pressed offers a condition that belongs to it or its neighbours', () => {
  const offered = pictured(-0.5).hotspots.flatMap(({ id, condition }) =>
    condition === undefined ? [] : [[id, condition]],
  );
  expect(Object.fromEntries(offered)).toMatchObject({
    mixer: 'line touches the case',
    'bonding jumper': 'bonding jumper missing',
    gfci: 'gfci fitted',
  });
});

test('a place that nobody has drawn still has its words, its strip and its profile', () => {
  const text = `place: A bench
region: iec
parts:
  supply: { kind: source, emf_V: 230, resistance_ohm: 0.2 }
  load: { kind: impedance, resistance_ohm: 50 }
joins:
  - [supply.plus, load.a]
  - [supply.minus, load.b]
  - [supply.minus, earth]
`;
  const reading = readInstallation(text, 'bench.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.diagnostics));
  const picture = depict(run(compile(reading.installation), {}), 0, 'iec');
  expect(picture.ribbons).toEqual([]);
  expect(picture.strip.marks.length).toBeGreaterThan(0);
  expect(picture.announce).not.toBe('');
});
