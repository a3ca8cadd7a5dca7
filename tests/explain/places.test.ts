import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { account, advice, whatIsTheMatter } from '../../src/explain/index.ts';
import {
  compile,
  initialConditions,
  readInstallation,
  type Build,
  type Conditions,
} from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';

const FOLDER = 'lessons/places';
const VOCABULARIES = ['north-america', 'iec'] as const;

function built(text: string): Build {
  const reading = readInstallation(text, 'place.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.diagnostics));
  return compile(reading.installation);
}

const places = readdirSync(FOLDER).map((file) => built(readFileSync(`${FOLDER}/${file}`, 'utf8')));

/** The place as it opens, and each single condition chosen otherwise. */
function singles({ installation }: Build): readonly Conditions[] {
  const initial = initialConditions(installation);
  return [
    initial,
    ...Object.entries(installation.conditions).flatMap(([name, { options }]) =>
      options
        .filter((option) => option !== initial[name])
        .map((option): Conditions => ({ ...initial, [name]: option })),
    ),
  ];
}

/** All that is told of a run. */
function told(build: Build, conditions: Conditions, vocabulary: (typeof VOCABULARIES)[number]): readonly string[] {
  const { headline, why, story, ledger } = account(run(build, conditions), vocabulary);
  const matter = whatIsTheMatter(build.installation, conditions, vocabulary);
  return [
    headline,
    ...why,
    ...matter,
    ...story.map(({ text }) => text),
    ...(ledger?.ways ?? []).map(({ text }) => text),
  ];
}

const runs = places.flatMap((build) => singles(build).map((conditions) => ({ build, conditions })));

test.each(VOCABULARIES)('no sentence of any place is a form left open, in the words of %s', (vocabulary) => {
  for (const { build, conditions } of runs)
    for (const text of told(build, conditions, vocabulary)) {
      expect(text).not.toMatch(/[{}]|undefined|NaN|\s\s|\bthe the\b|\brcd\b|\bgfci\b|s’s\b|: (yes|no)$/);
      expect(text).toMatch(/^[\p{Lu}\p{N}]/u);
    }
});

test('how a place is built is not the matter with it', () => {
  for (const { installation } of places)
    expect(whatIsTheMatter(installation, initialConditions(installation), 'iec')).toEqual([]);
  const pump = places.find(({ installation }) => installation.place === 'The pump');
  if (pump === undefined) throw new Error('there is a pump');
  const without = { ...initialConditions(pump.installation), 'pump rcd fitted': 'no' };
  expect(whatIsTheMatter(pump.installation, without, 'iec')).toEqual(['No pump RCD fitted']);
  expect(whatIsTheMatter(pump.installation, without, 'north-america')).toEqual(['No pump residual device fitted']);
});

test('a fault is told by what it touches, whatever its file calls it', () => {
  const { installation } = built(`place: A shed
region: iec
parts:
  supply: { kind: source, emf_V: 230 }
  saw: { kind: appliance, power_W: 1000, voltage_V: 230 }
joins:
  - [supply.minus, earth]
  - [supply.plus, saw.line]
  - [supply.minus, saw.neutral]
conditions:
  line touches the case: { kind: insulation-fault, between: [saw.line, saw.case], resistance_ohm: { bad: 0.01, poor: 2200 } }
`);
  const matter = (option: string) => whatIsTheMatter(installation, { 'line touches the case': option }, 'iec')[0];
  expect(matter('bad')).toBe('Line conductor touches the saw’s case');
  expect(matter('poor')?.replaceAll('\u00a0', ' ')).toBe('Line conductor touches the saw’s case through 2.2 kΩ');
});

test('nobody is told to have operated who did not', () => {
  for (const { build, conditions } of runs) {
    const timeline = run(build, conditions);
    const opened = timeline.intervals.flatMap(({ because }) =>
      because.kind === 'device-operated' ? [because.device] : [],
    );
    const said = account(timeline, 'iec').story.flatMap(({ finding }) =>
      finding.kind === 'device-operated' ? [finding.device] : [],
    );
    expect(said).toEqual(opened);
  }
});

/** What is told of a place under these conditions. */
function story(place: string, chosen: Conditions): string {
  const build = places.find(({ installation }) => installation.place === place);
  if (build === undefined) throw new Error(`there is no ${place}`);
  const conditions = { ...initialConditions(build.installation), ...chosen };
  return told(build, conditions, build.installation.region).join('\n').replaceAll('\u00a0', ' ');
}

// IEC 60364-4-41:2005 411.6.1: a first fault on an unearthed supply closes no circuit.
test('a first fault on a supply that nothing earths is not put down to a neutral', () => {
  for (const text of [
    story('The clinic', { 'first fault in the lamp': 'solid' }),
    story('The stall', { 'line touches the fryer': 'solid' }),
    story('The stall', { 'neutral touches the frame': 'solid' }),
  ]) {
    expect(text).toMatch(/Nothing ties this supply to the/);
    expect(text).not.toMatch(/neutral’s own volts|takes on the volts/);
  }
});

test('a fault behind a transformer of the place is driven by its volts and held to their time', () => {
  const text = story('The office', { 'line touches the copier': 'solid' });
  expect(text).toMatch(/as much as 120 V drives/);
  // IEC 60364-4-41:2005 table 41.1, TN: 0.8 s to 120 V.
  expect(text).toMatch(/inside the 800 ms .* at 120 V/);
});

test('what a transformer takes is no load beside the loads behind it, and is not added to them', () => {
  expect(story('The office', {})).toMatch(/for the copier \(11\.4 A\) and the heater \(12\.2 A\)\./);
  expect(story('The clinic', {})).toMatch(/for the lamp \(871 mA\) and the pump \(523 mA\)\./);
  const clinic = places.find(({ installation }) => installation.place === 'The clinic');
  if (clinic === undefined) throw new Error('there is a clinic');
  const { ledger } = account(run(clinic, initialConditions(clinic.installation)), 'iec');
  // 200 W and 120 W at 230 V: 1.39 A.
  expect(ledger?.total_A).toBeCloseTo(320 / 230, 1);
});

test('a monitor that warns is not told as nothing that shows', () => {
  expect(story('The clinic', { 'secondary earthed': 'yes' })).toMatch(/^No fault, and yet the monitor warns\n/);
});

test('current in a gas pipe is not told as current in a water pipe', () => {
  expect(story('The flat', {})).toMatch(/over the gas pipe/);
  expect(story('The flat', {})).not.toMatch(/water pipe/i);
});

test('a neutral that is earthed twice by its kind is no defect that a repair has to end; a lost one is mended by its being whole', () => {
  const flat = places.find(({ installation }) => installation.place === 'The flat');
  if (flat === undefined) throw new Error('there is a flat');
  const advised = (chosen: Conditions) =>
    advice(run(flat, { ...initialConditions(flat.installation), ...chosen }), 'iec').map(({ text }) => text);
  expect(advised({ 'rcd fitted': 'no' })).toEqual([]);
  expect(advised({ 'PEN lost in the street': 'yes' }).join(' ')).toMatch(
    /This change alone would have made it safe: PEN of the street main whole/,
  );
});
