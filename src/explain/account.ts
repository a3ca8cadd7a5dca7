import type { Build } from '../installation/index.ts';
import type { Timeline } from '../scenario/index.ts';
import type { Finding } from './finding.ts';
import { findings } from './findings.ts';
import { outcome } from './headline.ts';
import { ledger, type Ledger } from './ledger.ts';
import { remedies } from './remedies.ts';
import { say } from './say.ts';
import { story, type StoryLine } from './story.ts';
import type { Vocabulary } from './vocabulary.ts';

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

const known = new WeakMap<Timeline, Map<string, Account>>();

/** The run in plain words: the outcome, why, the story in order of time, where the current of one interval goes home.
 *  @param interval whose ledger is told; the one in which the fault strikes unless said, without a fault the first
 *  @throws RangeError if the timeline has no such interval */
export function account(timeline: Timeline, vocabulary: Vocabulary, interval: number = telling(timeline)): Account {
  const told = known.get(timeline) ?? new Map<string, Account>();
  known.set(timeline, told);
  const key = `${vocabulary} ${interval}`;
  const before = told.get(key);
  if (before !== undefined) return before;
  const found = findings(timeline);
  const made = {
    ...outcome(timeline, found, vocabulary),
    story: story(timeline.build, found, vocabulary),
    ledger: ledger(timeline, interval, vocabulary),
    cautions: cautions(timeline.build, found, vocabulary),
  };
  told.set(key, made);
  return made;
}

/** The interval whose ledger tells most: that of the fault, otherwise the first from 0 s on, otherwise ordinary work. */
export function telling({ intervals }: Timeline): number {
  const struck = intervals.findIndex(({ because }) => because.kind === 'fault-strikes');
  return Math.max(0, struck < 0 ? intervals.findIndex(({ start_s }) => start_s >= 0) : struck);
}

/** What would have made it safe, in words; takes several runs, so ask for it after the rest is shown. */
export function advice(timeline: Timeline, vocabulary: Vocabulary): readonly StoryLine[] {
  return story(timeline.build, remedies(timeline), vocabulary);
}

function cautions(build: Build, found: readonly Finding[], vocabulary: Vocabulary): readonly string[] {
  const hurt = found.some(({ kind }) => kind === 'person-feels');
  const keys = ['caution.model', 'caution.measure', 'caution.codes', 'caution.steady'] as const;
  const steel = build.branches.some(({ metal }) => metal?.of === 'steel');
  return [...keys, ...(steel ? (['caution.steel'] as const) : []), ...(hurt ? (['caution.shock'] as const) : [])].map(
    (key) => say(key, vocabulary),
  );
}
