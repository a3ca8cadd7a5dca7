import type { Region } from '../installation/index.ts';
import type { Finding } from './finding.ts';
import type { Ledger } from './ledger.ts';

/** The trade's two languages: North American and IEC. */
export type Vocabulary = Region;

/** One sentence of the story and the fact it was made from. */
export interface StoryLine {
  readonly at_s: number;
  readonly text: string;
  readonly finding: Finding;
}

/** A run in plain words. */
export interface Account {
  /** the outcome in one sentence */
  readonly headline: string;
  /** two or three sentences of why */
  readonly why: readonly string[];
  /** in order of time */
  readonly story: readonly StoryLine[];
  readonly ledger: Ledger | null;
  readonly cautions: readonly string[];
}
