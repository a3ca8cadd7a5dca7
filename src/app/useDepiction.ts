import { useMemo } from 'react';
import { depict, type Depiction } from '../depiction/index.ts';
import type { Desk } from './desk.ts';
import { intervalAt } from './playhead.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

const toldInterval = ({ told, playhead }: Desk) => intervalAt(told, playhead.time_s);

/** What there is to see, hear and read at the moment shown, of the run that is told. */
export function useDepiction(): Depiction {
  const timeline = useDesk((desk) => desk.told);
  const interval = useDesk(toldInterval);
  const vocabulary = useVocabulary();
  return useMemo(
    () => depict(timeline, timeline.intervals[interval]?.start_s ?? 0, vocabulary),
    [timeline, vocabulary, interval],
  );
}
