import { capital, name, quantity, say, type Vocabulary } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval, Timeline } from '../scenario/index.ts';
import type { Strip } from './depiction.ts';
import { LEAST_A } from './flow.ts';
import { largestSource_A } from './source.ts';

/** Pieces longer than this are spaced by the logarithm of the time since their beginning, s. */
const LINEAR_UP_TO_s = 0.1;
/** Time that a logarithmic piece treats as its first step, s. */
const FIRST_STEP_s = 0.01;
/** What is shown after the last event when nothing of interest goes on, s. */
const AFTERMATH_s = 1;

type Segment = Strip['segments'][number];
type Mark = Strip['marks'][number];

/** The strip of time of a run, with the moment shown on it. */
export function drawStrip(timeline: Timeline, time_s: number, vocabulary: Vocabulary): Strip {
  const stretches = timeline.intervals.map((interval, i) => ({
    from_s: interval.start_s,
    to_s: timeline.intervals[i + 1]?.start_s ?? lastMoment(timeline, interval),
    kind: kindOf(interval),
  }));
  const merged = stretches.reduce<{ from_s: number; to_s: number; kind: Segment['kind'] }[]>((list, piece) => {
    const before = list.at(-1);
    if (piece.to_s <= piece.from_s) return list;
    if (before?.kind === piece.kind && piece.kind !== 'normal') before.to_s = piece.to_s;
    else list.push({ ...piece });
    return list;
  }, []);
  const weights = merged.map(({ from_s, to_s, kind }) => weightOf(to_s - from_s, kind));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  let position = 0;
  const segments = merged.map((piece, i): Segment => {
    const from = position;
    position = i === merged.length - 1 ? 1 : position + (weights[i] ?? 0) / whole;
    return { ...piece, from, to: position };
  });
  const strip = { segments, marks: [], now: 0 };
  return { segments, marks: marksOf(timeline, strip, vocabulary), now: stripPosition(strip, time_s) };
}

/** The moment at a position of the strip, s.
 *  @param position 0 to 1; beyond an end, that end */
export function stripTime({ segments }: Pick<Strip, 'segments'>, position: number): number {
  const segment = segments.findLast(({ from }) => from <= position) ?? segments[0];
  if (!segment) throw new RangeError('stripTime: a strip has at least one segment');
  const share = Math.min(1, Math.max(0, (position - segment.from) / (segment.to - segment.from)));
  const span = segment.to_s - segment.from_s;
  if (span <= LINEAR_UP_TO_s || segment.kind !== 'fault') return segment.from_s + share * span;
  return segment.from_s + FIRST_STEP_s * Math.expm1(share * Math.log1p(span / FIRST_STEP_s));
}

/** Where a moment lies on the strip, 0 to 1; the inverse of `stripTime`. */
export function stripPosition({ segments }: Pick<Strip, 'segments'>, time_s: number): number {
  const segment = segments.findLast(({ from_s }) => from_s <= time_s) ?? segments[0];
  if (!segment) throw new RangeError('stripPosition: a strip has at least one segment');
  const span = segment.to_s - segment.from_s;
  const passed = Math.min(span, Math.max(0, time_s - segment.from_s));
  const share =
    span <= LINEAR_UP_TO_s || segment.kind !== 'fault'
      ? passed / span
      : Math.log1p(passed / FIRST_STEP_s) / Math.log1p(span / FIRST_STEP_s);
  return segment.from + share * (segment.to - segment.from);
}

function kindOf(interval: Interval): Segment['kind'] {
  if (interval.fault && Math.hypot(interval.fault.amperes.re, interval.fault.amperes.im) >= LEAST_A) return 'fault';
  if (interval.people.some(({ body_A }) => body_A >= LEAST_A)) return 'fault';
  return interval.devices.some(({ state }) => state === 'open') ? 'open' : 'normal';
}

function lastMoment({ horizon_s }: Timeline, last: Interval): number {
  return kindOf(last) === 'fault'
    ? Math.max(horizon_s, last.start_s + AFTERMATH_s)
    : Math.max(0, last.start_s) + AFTERMATH_s;
}

/** Every tenfold of time from a millisecond up takes the same room again. */
function weightOf(span_s: number, kind: Segment['kind']): number {
  return kind === 'fault' ? 1.5 + Math.log10(1 + span_s / 0.001) : 2;
}

function marksOf(timeline: Timeline, strip: Pick<Strip, 'segments'>, vocabulary: Vocabulary): readonly Mark[] {
  const marks = timeline.intervals.flatMap((interval): Mark[] => {
    const worded = wordedStart(timeline.build, interval, vocabulary);
    if (!worded) return [];
    const position = interval.because.kind === 'begins' ? 0 : stripPosition(strip, interval.start_s);
    return [{ time_s: interval.start_s, position, ...worded }];
  });
  const last = strip.segments.at(-1);
  if (last?.kind === 'fault')
    marks.push({ time_s: last.to_s, position: 1, kind: 'end', label: say('strip.mark.end', vocabulary) });
  return marks;
}

function wordedStart(
  build: Build,
  interval: Interval,
  vocabulary: Vocabulary,
): Pick<Mark, 'label' | 'kind'> | undefined {
  const { because, start_s } = interval;
  switch (because.kind) {
    case 'begins': {
      const amperes = quantity(largestSource_A(build, interval), 'A');
      return { kind: 'normal', label: say('strip.mark.load', vocabulary, { amperes }) };
    }
    case 'fault-strikes':
      return { kind: 'fault', label: capital(say('strip.mark.fault', vocabulary)) };
    case 'touches':
      return {
        kind: 'person',
        label: say('strip.mark.touch', vocabulary, { person: name(because.person, vocabulary) }),
      };
    case 'device-operated': {
      const values = { device: name(because.device, vocabulary), time: quantity(start_s, 's') };
      return { kind: 'device', label: capital(say('strip.mark.device', vocabulary, values)) };
    }
    case 'device-warned': {
      const values = { device: name(because.device, vocabulary), time: quantity(start_s, 's') };
      return { kind: 'device', label: capital(say('strip.mark.warned', vocabulary, values)) };
    }
    case 'person-released':
      return {
        kind: 'person',
        label: capital(say('strip.mark.released', vocabulary, { person: name(because.person, vocabulary) })),
      };
    case 'zone-reached':
      return { kind: 'person', label: say('strip.mark.zone', vocabulary, { zone: because.zone }) };
    default:
      return because satisfies never;
  }
}
