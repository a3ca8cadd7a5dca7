import type { BreakerCurve } from './breakerCurve.ts';
import { fastestImage, middleImage, slowestImage } from './thermalImage.ts';

/** One row of the calibration table: what a moulded-case breaker up to this rating must do, times in s. */
export interface Ul489Frame {
  readonly upTo_A: number;
  /** Longest time at 135 % of the rating. */
  readonly at135_s: number;
  /** Longest time at 200 %, from cold. */
  readonly at200_s: number;
  /** Longest time at 300 % in a field test, from cold. */
  readonly at300_s: number;
}

/** Calibration in open air at 25 °C; every frame holds 100 % for ever.
 *  135 % and 200 %: UL 489 (10th edition 2002, 11th 2009). Seen second-hand: 1 h at 135 % up to 50 A, 2 min at 200 % up to 30 A; the
 *  rest from memory. 300 %: NEMA AB 4, thermal-magnetic up to 250 V, from memory; it has no row above 400 A, so the
 *  last row goes on with the 200 % time (assumption). */
const ul489Frames: readonly Ul489Frame[] = [
  { upTo_A: 30, at135_s: 3600, at200_s: 120, at300_s: 50 },
  { upTo_A: 50, at135_s: 3600, at200_s: 240, at300_s: 80 },
  { upTo_A: 100, at135_s: 7200, at200_s: 360, at300_s: 140 },
  { upTo_A: 150, at135_s: 7200, at200_s: 480, at300_s: 200 },
  { upTo_A: 225, at135_s: 7200, at200_s: 600, at300_s: 230 },
  { upTo_A: 400, at135_s: 7200, at200_s: 720, at300_s: 300 },
  { upTo_A: Infinity, at135_s: 7200, at200_s: 840, at300_s: 840 },
];

/** What the standard leaves open, so that a device can be drawn at all. */
const practice = {
  /** A fast device holds a little more than the 100 % it must: common practice, no source. */
  fastHolding: 1.05,
  /** A fast device at 200 % takes a tenth of the longest time allowed: about the fast edge of makers' bands; common practice, no source. */
  fastShare: 0.1,
  /** Magnetic band, multiples of the rating. The standard fixes none; makers' curves lie between about 5 and 20: from memory.
   *  5 is "certainly not yet", 20 is "certainly". */
  magneticFrom: 5,
  magneticTo: 20,
  /** Contacts part within half a cycle to one cycle of 60 Hz, s: common practice, no source. */
  opening_s: { fast: 1 / 120, middle: 1 / 80, slow: 1 / 60 },
} as const;

const curves: readonly BreakerCurve[] = ul489Frames.map((frame) => {
  const slow = slowestImage({ multiple: 1.35, heat: 0, within_s: frame.at135_s }, [
    { multiple: 2, heat: 0, within_s: frame.at200_s },
    { multiple: 3, heat: 0, within_s: frame.at300_s },
  ]);
  const fast = fastestImage(practice.fastHolding, [{ multiple: 2, for_s: frame.at200_s * practice.fastShare }]);
  return {
    images: { fast, middle: middleImage(fast, slow), slow },
    magneticFrom: practice.magneticFrom,
    magneticTo: practice.magneticTo,
    opening_s: practice.opening_s,
  };
});

/** The curve of a UL 489 breaker of this rating; ratings above 600 A are drawn as the 401–600 A frame. */
export function ul489Curve(rating_A: number): BreakerCurve {
  const row = ul489Frames.findIndex((frame) => rating_A <= frame.upTo_A);
  return curves[row] ?? unreachable(rating_A);
}

function unreachable(rating_A: number): never {
  throw new RangeError(`No UL 489 frame for ${rating_A} A: write a rating above zero`);
}
