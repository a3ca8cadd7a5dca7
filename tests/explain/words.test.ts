import { describe, expect, test } from 'vitest';
import { capital, list, lowerCase, prepareWords, say, term, termKeys } from '../../src/explain/index.ts';
import { isWordKey } from '../../src/explain/say.ts';
import { CATALOGUE } from '../../src/explain/words/catalogue.ts';

const VOCABULARIES = ['north-america', 'iec'] as const;
const KEYS = Object.keys(CATALOGUE).filter(isWordKey);

/** Something for every value a message may ask for: a word, and a count where it counts. */
function anything(message: string): Record<string, string | number> {
  const asked = [...message.matchAll(/\{(\w+)(, plural)?/g)].map(([, name = '', counts]) => [
    name,
    counts ? 2 : 'word',
  ]);
  const terms = new Set(termKeys());
  return Object.fromEntries(asked.filter(([name]) => !terms.has(String(name))));
}

describe.each(VOCABULARIES)('in the words of %s', (vocabulary) => {
  test('every message can be said, whole and with single blanks', () => {
    prepareWords();
    for (const key of KEYS) {
      const text = say(key, vocabulary, anything(CATALOGUE[key]));
      expect(text, key).not.toMatch(/[{}]|undefined|\s\s|^\s|\s$| [.,:;]/);
      expect(text.length, key).toBeGreaterThan(0);
    }
  });

  test('a value that is missing is an error, not a gap', () => {
    expect(() => say('story.fault', vocabulary, { sentence: 'x' })).toThrow(/amperes/);
  });
});

test('the same fact is told in the words of each trade', () => {
  expect(say('chip.protective', 'north-america')).toBe('Third wire');
  expect(say('chip.protective', 'iec')).toBe('Protective conductor');
  expect(say('part.gfci', 'north-america')).toBe('GFCI');
  expect(say('part.gfci', 'iec')).toBe('RCD');
  expect(say('part.panel', 'north-america')).toBe('service panel');
  expect(say('part.panel', 'iec')).toBe('distribution board');
});

test('no message writes out a word that belongs to one trade only', () => {
  const own =
    /\b(GFCI|RCD|PEN|hot wire|third wire|protective conductor|ground rod|earth rod|consumer unit|circuit-breaker)\b/i;
  // Sources are quoted in the words they use themselves.
  const ours = KEYS.filter((key) => !key.startsWith('about.source.'));
  for (const key of ours) expect(CATALOGUE[key], key).not.toMatch(own);
});

test('a trade word that does not exist is refused by name', () => {
  expect(term('Rod', 'iec')).toBe('Earth rod');
  expect(() => term('rodd', 'iec')).toThrow(/rodd/);
});

test('lists and capitals read as a sentence does', () => {
  expect(list(['the mixer'])).toBe('the mixer');
  expect(list(['the mixer', 'the oven', 'the lamps'])).toBe('the mixer, the oven and the lamps');
  expect(list([])).toBe('');
  expect(capital('third wire whole')).toBe('Third wire whole');
  expect(lowerCase('Third wire whole')).toBe('third wire whole');
  expect(lowerCase('GFCI fitted')).toBe('GFCI fitted');
});
