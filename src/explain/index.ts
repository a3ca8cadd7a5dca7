/** Facts of a run, where its current goes home, and both in the words of two vocabularies. */
export { account, advice, telling } from './account.ts';
export type { Account } from './account.ts';
export { story } from './story.ts';
export type { StoryLine } from './story.ts';
export type { Vocabulary } from './vocabulary.ts';
export { findings } from './findings.ts';
export type { Finding, FindingOf, WayKind } from './finding.ts';
export { isSafe, remedies } from './remedies.ts';
export { ledger } from './ledger.ts';
export type { Ledger, WayHome } from './ledger.ts';
export { conditionLabel, conditionSentence, label, name, optionLabel, whatIsTheMatter } from './name.ts';
export { aboveFloor_V } from './metal.ts';
export { STRAY_A } from './normalState.ts';
export { figure, quantity } from './quantity.ts';
export type { Unit } from './quantity.ts';
export { capital, list, lowerCase, prepareWords, say, term, termKeys } from './say.ts';
export type { WordValues } from './say.ts';
export type { WordKey } from './words/catalogue.ts';
