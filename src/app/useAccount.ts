import { useEffect, useMemo, useState } from 'react';
import { account, advice, telling, type Account, type StoryLine, type WayHome } from '../explain/index.ts';
import type { Desk } from './desk.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

const beforeAnything = ({ timeline, playhead }: Desk) => playhead.time_s < 0 && timeline.intervals.length > 1;

/** The run in words. Its ledger is that of the fault, or of the ordinary state while that is shown. */
export function useAccount(): Account {
  const timeline = useDesk((desk) => desk.timeline);
  const before = useDesk(beforeAnything);
  const vocabulary = useVocabulary();
  return useMemo(() => account(timeline, vocabulary, before ? 0 : telling(timeline)), [timeline, vocabulary, before]);
}

/** The biggest way home, and of what current it is. */
export interface Homeward {
  readonly way: WayHome;
  readonly of: 'fault' | 'load';
}

/** The biggest way home of the fault; where no insulation has failed, of the working current. Undefined if nothing comes home. */
export function useHomeward(): Homeward | undefined {
  const timeline = useDesk((desk) => desk.timeline);
  const vocabulary = useVocabulary();
  return useMemo(() => {
    const { ledger } = account(timeline, vocabulary);
    const failed = timeline.intervals.some(({ because }) => because.kind === 'fault-strikes');
    const way = ledger?.ways[0];
    if (!ledger || !way || (failed && ledger.of !== 'fault')) return undefined;
    return { way, of: ledger.of };
  }, [timeline, vocabulary]);
}

const ADVICE_AFTER_ms = 120;

/** What would have made it safe. It costs several runs, so it comes a moment after everything else; null until then. */
export function useAdvice(): readonly StoryLine[] | null {
  const timeline = useDesk((desk) => desk.timeline);
  const vocabulary = useVocabulary();
  const [given, setGiven] = useState<{ readonly of: Desk['timeline']; readonly lines: readonly StoryLine[] } | null>(
    null,
  );
  useEffect(() => {
    const timer = setTimeout(() => setGiven({ of: timeline, lines: advice(timeline, vocabulary) }), ADVICE_AFTER_ms);
    return () => clearTimeout(timer);
  }, [timeline, vocabulary]);
  return given?.of === timeline ? given.lines : null;
}
