import { LET_GO_A } from './letGo.ts';
import type { Size } from './person.ts';

/** What an alternating current of 15 to 100 Hz does, left hand to both feet: AC-1 perceptible at most; AC-2 involuntary contractions,
 *  normally harmless; AC-3 strong contraction, breathing trouble; AC-4.1 to 4.3 fibrillation up to about 5 %, 50 %, more. The same of a
 *  direct current upwards, the feet positive: DC-1 slight pricking at most; DC-2 involuntary contractions when it begins or ends,
 *  DC-3 strong contractions and reversible disturbance of the heart, DC-4.1 to 4.3 fibrillation. */
export type Zone = (typeof zones)[number];

/** Zones by severity, those of alternating current first. */
export const zones = [
  'AC-1',
  'AC-2',
  'AC-3',
  'AC-4.1',
  'AC-4.2',
  'AC-4.3',
  'DC-1',
  'DC-2',
  'DC-3',
  'DC-4.1',
  'DC-4.2',
  'DC-4.3',
] as const;

/** How grave a zone is, 0 to 5, whichever current it is of. */
export function severity(zone: Zone): number {
  return zones.indexOf(zone) % 6;
}

/** A boundary between two zones. */
export type ZoneCurve = 'a' | 'b' | 'c1' | 'c2' | 'c3';

/** One digitised point of a boundary. */
export interface ZonePoint {
  readonly time_s: number;
  readonly amperes: number;
}

/** The boundaries that hold for one kind of current and one size of person. */
export interface Limits {
  readonly direct: boolean;
  /** Curve a: up to here nothing is felt, A. */
  readonly perception_A: number;
  /** The greatest current at which everyone can let go, A. */
  readonly letGo_A: number;
  readonly curves: Readonly<Record<ZoneCurve, readonly ZonePoint[]>>;
}

/** Threshold of perception at 50 and 60 Hz, A: curve a. IEC 60479-1, seen second-hand. */
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

const DIRECT_TIMES_S = [0.01, 0.1, 0.2, 0.5, 1, 3, 10];

/** Boundaries for direct current upwards, mA: IEC 60479-1:2018 figure 22, from memory, LOW CONFIDENCE but for 2 mA on a, 200 at 10 ms and
 *  25 for long on b, 500 at 10 ms and 150 for long on c1. Below about 0.5 s curve b is told as unknown. */
const DIRECT_CURVES_mA: Readonly<Record<ZoneCurve, readonly number[]>> = {
  a: [2, 2, 2, 2, 2, 2, 2],
  b: [200, 80, 60, 40, 32, 27, 25],
  c1: [500, 400, 350, 200, 165, 150, 150],
  c2: [1000, 750, 600, 350, 250, 210, 200],
  c3: [1500, 1100, 900, 520, 380, 310, 300],
};

/** Times the 50 Hz current that a higher frequency needs for the same effect. IEC 60479-2 gives them as curves: from memory, LOW
 *  CONFIDENCE; fibrillation is told up to 1 kHz and held beyond, the careful side. */
const FREQUENCIES_Hz = [100, 150, 300, 500, 1000, 2000, 5000, 10000];
const FREQUENCY_FACTORS = {
  perception: [1, 1, 1.2, 1.5, 2.1, 3.4, 7.5, 14],
  letGo: [1, 1, 1.05, 1.2, 1.6, 2.2, 3.5, 5],
  fibrillation: [1, 1.6, 4, 7, 14, 14, 14, 14],
} as const;

/** Smaller people fibrillate at less: an EXTRAPOLATION of ours. The threshold is taken in proportion to the mass (Dalziel and Lee, 1968),
 *  50 kg for the curves; the impedance of an adult is kept for all, the careful side. Letting go and feeling stay as they are: 5 mA
 *  counts children in. */
const REFERENCE_kg = 50;
const MASS_kg: Readonly<Record<Size, number>> = { adult: REFERENCE_kg, 'small adult': 40, child: 20 };

/** The boundaries at this frequency (0: direct current) for somebody of this size.
 *  @throws RangeError if the frequency is negative or not a number */
export function limitsAt(frequency_Hz: number, size: Size = 'adult'): Limits {
  if (!(frequency_Hz >= 0)) throw new RangeError(`A frequency of ${frequency_Hz} Hz: write zero or more`);
  const key = `${frequency_Hz} ${size}`;
  const known = limitsKnown.get(key);
  if (known !== undefined) return known;
  const limits = limitsFor(frequency_Hz, size);
  limitsKnown.set(key, limits);
  return limits;
}

const limitsKnown = new Map<string, Limits>();

