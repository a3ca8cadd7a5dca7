import { readdirSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { missingIn, placesDrawn } from '../../.ci/drawingCheck.mjs';
import { drawnPlaceNames, readDrawnPlace, sheetsOf, svgsIn } from '../../.ci/drawnPlaces.mjs';
import { depict } from '../../src/depiction/index.ts';
import { compile, readInstallation } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { installationFrom } from '../installation/places.ts';
import { pictured } from './pictured.ts';

/** The most that the drawings of one place may weigh as they are sent, bytes. */
const MOST_SENT = 150_000;

describe.each([...placesDrawn()])('the drawing of %s', (name, text) => {
  const place = readDrawnPlace(name);
  const build = compile(installationFrom(text));

  test('lacks nothing of its place, and names nothing that the place has not', () => {
    expect(missingIn(place, build)).toEqual([]);
  });

  test('weighs no more than may be sent at once', () => {
    const sent = gzipSync(JSON.stringify(sheetsOf(place))).length + gzipSync(JSON.stringify(place)).length;
    expect(sent).toBeGreaterThan(1000);
    expect(sent).toBeLessThan(MOST_SENT);
  });
});

test('what a drawing lacks is said by name', () => {
  const [name = '', text = ''] = [...placesDrawn()][0] ?? [];
  const { layout, routes, wiring } = readDrawnPlace(name);
  const id = 'main breaker.a';
  const lacking = {
    layout: { ...layout, labels: {}, groups: layout.groups.slice(1) },
    routes,
    wiring: { ...wiring, pieces: wiring.pieces.filter((piece) => piece.id !== id), offers: { mixer: 'moonlight' } },
  };
  const said = missingIn(lacking, compile(installationFrom(text)));
  expect(said).toContain(`wiring: draw the branch "${id}", or name it in "undrawn"`);
  expect(said).toContain('"moonlight" is no condition of the place');
  expect(said.join('\n')).toMatch(/needs a label and a target/);
  expect(said.join('\n')).toMatch(/stands in "sky", which is not among the groups/);
});

test('every drawing of a part or a place is used by some place', () => {
  const used = new Set(drawnPlaceNames().flatMap((name) => svgsIn(readDrawnPlace(name))));
  const there = ['parts', ...drawnPlaceNames().map((name) => `places/${name}`)].flatMap((folder) =>
    readdirSync(`assets/${folder}`)
      .filter((file) => file.endsWith('.svg'))
      .map((file) => `${folder}/${file}`),
  );
  expect(there.filter((file) => !used.has(file))).toEqual([]);
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
