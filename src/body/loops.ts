import type { Phasors } from '../electrics/index.ts';
import { carry, type Spoke } from './spoke.ts';

/** The loops of a star with two or three spokes: each spoke but the last out, home by the last. */
export interface Loops {
  readonly out: readonly Spoke[];
  readonly home: Spoke;
  /** Open-circuit volts round each loop. */
  readonly volts: Phasors;
  /** Impedance of the network in the loops, row by row, Ω, without the body. */
  readonly impedance: Phasors;
}

/** Relative change of every current at which the iteration ends; the step that met it is still taken. */
const STILL = 1e-12;
/** Rounding of a loop equation relative to the volts in it; nothing below can be told apart. */
const ROUNDING = 1e-15;
/** Newton's step is kept if it takes at least this share off the error. */
const WORTHWHILE = 0.1;
/** Newton needs about five; after this many only frozen steps are taken, each of which takes a third or more off the distance. */
const NEWTON_STEPS = 20;
const MOST_STEPS = 400;

// Working memory of one solve; nothing in it outlives the call.
const matrix = new Float64Array(16);
const residual = new Float64Array(4);
const step = new Float64Array(4);
const kept = new Float64Array(4);

/** Chooses the loops so that they share as little as possible: the two spokes that are farthest apart are never joined. */
export function makeLoops(spokes: readonly Spoke[], volts: Phasors, impedance: Phasors): Loops {
  const contacts = volts.re.length;
  const last = homeward(spokes, impedance, contacts);
  const home = spokes[last]!;
  const out = spokes.filter((spoke) => spoke !== home);
  const size = out.length;
  const loopVolts = { re: new Float64Array(size), im: new Float64Array(size) };
  const loopImpedance = { re: new Float64Array(size * size), im: new Float64Array(size * size) };
  const h = home.place;
  for (let i = 0; i < size; i++) {
    const p = out[i]!.place;
    loopVolts.re[i] = volts.re[p]! - volts.re[h]!;
    loopVolts.im[i] = volts.im[p]! - volts.im[h]!;
    for (let j = 0; j < size; j++) {
      const q = out[j]!.place;
      loopImpedance.re[i * size + j] = mesh(impedance.re, contacts, p, q, h);
      loopImpedance.im[i * size + j] = mesh(impedance.im, contacts, p, q, h);
    }
  }
  return { out, home, volts: loopVolts, impedance: loopImpedance };
}

function mesh(impedance: Float64Array, contacts: number, p: number, q: number, h: number): number {
  const own = impedance[p * contacts + q]! - impedance[p * contacts + h]!;
  return own - (impedance[h * contacts + q]! - impedance[h * contacts + h]!);
}

/** The spoke opposite the pair that is farthest apart. */
function homeward(spokes: readonly Spoke[], impedance: Phasors, contacts: number): number {
  if (spokes.length < 3) return spokes.length - 1;
  let farthest = -1;
  let best = 0;
  for (let k = 0; k < 3; k++) {
    const i = spokes[(k + 1) % 3]!;
    const j = spokes[(k + 2) % 3]!;
    const re = mesh(impedance.re, contacts, i.place, i.place, j.place);
    const im = mesh(impedance.im, contacts, i.place, i.place, j.place);
    const distance = Math.abs(re) + Math.abs(im) + i.ohm + j.ohm;
    if (distance > farthest) {
      farthest = distance;
      best = k;
    }
  }
  return best;
}

/** Finds the currents by Newton's method on the loop equations. Where that does not take the error down it steps with the resistances
 *  frozen instead, which comes nearer from anywhere (each limb's voltage rises less than in proportion to its current).
 *  Leaves the currents and resistances in the spokes.
 *  @returns steps taken
 *  @throws RangeError if the voltages or impedances are not finite */
export function solveLoops(loops: Loops, start?: Phasors): number {
  if (start) beginAt(loops, start);
  const floor = ROUNDING * (largest(loops.volts.re) + largest(loops.volts.im));
  let error = mismatch(loops);
  if (!(error < Infinity)) throw new RangeError('The voltages and impedances seen from a person must be finite');
  let frozen = false;
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    if (error <= floor) return steps - 1;
    const before = error;
    const newton: boolean = !frozen && steps <= NEWTON_STEPS;
    direction(loops, newton);
    if (advance(loops)) return steps;
    error = mismatch(loops);
    frozen = newton && error > before * (1 - WORTHWHILE);
    if (frozen) {
      retreat(loops);
      error = mismatch(loops);
    }
  }
  throw new RangeError('No current fits: the impedances seen from a person are not those of a passive network');
}