function limitsFor(frequency_Hz: number, size: Size): Limits {
  const direct = frequency_Hz === 0;
  const [times_s, table] = direct ? [DIRECT_TIMES_S, DIRECT_CURVES_mA] : [TIMES_S, CURVES_mA];
  const mass = MASS_kg[size] / REFERENCE_kg;
  const perception = direct ? 1 : frequencyFactor('perception', frequency_Hz);
  const letGo = direct ? 1 : frequencyFactor('letGo', frequency_Hz);
  const heart = (direct ? 1 : frequencyFactor('fibrillation', frequency_Hz)) * mass;
  const curve = (name: ZoneCurve, by: number): readonly ZonePoint[] =>
    times_s.map((time_s, index) => ({ time_s, amperes: ((table[name][index] ?? NaN) * by) / 1000 }));
  return {
    direct,
    perception_A: ((table.a[0] ?? NaN) * perception) / 1000,
    letGo_A: direct ? DIRECT_LET_GO_A : LET_GO_A * letGo,
    curves: {
      a: curve('a', perception),
      b: curve('b', letGo),
      c1: curve('c1', heart),
      c2: curve('c2', heart),
      c3: curve('c3', heart),
    },
  };
}

/** No direct current is known to hold anybody below this, A: pain at make and break only. IEC 60479-1, from memory. */
const DIRECT_LET_GO_A = 0.3;

/** How many times the 50 Hz current has this effect at a higher frequency; 1 up to 100 Hz. Straight in log and log between the points,
 *  held beyond 10 kHz. */
export function frequencyFactor(effect: keyof typeof FREQUENCY_FACTORS, frequency_Hz: number): number {
  const factors = FREQUENCY_FACTORS[effect];
  const after = FREQUENCIES_Hz.findIndex((frequency) => frequency_Hz < frequency);
  if (after === 0) return 1;
  if (after < 0) return factors.at(-1) ?? NaN;
  const [low_Hz = NaN, high_Hz = NaN] = FREQUENCIES_Hz.slice(after - 1, after + 1);
  const [low = NaN, high = NaN] = factors.slice(after - 1, after + 1);
  return low * (high / low) ** (Math.log(frequency_Hz / low_Hz) / Math.log(high_Hz / low_Hz));
}

/** Zones in order with the curve that leads into each. */
const STEPS = ['a', 'b', 'c1', 'c2', 'c3'] as const;

/** Zone of this heart current (A, left hand to feet) after this time (s). A current on a curve counts as beyond it, the careful side, but
 *  for curve a, which the first zone includes.
 *  @throws RangeError if either is negative or not a number */
export function zone(heart_A: number, time_s: number, limits: Limits = USUAL): Zone {
  if (!(heart_A >= 0 && time_s >= 0)) {
    throw new RangeError(`${heart_A} A for ${time_s} s: write a current and a time of zero or more`);
  }
  let reached = 0;
  STEPS.forEach((curve, step) => {
    if (reached_s(curve, heart_A, limits) <= time_s) reached = step + 1;
  });
  return named(reached, limits);
}

/** The zone in which nothing is felt. */
export function mildest(limits: Limits): Zone {
  return named(0, limits);
}

/** Instants (s from the start of this current) at which the zone changes, in order, with the zone that begins there. */
export function zoneChanges(
  heart_A: number,
  limits: Limits = USUAL,
): readonly { readonly time_s: number; readonly zone: Zone }[] {
  return STEPS.map((curve, step) => ({
    time_s: reached_s(curve, heart_A, limits),
    zone: named(step + 1, limits),
  })).filter(({ time_s }) => time_s > 0 && time_s < Infinity);
}

/** The digitised points of a boundary at 50 Hz for an adult, in order of time. Between them it is straight in log time and log current;
 *  before 10 ms and after 10 s it is held. */
export function zoneCurve(curve: ZoneCurve): readonly ZonePoint[] {
  return USUAL.curves[curve];
}

const USUAL = limitsAt(50);

function named(step: number, limits: Limits): Zone {
  return zones[limits.direct ? step + 6 : step] ?? 'AC-1';
}

/** First instant at which this current is on or beyond the curve, s; `Infinity` if never. The curves fall with time. */
function reached_s(curve: ZoneCurve, heart_A: number, { perception_A, curves }: Limits): number {
  if (curve === 'a') return heart_A > perception_A ? 0 : Infinity;
  const points = curves[curve];
  const next = points.findIndex(({ amperes }) => amperes <= heart_A);
  if (next <= 0) return next === 0 ? 0 : Infinity;
  const [before, after] = points.slice(next - 1, next + 1);
  if (!before || !after) return Infinity;
  const slope = Math.log(after.time_s / before.time_s) / Math.log(after.amperes / before.amperes);
  return after.time_s * (heart_A / after.amperes) ** slope;
}
