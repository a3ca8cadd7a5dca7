import { useEffect, useMemo, useState } from 'react';
import type { Depiction } from '../depiction/index.ts';
import { account, advice, telling, type Account, type StoryLine } from '../explain/index.ts';
import type { Desk } from './desk.ts';
import { intervalAt } from './playhead.ts';
import { depictionOf } from './told.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

const shownInterval = ({ timeline, playhead }: Desk) => intervalAt(timeline, playhead.time_s);
const beforeAnything = ({ timeline, playhead }: Desk) => playhead.time_s < 0 && timeline.intervals.length > 1;

/** What there is to see at the moment shown. */
export function useDepiction(): Depiction {
  const timeline = useDesk((desk) => desk.timeline);
  const interval = useDesk(shownInterval);
  const vocabulary = useVocabulary();
  return useMemo(() => depictionOf(timeline, vocabulary, interval), [timeline, vocabulary, interval]);
}

/** The run in words. Its ledger is that of the fault, or of the ordinary state while that is shown. */
export function useAccount(): Account {
  const timeline = useDesk((desk) => desk.timeline);
  const before = useDesk(beforeAnything);
  const vocabulary = useVocabulary();
  return useMemo(() => account(timeline, vocabulary, before ? 0 : telling(timeline)), [timeline, vocabulary, before]);
}

const ADVICE_AFTER_ms = 120;

/** What would have made it safe. It costs several runs, so it comes a moment after everything else; null until then. */
export function useAdvice(): readonly StoryLine[] | null {
  const timeline = useDesk((desk) => desk.timeline);
  const vocabulary = useVocabulary();
  const [given, setGiven] = useState<{ readonly of: Desk['timeline']; readonly lines: readonly StoryLine[] } | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setGiven({ of: timeline, lines: advice(timeline, vocabulary) }), ADVICE_AFTER_ms);
    return () => clearTimeout(timer);
  }, [timeline, vocabulary]);
  return given?.of === timeline ? given.lines : null;
}
