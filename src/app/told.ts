import { depict, type Depiction } from '../depiction/index.ts';
import type { Vocabulary } from '../explain/index.ts';
import type { Timeline } from '../scenario/index.ts';

const known = new WeakMap<Timeline, Map<string, Depiction>>();

/** What there is to see while an interval lasts; drawn once for each timeline, vocabulary and interval. */
export function depictionOf(timeline: Timeline, vocabulary: Vocabulary, interval: number): Depiction {
  const drawn = known.get(timeline) ?? new Map<string, Depiction>();
  known.set(timeline, drawn);
  const key = `${vocabulary} ${interval}`;
  const before = drawn.get(key);
  if (before !== undefined) return before;
  const depiction = depict(timeline, timeline.intervals[interval]?.start_s ?? 0, vocabulary);
  drawn.set(key, depiction);
  return depiction;
}
