import type { Complex } from '../electrics/index.ts';
import { limbs } from './person.ts';
import type { Limb } from './person.ts';

/** The current left hand to feet that puts the heart at the same risk. */
export interface HeartCurrent {
  readonly amperes: number;
  /** Over the whole current through the body. */
  readonly factor: number;
  /** Where the current enters and leaves, in words: "right hand to left hand and feet". */
  readonly path: string;
}

/** Heart-current factors by path; left hand to feet is the reference. One foot counts as both.
 *  IEC TS 60479-1:2005 table 12 (1994: table 5), seen in a copy. */
const heartFactors: readonly (readonly [Limb, Limb, number])[] = [
  ['left hand', 'feet', 1],
  ['right hand', 'feet', 0.8],
  ['left hand', 'right hand', 0.4],
  ['back', 'right hand', 0.3],
  ['back', 'left hand', 0.7],
  ['chest', 'right hand', 1.3],
  ['chest', 'left hand', 1.5],
  ['seat', 'right hand', 0.7],
  ['seat', 'left hand', 0.7],
  ['left foot', 'right foot', 0.04],
];

/** Both hands to the feet: the same table. */
const BOTH_HANDS_TO_FEET = 1;
/** Paths the table leaves out (chest, back or seat to the feet or to each other): the largest factor it has for the chest, and that of
 *  the reference for the rest. An assumption on the careful side. */
const UNKNOWN_BY_CHEST = 1.5;
const UNKNOWN = 1;
/** A direct current downwards, the feet negative, needs about twice the amperes upwards. IEC 60479-1, from memory. */
const DOWNWARD = 0.5;

/** Factor between two places, whichever way the current goes. */
function factorBetween(one: Limb, other: Limb): number {
  return factors[limbs.indexOf(one)]?.[limbs.indexOf(other)] ?? UNKNOWN;
}

const factors = limbs.map((one) => limbs.map((other) => tabled(one, other)));

function tabled(one: Limb, other: Limb): number {
  const asFeet = (limb: Limb): Limb => (isFoot(limb) ? 'feet' : limb);
  for (const [a, b, factor] of heartFactors) {
    if ((a === one && b === other) || (a === other && b === one)) return factor;
    if ((a === asFeet(one) && b === asFeet(other)) || (a === asFeet(other) && b === asFeet(one))) return factor;
  }
  return one === 'chest' || other === 'chest' ? UNKNOWN_BY_CHEST : UNKNOWN;
}

function isFoot(limb: Limb): boolean {
  return limb === 'feet' || limb === 'left foot' || limb === 'right foot';
}

/** A way that carries less than this share of the whole is left out of the name of the path (not out of the current). */
const WORTH_NAMING = 0.01;

/** Current left hand to feet with the same effect on the heart (A), from the phasors into the body at each contact.
 *
 *  The trunk mixes what enters: each contact's current leaves by every other in proportion to what leaves there. Each such way
 *  counts by its factor, and all are added as if they met at the heart in one direction, the careful side. Where both hands lead to the
 *  feet, the right hand counts with the factor of both hands as far as the left carries as much. Currents out of phase are split into two
 *  sets a quarter turn apart, and the two are added as such. A single limb without any other counts in full.
 *  @param direct with direct current the sign counts: downwards is half as dangerous */
export function heartCurrent_A(into: Readonly<Partial<Record<Limb, Complex>>>, direct = false): HeartCurrent {
  const met = limbs.filter((limb) => into[limb] !== undefined);
  let whole = 0;
  let turn = { re: 0, im: 0 };
  for (const limb of met) {
    const { re, im } = into[limb] ?? { re: 0, im: 0 };
    whole = Math.max(whole, Math.hypot(re, im));
    turn = { re: turn.re + re * re - im * im, im: turn.im + 2 * re * im };
  }
  if (whole === 0) return { amperes: 0, factor: 0, path: 'none' };
  // The squares of currents in one phase all point one way, whatever their signs.
  const angle = Math.atan2(turn.im, turn.re) / 2;
  const inPhase = met.map((limb) => along(into[limb], angle));
  const quarter = met.map((limb) => along(into[limb], angle + Math.PI / 2));
  const amperes = Math.hypot(oneSet_A(met, inPhase, direct), direct ? 0 : oneSet_A(met, quarter, false));
  return { amperes, factor: amperes / whole, path: pathOf(met, inPhase) };
}

function along(current: Complex | undefined, angle: number): number {
  return current === undefined ? 0 : current.re * Math.cos(angle) + current.im * Math.sin(angle);
}

/** Heart current of currents in phase, counted into the body. */
function oneSet_A(met: readonly Limb[], into_A: readonly number[], direct: boolean): number {
  const entering = into_A.reduce((sum, amperes) => sum + Math.max(0, amperes), 0);
  const leaving = into_A.reduce((sum, amperes) => sum + Math.max(0, -amperes), 0);
  const through = Math.min(entering, leaving);
  const most = Math.max(entering, leaving);
  if (most === 0) return 0;
  // What goes nobody knows where counts in full.
  let sum = most - through;
  let leftDown = 0;
  let rightDown = 0;
  for (const [i, from] of met.entries()) {
    for (const [j, to] of met.entries()) {
      const amperes =
        (Math.max(0, into_A[i] ?? 0) * Math.max(0, -(into_A[j] ?? 0)) * through) / (entering * leaving || 1);
      if (amperes === 0) continue;
      const counts = direct && isFoot(to) && !isFoot(from) ? DOWNWARD : 1;
      sum += factorBetween(from, to) * counts * amperes;
      if (isFoot(from) || isFoot(to)) {
        if (from === 'left hand' || to === 'left hand') leftDown += counts * amperes;
        if (from === 'right hand' || to === 'right hand') rightDown += counts * amperes;
      }
    }
  }
  return sum + (BOTH_HANDS_TO_FEET - factorBetween('right hand', 'feet')) * Math.min(leftDown, rightDown);
}

function pathOf(met: readonly Limb[], into_A: readonly number[]): string {
  const most = Math.max(...into_A.map(Math.abs));
  const side = (sign: 1 | -1): readonly Limb[] =>
    met.filter((_, index) => sign * (into_A[index] ?? 0) >= WORTH_NAMING * most);
  const sides = [side(1), side(-1)].sort(
    (one, other) => Number(isLow(one)) - Number(isLow(other)) || one.length - other.length || leftFirst(one, other),
  );
  const [from = [], to = []] = sides;
  return from.length === 0 || to.length === 0 ? 'unknown' : `${named(from)} to ${named(to)}`;
}

/** Whether no hand is among them: such a side is told last. */
function isLow(side: readonly Limb[]): boolean {
  return !side.includes('left hand') && !side.includes('right hand');
}

function leftFirst(one: readonly Limb[], other: readonly Limb[]): number {
  const isLeft = (side: readonly Limb[]): boolean => side.some((limb) => limb.startsWith('left'));
  return Number(isLeft(other)) - Number(isLeft(one));
}

function named(side: readonly Limb[]): string {
  if (side.length === 2 && side.includes('left hand') && side.includes('right hand')) return 'both hands';
  return side.join(' and ');
}
