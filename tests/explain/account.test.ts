import { describe, expect, test } from 'vitest';
import {
  account,
  advice,
  conditionLabel,
  conditionSentence,
  label,
  name,
  optionLabel,
  say,
  telling,
  whatIsTheMatter,
} from '../../src/explain/index.ts';
import { run } from '../../src/scenario/index.ts';
import { built } from '../installation/places.ts';
import { bakery, runBakery } from '../scenario/bakery.ts';
import { manyRuns } from './walk.ts';

const VOCABULARIES = ['north-america', 'iec'] as const;
const FAULT = { 'line touches the case': 'solid' };
const TOUCH = { 'baker touches': 'the case', 'baker wears': 'wet shoes' };

describe.each(VOCABULARIES)('told in the words of %s', (vocabulary) => {
  const runs = manyRuns(250);
  const told = runs.map((timeline) => {
    const { headline, why, story, ledger, cautions } = account(timeline, vocabulary);
    const ways = ledger?.ways.flatMap(({ text, hops }) => [text, ...hops]) ?? [];
    const sentences = [headline, ...why, ...story.map(({ text }) => text), ...cautions];
    return { timeline, headline, why, story, ways, sentences };
  });

  test('no sentence has a gap, a number that is none, or two blanks', () => {
    for (const { sentences, ways } of told)
      for (const sentence of [...sentences, ...ways])
        expect(sentence).not.toMatch(/undefined|null|NaN|∞|\[object|[{}]|\s\s|^\s|\s$| [.,:;]|\.\./);
  });

  test('every sentence ends, begins large, and the outcome fits one big line', () => {
    for (const { headline, why, story } of told) {
      expect(headline).toMatch(/^\p{Lu}.{9,119}[^.]$/u);
      for (const sentence of [...why, ...story.map(({ text }) => text)]) expect(sentence).toMatch(/^(\p{Lu}|\d).*\.$/u);
    }
  });

  test('why takes one to five sentences', () => {
    for (const { why, headline } of told) {
      expect(why.length, headline).toBeGreaterThan(0);
      expect(why.length, headline).toBeLessThan(6);
    }
  });

  test('the headline names an opened device only if one opened', () => {
    for (const { timeline, headline } of told) {
      const opened = timeline.intervals.flatMap(({ because }) =>
        because.kind === 'device-operated' ? [because.device] : [],
      );
      const first = opened[0];
      if (first === undefined) expect(headline).not.toMatch(/ opens (in|only)/);
      else expect(headline).toContain(name(first, vocabulary));
    }
  });

  test('no word of the other trade slips in', () => {
    const foreign =
      vocabulary === 'iec'
        ? /GFCI|hot wire|third wire|ground rod|bonding jumper|service panel/i
        : /\bRCD|earth rod|PEN\b|circuit-breaker|protective conductor|distribution board/;
    for (const { sentences, ways } of told)
      for (const sentence of [...sentences, ...ways]) expect(sentence).not.toMatch(foreign);
  });

  test('advice is whole sentences too', () => {
    for (const timeline of runs.slice(0, 60))
      for (const { text } of advice(timeline, vocabulary)) expect(text).toMatch(/^\p{Lu}[^{}]*\.$/u);
  });

  test('every condition and option of the bakery has a sentence and a label of its own', () => {
    for (const [condition, made] of Object.entries(bakery.installation.conditions)) {
      const { options } = made;
      const sentences = options.map((option) => conditionSentence(condition, option, vocabulary, made));
      expect(new Set(sentences).size).toBe(options.length);
      expect(conditionLabel(condition, vocabulary, made)).toMatch(/^\p{Lu}/u);
      for (const option of options) expect(optionLabel(option, vocabulary)).not.toBe('');
    }
    for (const part of Object.keys(bakery.installation.parts)) expect(label(part, vocabulary)).toMatch(/^\p{Lu}/u);
  });
});

const headlines: readonly (readonly [string, Readonly<Record<string, string>>, RegExp, RegExp])[] = [
  [
    'a bolted fault with everything right',
    FAULT,
    /^The mixer’s breaker opens in 1\d\.?\d* ms$/,
    /^The mixer’s circuit-breaker opens in/,
  ],
  [
    'a rod of its own',
    { ...FAULT, 'protective conductor to its own rod': 'yes' },
    /^Nothing opens, and the mixer’s case stays at 1\d\d V$/,
    /^Nothing opens/,
  ],
  [
    'a missing third wire and a hand',
    { ...FAULT, ...TOUCH, 'protective conductor open': 'yes' },
    /^Nothing opens, and the baker may be held by \d\d\.?\d* mA$/,
    /the baker may be held/,
  ],
  [
    'a jammed breaker',
    { ...FAULT, 'breaker jammed': 'yes' },
    /^The main breaker opens only after/,
    /^The main circuit-breaker opens only after/,
  ],
  [
    'an open service neutral',
    { 'service neutral open': 'yes' },
    /^One leg gets 1[34]\d V, the other \d\d(\.\d)? V$/,
    /^One half of the supply gets/,
  ],
  [
    'a linked neutral',
    { 'neutral linked to the case': 'yes' },
    /^No fault, and yet \d\.?\d* A flows where none belongs$/,
    /^No fault, and yet/,
  ],
  [
    'a linked neutral and a GFCI',
    { 'neutral linked to the case': 'yes', 'gfci fitted': 'yes' },
    /^The GFCI opens in 25 ms, with no fault at all$/,
    /^The RCD opens in/,
  ],
  [
    'reversed and linked wires',
    { 'line and neutral reversed': 'yes', 'neutral linked to the case': 'yes' },
    /the wiring itself is a short circuit$/,
    /short circuit$/,
  ],
  [
    'a leak of 100 Ω',
    { 'line touches the case': '100 ohm' },
    /^Nothing opens: 1\.1\d A comes home unnoticed$/,
    /comes home unnoticed$/,
  ],
  [
    'a bonding jumper that nobody misses yet',
    { 'bonding jumper missing': 'yes' },
    /^Nothing shows yet$/,
    /^Nothing shows yet$/,
  ],
  ['nothing the matter', {}, /^Everything is as it should be$/, /^Everything is as it should be$/],
];

test.each(headlines)('%s in one sentence', (_, conditions, american, iec) => {
  const timeline = runBakery(conditions);
  const plain = (text: string) => text.replaceAll('\u00a0', ' ');
  expect(plain(account(timeline, 'north-america').headline)).toMatch(american);
  expect(plain(account(timeline, 'iec').headline)).toMatch(iec);
});

test('both vocabularies tell the same findings with the same figures', () => {
  const timeline = runBakery({ ...FAULT, ...TOUCH, 'protective conductor to its own rod': 'yes' });
  const [american, iec] = VOCABULARIES.map((vocabulary) => account(timeline, vocabulary).story);
  expect(american?.map(({ finding }) => finding)).toEqual(iec?.map(({ finding }) => finding));
  const figures = (text = '') => text.match(/\d[\d.]*/g) ?? [];
  american?.forEach(({ text }, index) => expect(figures(text)).toEqual(figures(iec?.[index]?.text)));
});

test('who was shocked is told to see a doctor, and the cautions always stand there', () => {
  const shock = say('caution.shock', 'iec');
  expect(account(runBakery({ ...FAULT, ...TOUCH, 'protective conductor open': 'yes' }), 'iec').cautions).toContain(
    shock,
  );
  const calm = account(runBakery(), 'iec').cautions;
  expect(calm).not.toContain(shock);
  expect(calm).toContain(say('caution.measure', 'iec'));
});

test('the ledger told is that of the fault, where there is one', () => {
  const timeline = runBakery(FAULT);
  expect(telling(timeline)).toBe(1);
  expect(account(timeline, 'iec').ledger?.of).toBe('fault');
  expect(account(timeline, 'iec', 0).ledger?.of).toBe('load');
});

test('what is the matter lists defects, not loads and people', () => {
  const { build, conditions } = runBakery({ ...FAULT, ...TOUCH, 'oven running': 'no' });
  expect(whatIsTheMatter(build.installation, conditions, 'north-america')).toEqual([
    'Hot wire touches the mixer’s case',
  ]);
});

test('a name the catalogue does not have is shown as its file writes it', () => {
  expect(name('winch', 'iec')).toBe('winch');
  expect(conditionSentence('rope frayed', 'yes', 'iec', undefined)).toBe('Rope frayed');
  expect(conditionSentence('rope frayed', 'badly', 'iec', undefined)).toBe('Rope frayed: badly');
});

test('who lets steel carry a fault home is told that it opposes more than is reckoned', () => {
  const text = (core: string) => `place: A steel run
region: iec
parts:
  supply: { kind: source, emf_V: 230 }
  run: { kind: cable, length_m: 20, cores: { line: 2.5 mm² Cu, ${core} } }
  fault: { kind: impedance, between: [run.line.load, run.armour.load], resistance_ohm: 0, as: fault }
joins:
  - [supply.plus, run.line.supply]
  - [supply.minus, run.armour.supply]
`;
  const told = (core: string) => account(run(built(text(core)), {}), 'iec').cautions;
  expect(told('armour: SWA 2.5 mm² 3-core')).toContain(say('caution.steel', 'iec'));
  expect(told('armour: AWA 95 mm²')).not.toContain(say('caution.steel', 'iec'));
});
