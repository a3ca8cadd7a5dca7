import type { Vocabulary } from '../explain/index.ts';
import { initialConditions, type Conditions, type Installation } from '../installation/index.ts';

/** What a link says: a place, the conditions that differ from those it opens with, and the words of the trade; a lesson or the list of lessons, or the whole yard. */
export type Link =
  | { readonly kind: 'none' }
  | { readonly kind: 'yard' }
  | { readonly kind: 'lesson'; readonly lesson: string | null }
  | {
      readonly kind: 'place';
      readonly place: string;
      readonly conditions: Conditions;
      readonly vocabulary: Vocabulary | null;
    }
  | { readonly kind: 'broken'; readonly fault: LinkFault };

/** What is wrong with a link. `known` is what could stand there instead. */
export type LinkFault =
  | { readonly kind: 'place'; readonly said: string; readonly known: readonly string[] }
  | { readonly kind: 'lesson'; readonly said: string; readonly known: readonly string[] }
  | { readonly kind: 'condition'; readonly said: string; readonly known: readonly string[] }
  | { readonly kind: 'option'; readonly said: string; readonly condition: string; readonly known: readonly string[] }
  | { readonly kind: 'words'; readonly said: string; readonly known: readonly string[] }
  | { readonly kind: 'twice'; readonly said: string; readonly known: readonly string[] }
  | { readonly kind: 'letters'; readonly said: string; readonly known: readonly string[] };

const LESSON = 'lesson';
/** The fragment that leads to the whole yard. */
export const YARD_LINK = 'yard';

const WORDS = 'words';
const VOCABULARIES: readonly Vocabulary[] = ['north-america', 'iec'];

/** The fragment of an address for what is set here, without the number sign.
 *  @example `bakery/line_touches_the_case=1_ohm/words=iec` */
export function writeLink(
  place: string,
  installation: Installation,
  conditions: Conditions,
  vocabulary: Vocabulary,
): string {
  const initial = initialConditions(installation);
  const parts = [write(place)];
  for (const [name, { options }] of Object.entries(installation.conditions)) {
    const option = conditions[name] ?? options[0] ?? '';
    if (option !== (initial[name] ?? options[0])) parts.push(`${write(name)}=${write(option)}`);
  }
  if (vocabulary !== installation.region) parts.push(`${WORDS}=${vocabulary}`);
  return parts.join('/');
}

/** The fragment that leads to a lesson, or to the list of lessons. */
export function writeLessonLink(lesson: string | null): string {
  return lesson === null ? LESSON : `${LESSON}/${write(lesson)}`;
}

/** Reads a fragment; everything it names must exist.
 *  @param names of all places there are, which may be more than those that are here */
export function readLink(
  fragment: string,
  places: Readonly<Record<string, Installation>>,
  lessons: readonly string[],
  names: readonly string[] = Object.keys(places),
): Link {
  const text = fragment.replace(/^#/, '');
  if (text === '') return { kind: 'none' };
  if (text === YARD_LINK) return { kind: 'yard' };
  let words: readonly string[];
  try {
    words = text.split('/').map(read);
  } catch {
    return broken({ kind: 'letters', said: text, known: [] });
  }
  const [head = '', ...rest] = words;
  if (head === LESSON) {
    if (rest.length === 0) return { kind: 'lesson', lesson: null };
    const lesson = rest.join('/');
    return lessons.includes(lesson)
      ? { kind: 'lesson', lesson }
      : broken({ kind: 'lesson', said: lesson, known: lessons });
  }
  const installation = Object.hasOwn(places, head) ? places[head] : undefined;
  if (installation === undefined) return broken({ kind: 'place', said: head, known: names });
  return readPlace(head, installation, rest);
}

function readPlace(place: string, installation: Installation, assignments: readonly string[]): Link {
  const conditions: Record<string, string> = { ...initialConditions(installation) };
  const seen = new Set<string>();
  let vocabulary: Vocabulary | null = null;
  for (const assignment of assignments) {
    const [name = '', said] = split(assignment);
    if (seen.has(name)) return broken({ kind: 'twice', said: name, known: [] });
    seen.add(name);
    if (name === WORDS) {
      const found = VOCABULARIES.find((known) => known === said);
      if (found === undefined) return broken({ kind: 'words', said: said ?? '', known: VOCABULARIES });
      vocabulary = found;
      continue;
    }
    const condition = Object.hasOwn(installation.conditions, name) ? installation.conditions[name] : undefined;
    if (condition === undefined)
      return broken({ kind: 'condition', said: name, known: Object.keys(installation.conditions) });
    const option = said ?? condition.options[1] ?? '';
    if (!condition.options.includes(option))
      return broken({ kind: 'option', said: option, condition: name, known: condition.options });
    conditions[name] = option;
  }
  return { kind: 'place', place, conditions, vocabulary };
}

function broken(fault: LinkFault): Link {
  return { kind: 'broken', fault };
}

function split(assignment: string): readonly [string, string | undefined] {
  const sign = assignment.indexOf('=');
  return sign < 0 ? [assignment, undefined] : [assignment.slice(0, sign), assignment.slice(sign + 1)];
}

/** Blanks become low lines, so that a link can be read and survives mail; everything else that needs it is escaped. */
function write(text: string): string {
  return encodeURIComponent(text).replaceAll('_', '%5F').replaceAll('%20', '_');
}

function read(text: string): string {
  return decodeURIComponent(text.replaceAll('_', ' '));
}
