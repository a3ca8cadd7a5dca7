import type { Conditions, Installation } from '../installation/index.ts';
import type { Vocabulary } from './vocabulary.ts';
import { capital, isWordKey, say } from './say.ts';

/** What a part is called inside a sentence, without an article: the catalogue's word, or the name its file gives it. */
export function name(part: string, vocabulary: Vocabulary): string {
  return lookUp(`part.${part}`, vocabulary) ?? part;
}

/** What a part is called on a plate or a button. */
export function label(part: string, vocabulary: Vocabulary): string {
  return capital(name(part, vocabulary));
}

/** A condition with its chosen option as one sentence without a full stop: "Third wire open at the outlet". */
export function conditionSentence(condition: string, option: string, vocabulary: Vocabulary): string {
  const exact = lookUp(`condition.${condition}.${option}`, vocabulary);
  if (exact !== undefined) return exact;
  const plain = lookUp(`condition.${condition}`, vocabulary) ?? capital(condition);
  return option === 'yes' ? plain : `${plain}: ${optionLabel(option, vocabulary)}`;
}

/** A condition's own name, where its options stand beside it. */
export function conditionLabel(condition: string, vocabulary: Vocabulary): string {
  return lookUp(`condition.${condition}`, vocabulary) ?? capital(condition);
}

/** One option on a button. */
export function optionLabel(option: string, vocabulary: Vocabulary): string {
  return lookUp(`option.${option}`, vocabulary) ?? option;
}

/** The conditions that are not as they should be, as sentences, in the order of the file. Loads and people are not defects. */
export function whatIsTheMatter(
  installation: Installation,
  conditions: Conditions,
  vocabulary: Vocabulary,
): readonly string[] {
  return Object.entries(installation.conditions).flatMap(([condition, { options, group }]) => {
    const chosen = conditions[condition] ?? options[0];
    const defect = group === 'fault' || group === 'path' || group === 'device';
    return defect && chosen !== undefined && chosen !== options[0]
      ? [conditionSentence(condition, chosen, vocabulary)]
      : [];
  });
}

/** The word in the catalogue, or undefined. */
export function lookUp(key: string, vocabulary: Vocabulary): string | undefined {
  return isWordKey(key) ? say(key, vocabulary) : undefined;
}
