import { aboveFloor_V, figure, name, quantity, say, term, type Vocabulary } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import { amperesThrough, branchesOf, opensAt, personIn, supply_V, worstZone } from './measure.ts';
import { instant, runWith } from './runs.ts';

/** What a lesson's prose may ask the solver, written `{{ amperes of own rod }}` or, under other conditions,
 *  `{{ amperes of mixer breaker | loose joint=no, oven running=no }}`. */
export const FACTS = [
  'amperes',
  'volts',
  'ohms',
  'supply',
  'loop',
  'rating',
  'multiple',
  'opening',
  'shock',
  'touch',
  'effect',
  'name',
  'word',
] as const;

/** One thing asked in prose. */
export interface Fact {
  readonly kind: (typeof FACTS)[number];
  readonly subject: string;
  readonly with: readonly string[];
}

/** One `{{ … }}` in a text and where it stands. */
export interface Asking {
  readonly start: number;
  readonly end: number;
  /** undefined if it is not written as one */
  readonly fact: Fact | undefined;
}

/** Every `{{ … }}` in a text. */
export function askings(text: string): readonly Asking[] {
  return [...text.matchAll(/\{\{([^{}]*)\}\}/g)].map((match) => ({
    start: match.index,
    end: match.index + match[0].length,
    fact: readFact(match[1] ?? ''),
  }));
}

function readFact(inner: string): Fact | undefined {
  const [asked = '', changes = ''] = inner.split('|');
  const [, written = '', subject = ''] = /^\s*(\w+) of (.*\S)\s*$/s.exec(asked) ?? [];
  const kind = FACTS.find((candidate) => candidate === written);
  if (kind === undefined) return undefined;
  return {
    kind,
    subject,
    with: changes
      .split(',')
      .map((change) => change.trim())
      .filter((change) => change !== ''),
  };
}

/** A text with every `{{ … }}` answered by the solver, under the conditions given and in one vocabulary.
 *  @throws RangeError for what the reader would have refused */
export function fill(build: Build, text: string, given: readonly string[], vocabulary: Vocabulary): string {
  let filled = '';
  let from = 0;
  for (const { start, end, fact } of askings(text)) {
    if (fact === undefined) throw new RangeError(`fill: ${text.slice(start, end)} asks nothing that is known`);
    filled += text.slice(from, start) + answer(build, fact, given, vocabulary);
    from = end;
  }
  return filled + text.slice(from);
}

function answer(
  build: Build,
  { kind, subject, with: changes }: Fact,
  given: readonly string[],
  vocabulary: Vocabulary,
): string {
  if (kind === 'name') return name(subject, vocabulary);
  if (kind === 'word') return term(subject, vocabulary);
  const timeline = runWith(build, [...given, ...changes]);
  const moment = instant(timeline);
  switch (kind) {
    case 'amperes':
      return quantity(amperesThrough(build, moment.solution, subject), 'A');
    case 'volts':
      return quantity(aboveFloor_V(build, moment.solution, subject), 'V');
    case 'ohms': {
      const { re, im } = moment.values.impedance;
      return quantity(Math.max(0, ...branchesOf(build, subject).map((b) => Math.hypot(re[b] ?? 0, im[b] ?? 0))), 'Ω');
    }
    case 'supply':
      return quantity(supply_V(build, moment), 'V');
    case 'loop':
      return quantity(supply_V(build, moment) / amperesThrough(build, moment.solution, subject), 'Ω');
    case 'rating': {
      const settings = build.devices.find((device) => device.name === subject)?.settings(timeline.conditions);
      return quantity(settings !== undefined && 'rating_A' in settings ? settings.rating_A : 0, 'A');
    }
    case 'multiple':
      return figure(moment.devices.find(({ device }) => device === subject)?.operation.multiple ?? 0);
    case 'opening': {
      const at_s = opensAt(timeline, subject);
      return at_s === Infinity ? say('fact.never', vocabulary) : quantity(at_s, 's');
    }
    case 'shock':
      return quantity(personIn(moment, subject).body_A, 'A');
    case 'touch':
      return quantity(personIn(moment, subject).touch_V, 'V');
    case 'effect':
      return say(`zone.${worstZone(timeline, subject)}`, vocabulary);
    default:
      return kind satisfies never;
  }
}
