import { initialConditions, type Build, type Conditions } from '../installation/index.ts';
import { run, type Timeline } from '../scenario/index.ts';
import { advance, leadIn_s, neighbours, paceOf, runEnd_s, type Playhead } from './playhead.ts';

/** An installation that is open, compiled once. */
export interface Place {
  /** Short name, also in links; null for a file that somebody opened. */
  readonly id: string | null;
  readonly title: string;
  readonly build: Build;
}

/** What is pointed at: the same in the stage, the ledger and the profile. */
export interface Pointed {
  /** What it was pointed at through, e.g. `part mixer` or `way protective`. */
  readonly id: string;
  readonly parts: readonly string[];
  readonly branches: readonly number[];
  /** Stays after the pointer has left. */
  readonly held: boolean;
}

/** Everything that is set and shown: the one owner of the state of a place. */
export interface Desk {
  readonly place: Place;
  readonly conditions: Conditions;
  readonly past: readonly Conditions[];
  /** Computed from the two above and from nothing else. */
  readonly timeline: Timeline;
  readonly playhead: Playhead;
  readonly pointed: Pointed | null;
  /** Numbers and outcome are hidden from the room; a change of conditions then waits for somebody to run it. */
  readonly covered: boolean;
  /** Conditions are given, as in a lesson, and not for choosing. */
  readonly fixed: boolean;
  /** Nothing moves by itself. */
  readonly still: boolean;
}

/** What can be done at a desk. */
export type Deed =
  | { readonly kind: 'choose'; readonly condition: string; readonly option: string }
  | { readonly kind: 'arrange'; readonly conditions: Conditions }
  | {
      readonly kind: 'stage';
      readonly conditions: Conditions;
      readonly covered: boolean;
      readonly shows: 'before' | 'fault';
    }
  | { readonly kind: 'open'; readonly place: Place; readonly conditions?: Conditions }
  | { readonly kind: 'reset' }
  | { readonly kind: 'undo' }
  | { readonly kind: 'run' }
  | { readonly kind: 'pause' }
  | { readonly kind: 'seek'; readonly time_s: number }
  | { readonly kind: 'skip'; readonly to: 'next' | 'previous' }
  | { readonly kind: 'pace'; readonly slow: number }
  | { readonly kind: 'pass'; readonly wall_s: number }
  | { readonly kind: 'point'; readonly pointed: Pointed | null }
  | { readonly kind: 'cover'; readonly covered: boolean }
  | { readonly kind: 'still'; readonly still: boolean };

/** A desk at which a place has just been opened, at rest. */
export function openDesk(
  place: Place,
  conditions: Conditions = initialConditions(place.build.installation),
  { still = false, covered = false, fixed = false }: Partial<Pick<Desk, 'still' | 'covered' | 'fixed'>> = {},
): Desk {
  const timeline = run(place.build, conditions);
  const playhead = { time_s: 0, running: false, slow: paceOf(timeline), chosen: false };
  return { place, conditions, past: [], timeline, playhead, pointed: null, covered, fixed, still };
}

/** The desk after a deed. Pure: a change of conditions computes the whole run anew, everything else chooses what is shown of it. */
export function step(desk: Desk, deed: Deed): Desk {
  switch (deed.kind) {
    case 'choose':
      return arrange(desk, { ...desk.conditions, [deed.condition]: deed.option });
    case 'arrange':
      return arrange(desk, deed.conditions);
    case 'stage':
      return stage(desk, deed.conditions, deed.covered, deed.shows);
    case 'open':
      return openDesk(deed.place, deed.conditions, desk);
    case 'reset':
      return arrange(desk, initialConditions(desk.place.build.installation));
    case 'undo': {
      const last = desk.past[desk.past.length - 1];
      return last === undefined ? desk : { ...arrange(desk, last), past: desk.past.slice(0, -1) };
    }
    case 'run':
      return { ...desk, playhead: started(desk) };
    case 'pause':
      return at(desk, { ...desk.playhead, running: false });
    case 'seek':
      return at(desk, { ...desk.playhead, time_s: deed.time_s, running: false });
    case 'skip': {
      const time_s = neighbours(desk.timeline, desk.playhead.time_s)[deed.to];
      return time_s === undefined ? desk : at(desk, { ...desk.playhead, time_s });
    }
    case 'pace':
      return at(desk, { ...desk.playhead, slow: deed.slow, chosen: true });
    case 'pass':
      return at(desk, advance(desk.playhead, desk.timeline, deed.wall_s));
    case 'point':
      return desk.pointed === deed.pointed ? desk : { ...desk, pointed: deed.pointed };
    case 'cover':
      return desk.covered === deed.covered ? desk : cover({ ...desk, covered: deed.covered });
    case 'still':
      return desk.still === deed.still ? desk : { ...desk, still: deed.still };
  }
}

/** Conditions that are not as this place opens with, in the order of its file. */
export function changed(
  place: Place,
  conditions: Conditions,
): readonly { readonly condition: string; readonly option: string }[] {
  const initial = initialConditions(place.build.installation);
  return Object.entries(place.build.installation.conditions).flatMap(([condition, { options }]) => {
    const option = conditions[condition] ?? options[0] ?? '';
    return option === (initial[condition] ?? options[0]) ? [] : [{ condition, option }];
  });
}

function arrange(desk: Desk, conditions: Conditions): Desk {
  const timeline = run(desk.place.build, conditions);
  const playhead = opening(desk, timeline);
  return { ...desk, conditions, past: [...desk.past, desk.conditions], timeline, playhead };
}

/** A run set up at rest, with nothing to undo. */
function stage(desk: Desk, conditions: Conditions, covered: boolean, shows: 'before' | 'fault'): Desk {
  const timeline = run(desk.place.build, conditions);
  const slow = paceOf(timeline);
  const time_s = shows === 'before' ? leadIn_s(timeline, slow) : 0;
  const playhead = { time_s, running: false, slow, chosen: false };
  return { ...desk, conditions, past: [], timeline, playhead, covered };
}

/** Ribbons and hatch give the outcome away as well as figures do: the covered desk goes back to ordinary work. */
function cover(desk: Desk): Desk {
  return desk.covered && desk.timeline.intervals.length > 1
    ? { ...desk, playhead: opening(desk, desk.timeline) }
    : desk;
}

/** A new run is shown from the moment the fault strikes; where the room is asked first, from the ordinary state. */
function opening({ playhead, covered, still }: Desk, timeline: Timeline): Playhead {
  const slow = playhead.chosen ? playhead.slow : paceOf(timeline);
  const happens = timeline.intervals.length > 1;
  if (covered && happens) return { ...playhead, slow, time_s: leadIn_s(timeline, slow), running: false };
  return { ...playhead, slow, time_s: 0, running: happens && !still };
}

/** From here on if something is still to come, otherwise from the start. */
function started({ playhead, timeline }: Desk): Playhead {
  const over = playhead.time_s >= runEnd_s(timeline, playhead.slow);
  return { ...playhead, time_s: over ? leadIn_s(timeline, playhead.slow) : playhead.time_s, running: true };
}

function at(desk: Desk, playhead: Playhead): Desk {
  return desk.playhead === playhead ? desk : { ...desk, playhead };
}
