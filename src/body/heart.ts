import type { Limb } from './person.ts';

/** Ways through a body by where the current enters and leaves. */
export type HeartPath =
  | 'none'
  | 'left hand to right hand'
  | 'left hand to feet'
  | 'right hand to feet'
  | 'both hands to feet'
  | 'left hand to right hand and feet'
  | 'right hand to left hand and feet'
  | 'unknown';

/** The current left hand to feet that puts the heart at the same risk. */
export interface HeartCurrent {
  readonly amperes: number;
  /** Over the whole current through the body. */
  readonly factor: number;
  readonly path: HeartPath;
}

/** Heart-current factors by path; left hand to feet is the reference.
 *  IEC TS 60479-1:2005 table 12 (1994: table 5), seen in a copy. */
const heartFactors = {
  'left hand to feet': 1,
  'both hands to feet': 1,
  'left hand to right hand': 0.4,
  'right hand to feet': 0.8,
} as const;

/** A way that carries less than this share of the whole is left out of the name of the path (not out of the current). */
const WORTH_NAMING = 0.01;

/** Current left hand to feet with the same effect on the heart (A), from the r.m.s. amperes at each limb.
 *
 *  Each pair of limbs is given the one current that adds up to what all limbs carry; each such way counts by its factor, and the ways
 *  are added as if in phase, the careful side. Where both hands lead to the feet, the right hand counts with the factor of both
 *  hands as far as the left hand carries as much. A single limb without any other counts in full. */
export function heartCurrent_A(limbAmperes: Readonly<Partial<Record<Limb, number>>>): HeartCurrent {
  const left = limbAmperes['left hand'] ?? 0;
  const right = limbAmperes['right hand'] ?? 0;
  const feet = limbAmperes.feet ?? 0;
  const whole = Math.max(left, right, feet);
  if (whole === 0) return { amperes: 0, factor: 0, path: 'none' };
  if (left + right + feet === whole) return { amperes: whole, factor: 1, path: 'unknown' };
  const across = Math.max(0, (left + right - feet) / 2);
  const leftDown = Math.max(0, (left + feet - right) / 2);
  const rightDown = Math.max(0, (right + feet - left) / 2);
  const rightAlone = Math.max(0, rightDown - leftDown);
  const amperes =
    heartFactors['left hand to right hand'] * across +
    heartFactors['left hand to feet'] * leftDown +
    heartFactors['both hands to feet'] * (rightDown - rightAlone) +
    heartFactors['right hand to feet'] * rightAlone;
  return { amperes, factor: amperes / whole, path: pathOf(left / whole, right / whole, feet / whole) };
}

function pathOf(left: number, right: number, feet: number): HeartPath {
  if (left < WORTH_NAMING) return 'right hand to feet';
  if (right < WORTH_NAMING) return 'left hand to feet';
  if (feet < WORTH_NAMING) return 'left hand to right hand';
  if (feet >= left && feet >= right) return 'both hands to feet';
  return left > right ? 'left hand to right hand and feet' : 'right hand to left hand and feet';
}
