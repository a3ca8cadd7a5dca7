import { IntlMessageFormat } from 'intl-messageformat';
import type { Vocabulary } from './vocabulary.ts';
import { CATALOGUE, type WordKey } from './words/catalogue.ts';
import { IEC } from './words/iec.ts';
import { NORTH_AMERICA } from './words/northAmerica.ts';

/** What fills a message: words already worded, quantities already formatted, or a count for a plural. */
export type WordValues = Readonly<Record<string, string | number>>;

const TERMS: Readonly<Record<Vocabulary, WordValues>> = {
  'north-america': withCapitals(NORTH_AMERICA),
  iec: withCapitals(IEC),
};

const formats = new Map<string, IntlMessageFormat>();

/** One message in one vocabulary.
 *  @throws Error naming the message and the value, if a value it needs is missing
 *  @example say('chip.protective', 'iec') // "Protective conductor" */
export function say(key: WordKey, vocabulary: Vocabulary, values?: WordValues): string {
  return filled(CATALOGUE[key], vocabulary, values);
}

/** A message that is not in the catalogue, such as one that is fetched only when it is needed, filled in the same way.
 *  @throws Error naming the value, if one it needs is missing */
export function filled(message: string, vocabulary: Vocabulary, values?: WordValues): string {
  const terms = TERMS[vocabulary];
  const text = formatOf(message).format(values === undefined ? terms : { ...terms, ...values });
  return typeof text === 'string' ? text : String(text);
}

/** True if the catalogue holds this key; for names that come from files. */
export function isWordKey(key: string): key is WordKey {
  return Object.hasOwn(CATALOGUE, key);
}

/** A trade word on its own; with a capital key it has a capital: `rod`, `Rod`.
 *  @throws RangeError naming a word the vocabularies do not have */
export function term(key: string, vocabulary: Vocabulary): string {
  const word = Object.hasOwn(TERMS[vocabulary], key) ? TERMS[vocabulary][key] : undefined;
  if (word === undefined) throw new RangeError(`term: there is no trade word "${key}"`);
  return String(word);
}

/** The keys of all trade words. */
export function termKeys(): readonly string[] {
  return Object.keys(TERMS.iec);
}

/** Parses every message now, so that the first click need not: call it while nothing happens. */
export function prepareWords(): void {
  for (const message of Object.values(CATALOGUE)) formatOf(message);
}

/** "a", "a and b", "a, b and c". */
export function list(items: readonly string[]): string {
  const last = items[items.length - 1] ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

/** The same text with its first letter large. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The same text with its first letter small, unless the word is an abbreviation: for a label inside a sentence. */
export function lowerCase(text: string): string {
  return /^\p{Lu}{2}/u.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);
}

/** What a file calls things, with abbreviations as they are written and the words that differ between the trades put in. */
export function tradeWords(text: string, vocabulary: Vocabulary): string {
  return TRADE_WORDS.reduce(
    (said, [written, word]) =>
      said.replace(written, (found) => (word === '' ? found.toUpperCase() : term(word, vocabulary))),
    text,
  );
}

const TRADE_WORDS: readonly (readonly [RegExp, string])[] = [
  [/\b(pen|mcb|rcbo|afci|ups|cpc|egc)\b/gi, ''],
  [/\brcd\b/gi, 'residualDevice'],
  [/\bgfci\b/gi, 'residual'],
  [/(?<!circuit[- ])\bbreaker\b/gi, 'breaker'],
  [/\b(earth|ground) rod\b/gi, 'rod'],
  [/\bprotective conductor\b/gi, 'protective'],
];

function formatOf(message: string): IntlMessageFormat {
  let format = formats.get(message);
  if (format === undefined) {
    format = new IntlMessageFormat(message, 'en');
    formats.set(message, format);
  }
  return format;
}

function withCapitals(terms: object): WordValues {
  return Object.fromEntries(
    Object.entries(terms).flatMap(([key, word]) => [
      [key, String(word)],
      [capital(key), capital(String(word))],
    ]),
  );
}
