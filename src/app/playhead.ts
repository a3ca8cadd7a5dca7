import type { Interval, Timeline } from '../scenario/index.ts';

/** The moment shown, and how it moves. Times in s on the timeline; the fault strikes at 0. */
export interface Playhead {
  readonly time_s: number;
  readonly running: boolean;
  /** Times slower than real. */
  readonly slow: number;
  /** True once somebody has chosen `slow`; a new run then keeps it. */
  readonly chosen: boolean;
}

/** The offered slow motions, times slower than real. */
export const PACES: readonly number[] = [1, 3, 10, 30, 100, 300, 1000];

const FIRST_EVENT_WALL_s = 6; // the first thing to happen after the fault is waited for no longer than this
const LEAD_WALL_s = 0.8; // seen of the ordinary state before the fault when it is run again
const TAIL_WALL_s = 2.5; // seen of the last state before the run stops

/** The slow motion in which a run's first event after the fault comes soon, but not before it can be followed. */
export function paceOf(timeline: Timeline): number {
  const first = timeline.intervals.find(({ start_s }) => start_s > 0)?.start_s;
  if (first === undefined) return 1;
  return PACES.findLast((slow) => first * slow <= FIRST_EVENT_WALL_s) ?? 1;
}

/** Where a run of this timeline begins when it is shown from the start, s. */
export function leadIn_s(timeline: Timeline, slow: number): number {
  return timeline.intervals.length > 1 ? Math.max(-1, -LEAD_WALL_s / slow) : 0;
}

/** When the last thing has happened and been seen, s. */
export function runEnd_s(timeline: Timeline, slow: number): number {
  const last = timeline.intervals[timeline.intervals.length - 1];
  return Math.max(0, last?.start_s ?? 0) + TAIL_WALL_s / slow;
}

/** The playhead after so much of the viewer's own time; it stops by itself when the story is over. */
export function advance(playhead: Playhead, timeline: Timeline, wall_s: number): Playhead {
  if (!playhead.running) return playhead;
  const end_s = runEnd_s(timeline, playhead.slow);
  const time_s = playhead.time_s + wall_s / playhead.slow;
  return time_s < end_s
    ? { ...playhead, time_s }
    : { ...playhead, time_s: Math.max(playhead.time_s, end_s), running: false };
}

/** Index of the interval that holds this moment. */
export function intervalAt(timeline: Timeline, time_s: number): number {
  return Math.max(
    0,
    timeline.intervals.findLastIndex(({ start_s }) => start_s <= time_s),
  );
}

/** Starts of the next and the previous interval, s; undefined at either end. */
export function neighbours(timeline: Timeline, time_s: number): { readonly next?: number; readonly previous?: number } {
  const index = intervalAt(timeline, time_s);
  const start = (interval: Interval | undefined) => interval?.start_s;
  const next = start(timeline.intervals[index + 1]);
  const previous = start(timeline.intervals[index - 1]);
  return { ...(next === undefined ? {} : { next }), ...(previous === undefined ? {} : { previous }) };
}
