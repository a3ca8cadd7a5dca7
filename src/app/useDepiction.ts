import { useMemo } from 'react';
import { depict, type Depiction } from '../depiction/index.ts';
import type { Desk } from './desk.ts';
import { intervalAt } from './playhead.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

const shownInterval = ({ timeline, playhead }: Desk) => intervalAt(timeline, playhead.time_s);

/** What there is to see, hear and read at the moment shown. */
export function useDepiction(): Depiction {
  const timeline = useDesk((desk) => desk.timeline);
  const interval = useDesk(shownInterval);
  const vocabulary = useVocabulary();
  return useMemo(
    () => depict(timeline, timeline.intervals[interval]?.start_s ?? 0, vocabulary),
    [timeline, vocabulary, interval],
  );
}
