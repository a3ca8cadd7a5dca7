import { capital, label, quantity, say, type Vocabulary } from '../explain/index.ts';
import { at, type Interval, type Timeline } from '../scenario/index.ts';
import { conductors } from './conductors.ts';
import type { Depiction, Picture } from './depiction.ts';
import { LEAST_A, flows, type Flow } from './flow.ts';
import { halos, touchable } from './halos.ts';
import { hotspots, twin } from './hotspots.ts';
import { partViews } from './parts.ts';
import { personView } from './person.ts';
import { placeOf, type Place } from './place.ts';
import { profile } from './profile.ts';
import { drains, ribbons } from './ribbons.ts';
import { hum, sounds } from './sounds.ts';
import { drawStrip, stripPosition } from './strip.ts';

/** What is drawn, with what its words are made of. */
interface Drawn {
  /** The drawing as it was known then: it may arrive after the words. */
  readonly place: Place | undefined;
  readonly picture: Picture;
  readonly flows: readonly Flow[];
  readonly metal: ReadonlyMap<string, number>;
  readonly person: Depiction['person'];
  said?: Omit<Depiction, keyof Picture>;
}

/** Drawn once for each interval and vocabulary; the words only when they are asked for. */
const kept = new WeakMap<Interval, Map<Vocabulary, Drawn>>();

/** The world of a place that nobody has drawn. */
const UNDRAWN = { width: 1600, height: 824 };

/** What is to be drawn at a moment of a run: the same object from one event to the next. */
export function picture(timeline: Timeline, time_s: number, vocabulary: Vocabulary): Picture {
  return drawn(timeline, at(timeline, time_s), vocabulary).picture;
}

/** What there is to see, hear and read at a moment of a run. A place that nobody has drawn has words, profile and strip only. */
export function depict(timeline: Timeline, time_s: number, vocabulary: Vocabulary): Depiction {
  const interval = at(timeline, time_s);
  const one = drawn(timeline, interval, vocabulary);
  const said = (one.said ??= words(timeline, interval, one, vocabulary));
  return { ...one.picture, ...said, time_s, strip: { ...said.strip, now: stripPosition(said.strip, time_s) } };
}

function drawn(timeline: Timeline, interval: Interval, vocabulary: Vocabulary): Drawn {
  const known = kept.get(interval) ?? new Map<Vocabulary, Drawn>();
  kept.set(interval, known);
  const before = known.get(vocabulary);
  if (before && before.place === placeOf(timeline.build.installation.drawing)) return before;
  const made = draw(timeline, interval, vocabulary);
  known.set(vocabulary, made);
  return made;
}

function draw(timeline: Timeline, interval: Interval, vocabulary: Vocabulary): Drawn {
  const { build, intervals } = timeline;
  const { frequency_Hz, drawing } = build.installation;
  const person = personView(timeline, interval, vocabulary);
  const metal = touchable(build, interval);
  const place = placeOf(drawing);
  const everywhere = { frequency_Hz, region: vocabulary };
  if (!place) {
    const empty = { parts: [], conductors: [], ribbons: [], drains: [], halos: [], groups: [], frames: {} };
    return { picture: { ...everywhere, ...empty, world: UNDRAWN }, flows: [], metal, person, place };
  }
  const now = flows(build, interval, place, person.pose);
  const before = interval.because.kind === 'device-operated' ? intervals[intervals.indexOf(interval) - 1] : undefined;
  const earlier = before ? flows(build, before, place, personView(timeline, before, vocabulary).pose) : [];
  const seen: Picture = {
    ...everywhere,
    world: place.world,
    groups: place.groups,
    frames: place.frames,
    parts: partViews(build, interval, place, person),
    conductors: conductors(interval, place, person.pose),
    ribbons: ribbons(build, interval, now),
    drains: drains(build, interval, earlier, now),
    halos: halos(metal, place),
    ...(arcs(interval) ? { spark: place.spark } : {}),
  };
  return { picture: seen, flows: now, metal, person, place };
}

function words(
  timeline: Timeline,
  interval: Interval,
  { flows: now, metal, person, place }: Drawn,
  vocabulary: Vocabulary,
): Omit<Depiction, keyof Picture> {
  const { build } = timeline;
  const strip = drawStrip(timeline, interval.start_s, vocabulary);
  const announce = announcement(interval, strip, metal, person.caption, vocabulary);
  const spots = place ? hotspots(build, interval, place, metal, person, vocabulary) : [];
  return {
    time_s: interval.start_s,
    person,
    strip,
    hum: hum(timeline, interval, vocabulary),
    sounds: sounds(timeline, vocabulary),
    announce,
    hotspots: spots,
    profile: profile(build, interval, now, vocabulary),
    twin: [announce, ...twin(spots)],
  };
}

/** An arc burns where insulation has failed and current crosses. */
function arcs({ fault, solution }: Interval): boolean {
  if (!fault) return false;
  return Math.hypot(solution.amperes.re[fault.branch] ?? 0, solution.amperes.im[fault.branch] ?? 0) >= LEAST_A;
}

/** What this interval begins with and what is to be feared in it. */
function announcement(
  interval: Interval,
  { marks }: Depiction['strip'],
  metal: ReadonlyMap<string, number>,
  person: string,
  vocabulary: Vocabulary,
): string {
  const begins = marks.find(({ time_s }) => time_s === interval.start_s)?.label ?? '';
  const [part, volts] = [...metal].toSorted(([, a], [, b]) => b - a)[0] ?? ['', 0];
  const live =
    volts >= 25
      ? `${label(part, vocabulary)}: ${say('detail.volts', vocabulary, { volts: quantity(volts, 'V') })}`
      : '';
  return [capital(begins), live, capital(person)]
    .filter((text) => text !== '')
    .map((text) => `${text}.`)
    .join(' ');
}
