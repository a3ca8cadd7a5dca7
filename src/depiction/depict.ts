import { capital, label, quantity, say, type Vocabulary } from '../explain/index.ts';
import { at, type Interval, type Timeline } from '../scenario/index.ts';
import { conductors } from './conductors.ts';
import type { Depiction } from './depiction.ts';
import { LEAST_A, flows } from './flow.ts';
import { halos, touchable } from './halos.ts';
import { hotspots, twin } from './hotspots.ts';
import { partViews } from './parts.ts';
import { personView } from './person.ts';
import { placeOf } from './place.ts';
import { profile } from './profile.ts';
import { drains, ribbons } from './ribbons.ts';
import { hum, sounds } from './sounds.ts';
import { drawStrip, stripPosition } from './strip.ts';

/** What stands still until something happens: kept for as long as its timeline is. */
const kept = new WeakMap<Timeline, Map<string, Depiction>>();

/** What there is to see, hear and read at a moment of a run. A place that nobody has drawn has words, profile and strip only. */
export function depict(timeline: Timeline, time_s: number, vocabulary: Vocabulary): Depiction {
  const interval = at(timeline, time_s);
  const known = kept.get(timeline) ?? new Map<string, Depiction>();
  kept.set(timeline, known);
  const key = `${vocabulary} ${timeline.intervals.indexOf(interval)}`;
  const still = known.get(key) ?? depictInterval(timeline, interval, vocabulary);
  known.set(key, still);
  return { ...still, time_s, strip: { ...still.strip, now: stripPosition(still.strip, time_s) } };
}

function depictInterval(timeline: Timeline, interval: Interval, vocabulary: Vocabulary): Depiction {
  const { build, intervals } = timeline;
  const { installation } = build;
  const person = personView(timeline, interval, vocabulary);
  const metal = touchable(build, interval);
  const strip = drawStrip(timeline, interval.start_s, vocabulary);
  const announce = announcement(interval, strip, metal, person.caption, vocabulary);
  const place = placeOf(installation.drawing);
  const said = {
    time_s: interval.start_s,
    frequency_Hz: installation.frequency_Hz,
    region: vocabulary,
    person,
    strip,
    hum: hum(timeline, interval, vocabulary),
    sounds: sounds(timeline, vocabulary),
    announce,
  };
  if (!place) {
    const empty = { parts: [], conductors: [], ribbons: [], drains: [], halos: [], hotspots: [] };
    const world = { width: 1600, height: 824 };
    return {
      ...said,
      ...empty,
      world,
      groups: [],
      frames: {},
      profile: profile(build, interval, [], vocabulary),
      twin: [announce],
    };
  }
  const now = flows(build, interval, place, person.pose);
  const before = interval.because.kind === 'device-operated' ? intervals[intervals.indexOf(interval) - 1] : undefined;
  const earlier = before ? flows(build, before, place, personView(timeline, before, vocabulary).pose) : [];
  const spots = hotspots(build, interval, place, metal, person, vocabulary);
  return {
    ...said,
    world: place.world,
    groups: place.groups,
    frames: place.frames,
    parts: partViews(build, interval, place, person),
    conductors: conductors(interval, place, person.pose),
    ribbons: ribbons(build, interval, now),
    drains: drains(build, interval, earlier, now),
    halos: halos(metal, place),
    hotspots: spots,
    ...(arcs(interval) ? { spark: place.spark } : {}),
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