function beginAt(loops: Loops, start: Phasors): void {
  loops.out.forEach(({ place, re, im }, i) => {
    step[2 * i] = start.re[place]! - re;
    step[2 * i + 1] = start.im[place]! - im;
  });
  advance(loops);
}

/** Fills `residual` with what is left round each loop, V. @returns the sum of its sizes */
function mismatch({ out, home, volts, impedance }: Loops): number {
  const size = out.length;
  let sum = 0;
  for (let i = 0; i < size; i++) {
    const spoke = out[i]!;
    let re = volts.re[i]! - spoke.ohm * spoke.re + home.ohm * home.re;
    let im = volts.im[i]! - spoke.ohm * spoke.im + home.ohm * home.im;
    for (let j = 0; j < size; j++) {
      const r = impedance.re[i * size + j]!;
      const x = impedance.im[i * size + j]!;
      const other = out[j]!;
      re -= r * other.re - x * other.im;
      im -= r * other.im + x * other.re;
    }
    residual[2 * i] = re;
    residual[2 * i + 1] = im;
    sum += Math.abs(re) + Math.abs(im);
  }
  return sum;
}

/** Fills `step` with the change of current that would close the loops if the resistances stayed as they are or, with `bent`, followed
 *  their slope. */
function direction({ out, home, impedance }: Loops, bent: boolean): void {
  const size = out.length;
  const side = 2 * size;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      const r = impedance.re[i * size + j]!;
      const x = impedance.im[i * size + j]!;
      const at = 2 * i * side + 2 * j;
      matrix[at] = r;
      matrix[at + 1] = -x;
      matrix[at + side] = x;
      matrix[at + side + 1] = r;
      stamp(at, side, home, bent);
      if (i === j) stamp(at, side, out[i]!, bent);
    }
  }
  for (let row = 0; row < side; row++) step[row] = residual[row]!;
  eliminate(side);
}

function stamp(at: number, side: number, { ohm, bend, re, im }: Spoke, bent: boolean): void {
  const curve = bent ? bend : 0;
  matrix[at]! += ohm + curve * re * re;
  matrix[at + 1]! += curve * re * im;
  matrix[at + side]! += curve * re * im;
  matrix[at + side + 1]! += ohm + curve * im * im;
}

/** Solves `matrix` · x = `step` in place. No pivoting: the resistances make the matrix positive. */
function eliminate(side: number): void {
  for (let p = 0; p < side; p++) {
    const pivot = matrix[p * side + p]!;
    for (let row = p + 1; row < side; row++) {
      const share = matrix[row * side + p]! / pivot;
      for (let column = p + 1; column < side; column++)
        matrix[row * side + column]! -= share * matrix[p * side + column]!;
      step[row]! -= share * step[p]!;
    }
  }
  for (let row = side - 1; row >= 0; row--) {
    for (let column = row + 1; column < side; column++) step[row]! -= matrix[row * side + column]! * step[column]!;
    step[row]! /= matrix[row * side + row]!;
  }
}

/** Adds `step` to the currents. @returns whether they stood still already */
function advance({ out, home }: Loops): boolean {
  let homeRe = 0;
  let homeIm = 0;
  let whole = 0;
  for (const { re, im } of out) whole = Math.max(whole, Math.abs(re) + Math.abs(im));
  let still = true;
  for (let i = 0; i < out.length; i++) {
    const spoke = out[i]!;
    const dre = step[2 * i]!;
    const dim = step[2 * i + 1]!;
    kept[2 * i] = spoke.re;
    kept[2 * i + 1] = spoke.im;
    const re = spoke.re + dre;
    const im = spoke.im + dim;
    still &&= Math.abs(dre) + Math.abs(dim) <= STILL * (Math.abs(re) + Math.abs(im)) + ROUNDING * whole;
    carry(spoke, re, im);
    homeRe -= re;
    homeIm -= im;
  }
  carry(home, homeRe, homeIm);
  return still;
}

/** Takes the last `advance` back. */
function retreat({ out, home }: Loops): void {
  let homeRe = 0;
  let homeIm = 0;
  for (let i = 0; i < out.length; i++) {
    const re = kept[2 * i]!;
    const im = kept[2 * i + 1]!;
    carry(out[i]!, re, im);
    homeRe -= re;
    homeIm -= im;
  }
  carry(home, homeRe, homeIm);
}

function largest(values: Float64Array): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}
