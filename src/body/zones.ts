/** What an alternating current of 15 to 100 Hz does, left hand to both feet: AC-1 perceptible at most; AC-2 involuntary contractions,
 *  normally harmless; AC-3 strong contraction, breathing trouble; AC-4.1 to 4.3 fibrillation up to about 5 %, 50 %, more. */
export type Zone = 'AC-1' | 'AC-2' | 'AC-3' | 'AC-4.1' | 'AC-4.2' | 'AC-4.3';

/** A boundary between two zones. */
export type ZoneCurve = 'a' | 'b' | 'c1' | 'c2' | 'c3';

/** One digitised point of a boundary. */
export interface ZonePoint {
  readonly time_s: number;
  readonly amperes: number;
}

/** Threshold of perception, A: curve a. IEC 60479-1, seen second-hand. */
export const PERCEPTION_A = 0.0005;

const TIMES_S = [0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 10];

/** Boundaries of IEC 60479-1:2018 figure 20, mA at the times above. Seen second-hand: b 200 at 10 ms and 5 for long, c1 500 at
 *  10 ms and 40 for long, c2 900 at 50 ms. The rest from memory of the plot, within 10 to 15 %; c2 also from memory of
 *  EN 50522:2010 table B.1 (900, 750, 600, 200, 80, 60, 51, 50 mA at 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10 s). */
const CURVES_mA: Readonly<Record<ZoneCurve, readonly number[]>> = {
  a: [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
  b: [200, 150, 80, 50, 35, 25, 18, 11, 7.5, 6, 5.2, 5],
  c1: [500, 495, 450, 400, 250, 165, 100, 50, 42, 40, 40, 40],
  c2: [1000, 900, 900, 750, 600, 380, 200, 80, 60, 55, 51, 50],
  c3: [1500, 1450, 1350, 1100, 900, 600, 320, 140, 95, 85, 80, 80],
};

const curves: Readonly<Record<ZoneCurve, readonly ZonePoint[]>> = {
  a: pointsOf('a'),
  b: pointsOf('b'),
  c1: pointsOf('c1'),
  c2: pointsOf('c2'),
  c3: pointsOf('c3'),
};

/** Zones in order with the curve that leads into each. */
const STEPS: readonly { readonly curve: ZoneCurve; readonly zone: Zone }[] = [
  { curve: 'a', zone: 'AC-2' },
  { curve: 'b', zone: 'AC-3' },
  { curve: 'c1', zone: 'AC-4.1' },
  { curve: 'c2', zone: 'AC-4.2' },
  { curve: 'c3', zone: 'AC-4.3' },
];

/** Zone of this heart current (A, left hand to feet) after this time (s). A current on a curve counts as beyond it, the careful side, but
 *  for curve a, which AC-1 includes.
 *  @throws RangeError if either is negative or not a number */
export function zone(heart_A: number, time_s: number): Zone {
  if (!(heart_A >= 0 && time_s >= 0)) {
    throw new RangeError(`${heart_A} A for ${time_s} s: write a current and a time of zero or more`);
  }
  let reached: Zone = 'AC-1';
  for (const { curve, zone: next } of STEPS) if (reached_s(curve, heart_A) <= time_s) reached = next;
  return reached;
}

/** Instants (s from the start of this current) at which the zone changes, in order, with the zone that begins there. */
export function zoneChanges(heart_A: number): readonly { readonly time_s: number; readonly zone: Zone }[] {
  return STEPS.map(({ curve, zone: next }) => ({ time_s: reached_s(curve, heart_A), zone: next })).filter(
    ({ time_s }) => time_s > 0 && time_s < Infinity,
  );
}

/** The digitised points of a boundary, in order of time. Between them it is straight in log time and log current; before
 *  10 ms and after 10 s it is held. */
export function zoneCurve(curve: ZoneCurve): readonly ZonePoint[] {
  return curves[curve];
}

/** First instant at which this current is on or beyond the curve, s; `Infinity` if never. The curves fall with time. */
function reached_s(curve: ZoneCurve, heart_A: number): number {
  if (curve === 'a') return heart_A > PERCEPTION_A ? 0 : Infinity;
  const points = curves[curve];
  const next = points.findIndex(({ amperes }) => amperes <= heart_A);
  if (next <= 0) return next === 0 ? 0 : Infinity;
  const [before, after] = points.slice(next - 1, next + 1);
  if (!before || !after) return Infinity;
  const slope = Math.log(after.time_s / before.time_s) / Math.log(after.amperes / before.amperes);
  return after.time_s * (heart_A / after.amperes) ** slope;
}

function pointsOf(curve: ZoneCurve): readonly ZonePoint[] {
  return TIMES_S.map((time_s, index) => ({ time_s, amperes: (CURVES_mA[curve][index] ?? NaN) / 1000 }));
}
