import { useMemo } from 'react';
import { depict, type Depiction } from '../depiction/index.ts';
import type { Vocabulary } from '../explain/index.ts';
import type { Timeline } from '../scenario/index.ts';
import type { Desk } from './desk.ts';
import { intervalAt } from './playhead.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

const known = new WeakMap<Timeline, Map<string, Depiction>>();

const shownInterval = ({ timeline, playhead }: Desk) => intervalAt(timeline, playhead.time_s);
const toldInterval = ({ told, playhead }: Desk) => intervalAt(told, playhead.time_s);

/** What there is to see at the moment shown. */
export function useDepiction(): Depiction {
  const timeline = useDesk((desk) => desk.timeline);
  const interval = useDesk(shownInterval);
  const vocabulary = useVocabulary();
  return useMemo(() => depictionOf(timeline, vocabulary, interval), [timeline, vocabulary, interval]);
}

/** The same for what is written over and under the picture, which may come a frame later. */
export function useToldDepiction(): Depiction {
  const timeline = useDesk((desk) => desk.told);
  const interval = useDesk(toldInterval);
  const vocabulary = useVocabulary();
  return useMemo(() => depictionOf(timeline, vocabulary, interval), [timeline, vocabulary, interval]);
}

/** Drawn once for each timeline, vocabulary and interval. */
function depictionOf(timeline: Timeline, vocabulary: Vocabulary, interval: number): Depiction {
  const drawn = known.get(timeline) ?? new Map<string, Depiction>();
  known.set(timeline, drawn);
  const key = `${vocabulary} ${interval}`;
  const before = drawn.get(key);
  if (before !== undefined) return before;
  const depiction = depict(timeline, timeline.intervals[interval]?.start_s ?? 0, vocabulary);
  drawn.set(key, depiction);
  return depiction;
}
