import { useMemo } from 'react';
import { depict, type Depiction } from '../depiction/index.ts';
import { useDrawing } from './drawings.ts';
import type { Desk } from './desk.ts';
import { intervalAt } from './playhead.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

const shownInterval = ({ timeline, playhead }: Desk) => intervalAt(timeline, playhead.time_s);

/** What there is to see, hear and read at the moment shown. Waits for the drawing of the place, so that it must stand below
 *  something that is shown meanwhile. */
export function useDepiction(): Depiction {
  const timeline = useDesk((desk) => desk.timeline);
  const interval = useDesk(shownInterval);
  const vocabulary = useVocabulary();
  useDrawing(timeline.build.installation.drawing);
  return useMemo(
    () => depict(timeline, timeline.intervals[interval]?.start_s ?? 0, vocabulary),
    [timeline, vocabulary, interval],
  );
}
