import { initialConditions, type Condition, type Conditions, type Installation } from '../installation/index.ts';
import { madeSentence, targetOf, throughOhms } from './made.ts';
import { capital, isWordKey, say, tradeWords, type WordValues } from './say.ts';
import type { Vocabulary } from './vocabulary.ts';

/** What a part is called inside a sentence, without an article: the catalogue's word, or the name its file gives it. */
export function name(part: string, vocabulary: Vocabulary): string {
  return lookUp(`part.${part}`, vocabulary) ?? tradeWords(part, vocabulary);
}

/** What a part is called on a plate or a button. */
export function label(part: string, vocabulary: Vocabulary): string {
  return capital(name(part, vocabulary));
}

/** Somebody inside a sentence and at its head: "the baker", but Ada by her own name. */
export function somebody(person: string, vocabulary: Vocabulary): WordValues {
  const called = name(person, vocabulary);
  const text = /^\p{Lu}\p{Ll}/u.test(called) ? called : `the ${called}`;
  return { person: text, Person: capital(text) };
}

/** What a thing has, by its owner: "mixer’s", "lamps’". */
export function possessive(owner: string): string {
  return owner.endsWith('s') ? `${owner}’` : `${owner}’s`;
}

/** A condition with its chosen option as one sentence without a full stop: "Third wire open at the outlet".
 *  @param made the condition itself: what the catalogue says of a name is said only where it does what it says there */
export function conditionSentence(
  condition: string,
  option: string,
  vocabulary: Vocabulary,
  made: Condition | undefined,
): string {
  const known = isKnown(condition, made);
  const exact = known ? lookUp(`condition.${condition}.${option}`, vocabulary) : undefined;
  const own = exact ?? (made === undefined ? undefined : madeSentence(made, option, vocabulary, name));
  if (own !== undefined) return own;
  const plain = conditionLabel(condition, vocabulary, made);
  return option === 'yes' ? plain : `${plain}: ${optionLabel(option, vocabulary, made)}`;
}

/** A condition's own name, where its options stand beside it. */
export function conditionLabel(condition: string, vocabulary: Vocabulary, made: Condition | undefined): string {
  const known = isKnown(condition, made) ? lookUp(`condition.${condition}`, vocabulary) : undefined;
  return known ?? capital(tradeWords(condition, vocabulary));
}

/** One option on a button. */
export function optionLabel(option: string, vocabulary: Vocabulary, made?: Condition): string {
  const ohms = made === undefined ? undefined : throughOhms(made, option);
  return (
    lookUp(`option.${option}`, vocabulary) ??
    (ohms === undefined ? tradeWords(option, vocabulary) : say('option.through', vocabulary, { ohms }))
  );
}

/** The conditions that are not as the place is built, as sentences, in the order of the file; a fault always. Loads and people
 *  are not defects. */
export function whatIsTheMatter(
  installation: Installation,
  conditions: Conditions,
  vocabulary: Vocabulary,
): readonly string[] {
  const initial = initialConditions(installation);
  return Object.entries(installation.conditions).flatMap(([condition, made]) => {
    const { group, options } = made;
    const usual = group === 'fault' ? options[0] : initial[condition];
    const chosen = conditions[condition] ?? options[0];
    const defect = group === 'fault' || group === 'path' || group === 'device';
    // Set right what was entered wrong, and nothing is the matter; taken out what was fitted, it is.
    const wrong = chosen !== usual && (made.kind === 'fitted' || chosen !== options[0]);
    return defect && chosen !== undefined && wrong ? [conditionSentence(condition, chosen, vocabulary, made)] : [];
  });
}

/** The word in the catalogue, or undefined. */
export function lookUp(key: string, vocabulary: Vocabulary): string | undefined {
  return isWordKey(key) ? say(key, vocabulary) : undefined;
}

/** What the conditions the catalogue has sentences for do: their kind and what they act on. */
const DOES: Readonly<Record<string, string>> = {
  'line touches the case': 'insulation-fault mixer.line mixer.case',
  'protective conductor open': 'open mixer run.protective.load outlet.protective',
  'bonding jumper missing': 'open bonding jumper',
  'service neutral open': 'open drop.neutral',
  'line and neutral reversed': 'swap mixer run.line.load mixer run.neutral.load',
  'neutral linked to the case': 'link outlet.neutral outlet.protective',
  'protective conductor to its own rod': 'move outlet.protective own rod',
  'loose joint': 'loose mixer run.protective.load outlet.protective',
  'breaker oversized': 'setting mixer breaker',
  'breaker jammed': 'jammed mixer breaker',
  'gfci fitted': 'fitted gfci',
  'mixer running': 'running mixer',
  'oven running': 'running oven',
  'lamps on': 'running lamps',
  'baker touches': 'touching baker',
  'baker wears': 'footwear baker',
};

function isKnown(condition: string, made: Condition | undefined): boolean {
  return made !== undefined && DOES[condition] === [made.kind, ...targetOf(made)].join(' ');
}
