import type { Phasors } from '../electrics/index.ts';
import { carry, expect, MOST_CONTACTS, type Spokes } from './spokes.ts';

/** Relative change of every current at which steps with frozen resistances end; the step that met it is still taken. */
const STILL = 1e-12;
/** The same for a step of Newton's that stayed on its pieces of the curves: what it leaves is of the order of its square. */
const NEARLY_STILL = 1e-6;
/** Rounding of a loop equation relative to the volts in it; nothing below can be told apart. */
const ROUNDING = 1e-15;
/** Newton's step is kept if it takes at least this share off the error. */
const WORTHWHILE = 0.1;
/** A smaller part of Newton's step is not tried. */
const LEAST_PART = 1 / 16;
/** Newton needs about four; after this many only frozen steps are taken, each of which comes nearer. */
const NEWTON_STEPS = 20;
const MOST_STEPS = 400;

// Working memory of one solve; nothing in it outlives the call. Loop i goes out by spoke `way[i]` and home by spoke `home`.
const MOST_LOOPS = MOST_CONTACTS - 1;
const way = new Int32Array(MOST_LOOPS);
const volts = { re: new Float64Array(MOST_LOOPS), im: new Float64Array(MOST_LOOPS) };
const impedance = { re: new Float64Array(MOST_LOOPS ** 2), im: new Float64Array(MOST_LOOPS ** 2) };
const matrix = new Float64Array((2 * MOST_LOOPS) ** 2);
const residual = new Float64Array(2 * MOST_LOOPS);
const step = new Float64Array(2 * MOST_LOOPS);
const kept = new Float64Array(2 * MOST_LOOPS);
const away = new Float64Array(MOST_CONTACTS);
let size = 0;
let home = 0;

/** Finds the currents of a star by Newton's method on its loops: each spoke but one out, home by that one. Where Newton does not take
 *  the error down it steps with the resistances frozen instead, which comes nearer from anywhere (the voltage across no limb rises more
 *  than in proportion to its current). Leaves the currents and resistances in the spokes.
 *  @param open open-circuit volts at each contact
 *  @param seen impedance between the contacts, row by row, Ω
 *  @param most_V largest open-circuit voltage between two contacts
 *  @returns steps taken
 *  @throws RangeError if the voltages or impedances are not finite */
export function solveLoops(spokes: Spokes, open: Phasors, seen: Phasors, most_V: number, start?: Phasors): number {
  layLoops(spokes, open, seen);
  if (start) beginAt(spokes, start);
  else for (let k = 0; k < spokes.count; k++) expect(spokes, k, most_V / 2);
  const floor = ROUNDING * largest();
  let error = mismatch(spokes);
  if (!(error < Infinity)) throw new RangeError('The voltages and impedances seen from a person must be finite');
  let frozen = start === undefined;
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    if (error <= floor) return steps - 1;
    const before = error;
    const newton = !frozen && steps <= NEWTON_STEPS;
    direction(spokes, newton);
    if (advance(spokes, newton)) return steps;
    error = mismatch(spokes);
    frozen = false;
    // At a bend of a curve the whole step may lead too far: part of it still leads the right way.
    for (let part = 1; newton && error > before * (1 - WORTHWHILE * part); part /= 2) {
      retreat(spokes);
      frozen = part < LEAST_PART;
      if (frozen) {
        error = mismatch(spokes);
        break;
      }
      for (let i = 0; i < 2 * size; i++) step[i]! /= 2;
      advance(spokes, false);
      error = mismatch(spokes);
    }
  }
  throw new RangeError('No current fits: the impedances seen from a person are not those of a passive network');
}

/** Lays the loops so that they share as little as possible: home goes the spoke that is nearest to all the others together. */
function layLoops(spokes: Spokes, open: Phasors, seen: Phasors): void {
  const { count, place } = spokes;
  const contacts = open.re.length;
  home = homeward(spokes, seen, contacts);
  size = 0;
  for (let k = 0; k < count; k++) if (k !== home) way[size++] = k;
  const h = place[home]!;
  for (let i = 0; i < size; i++) {
    const p = place[way[i]!]!;
    volts.re[i] = open.re[p]! - open.re[h]!;
    volts.im[i] = open.im[p]! - open.im[h]!;
    for (let j = 0; j < size; j++) {
      const q = place[way[j]!]!;
      impedance.re[i * size + j] = mesh(seen.re, contacts, p, q, h);
      impedance.im[i * size + j] = mesh(seen.im, contacts, p, q, h);
    }
  }
}

function mesh(seen: Float64Array, contacts: number, p: number, q: number, h: number): number {
  const own = seen[p * contacts + q]! - seen[p * contacts + h]!;
  return own - (seen[h * contacts + q]! - seen[h * contacts + h]!);
}

function homeward({ count, place, ohm }: Spokes, seen: Phasors, contacts: number): number {
  if (count < 3) return count - 1;
  away.fill(0);
  for (let k = 1; k < count; k++) {
    const h = place[k]!;
    for (let i = 0; i < k; i++) {
      const p = place[i]!;
      const re = mesh(seen.re, contacts, p, p, h);
      const im = mesh(seen.im, contacts, p, p, h);
      const apart = Math.abs(re) + Math.abs(im) + ohm[i]! + ohm[k]!;
      away[i]! += apart;
      away[k]! += apart;
    }
  }
  let nearest = 0;
  for (let k = 1; k < count; k++) if (away[k]! < away[nearest]!) nearest = k;
  return nearest;
}

function beginAt(spokes: Spokes, start: Phasors): void {
  for (let i = 0; i < size; i++) {
    const place = spokes.place[way[i]!]!;
    step[2 * i] = start.re[place]!;
    step[2 * i + 1] = start.im[place]!;
  }
  advance(spokes, false);
}

/** Fills `residual` with what is left round each loop, V. @returns the sum of its sizes */
function mismatch({ ohm, re: ar, im: ai }: Spokes): number {
  const homeRe = ohm[home]! * ar[home]!;
  const homeIm = ohm[home]! * ai[home]!;
  let sum = 0;
  for (let i = 0; i < size; i++) {
    const k = way[i]!;
    let re = volts.re[i]! - ohm[k]! * ar[k]! + homeRe;
    let im = volts.im[i]! - ohm[k]! * ai[k]! + homeIm;
    for (let j = 0; j < size; j++) {
      const r = impedance.re[i * size + j]!;
      const x = impedance.im[i * size + j]!;
      const other = way[j]!;
      re -= r * ar[other]! - x * ai[other]!;
      im -= r * ai[other]! + x * ar[other]!;
    }
    residual[2 * i] = re;
    residual[2 * i + 1] = im;
    sum += Math.abs(re) + Math.abs(im);
  }
  return sum;
}

/** Fills `step` with the change of current that would close the loops if the resistances stayed as they are or, with `bent`, followed
 *  their slope. */
function direction(spokes: Spokes, bent: boolean): void {
  const { ohm, bend, re, im } = spokes;
  const side = 2 * size;
  const hc = bent ? bend[home]! : 0;
  const hr = re[home]!;
  const hi = im[home]!;
  const hrr = ohm[home]! + hc * hr * hr;
  const hri = hc * hr * hi;
  const hii = ohm[home]! + hc * hi * hi;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      const r = impedance.re[i * size + j]!;
      const x = impedance.im[i * size + j]!;
      const at = 2 * i * side + 2 * j;
      matrix[at] = r + hrr;
      matrix[at + 1] = hri - x;
      matrix[at + side] = hri + x;
      matrix[at + side + 1] = r + hii;
    }
    const k = way[i]!;
    const c = bent ? bend[k]! : 0;
    const kr = re[k]!;
    const ki = im[k]!;
    const at = 2 * i * side + 2 * i;
    matrix[at]! += ohm[k]! + c * kr * kr;
    matrix[at + 1]! += c * kr * ki;
    matrix[at + side]! += c * kr * ki;
    matrix[at + side + 1]! += ohm[k]! + c * ki * ki;
  }
  for (let row = 0; row < side; row++) step[row] = residual[row]!;
  eliminate(side);
}

/** Solves `matrix` · x = `step` in place, a block of two by two at a time. No pivoting: the resistances make every block positive. */
function eliminate(side: number): void {
  const m = matrix;
  for (let p = 0; p < side; p += 2) {
    const at = p * side + p;
    invert(at, side);
    for (let row = (p + 2) * side; row < side * side; row += 2 * side) {
      const below = row + side;
      const aa = m[row + p]! * m[at]! + m[row + p + 1]! * m[at + side]!;
      const ab = m[row + p]! * m[at + 1]! + m[row + p + 1]! * m[at + side + 1]!;
      const ba = m[below + p]! * m[at]! + m[below + p + 1]! * m[at + side]!;
      const bb = m[below + p]! * m[at + 1]! + m[below + p + 1]! * m[at + side + 1]!;
      for (let column = p + 2; column < side; column++) {
        const upper = m[p * side + column]!;
        const lower = m[p * side + side + column]!;
        m[row + column]! -= aa * upper + ab * lower;
        m[below + column]! -= ba * upper + bb * lower;
      }
      const r = row / side;
      step[r]! -= aa * step[p]! + ab * step[p + 1]!;
      step[r + 1]! -= ba * step[p]! + bb * step[p + 1]!;
    }
  }
  for (let p = side - 2; p >= 0; p -= 2) {
    const at = p * side + p;
    let upper = step[p]!;
    let lower = step[p + 1]!;
    for (let column = p + 2; column < side; column++) {
      upper -= m[p * side + column]! * step[column]!;
      lower -= m[p * side + side + column]! * step[column]!;
    }
    step[p] = m[at]! * upper + m[at + 1]! * lower;
    step[p + 1] = m[at + side]! * upper + m[at + side + 1]! * lower;
  }
}

/** Puts its inverse in the place of the block at this corner. */
function invert(at: number, side: number): void {
  const a = matrix[at]!;
  const b = matrix[at + 1]!;
  const c = matrix[at + side]!;
  const d = matrix[at + side + 1]!;
  const inverse = 1 / (a * d - b * c);
  matrix[at] = d * inverse;
  matrix[at + 1] = -b * inverse;
  matrix[at + side] = -c * inverse;
  matrix[at + side + 1] = a * inverse;
}

/** Adds `step` to the currents. @returns whether they stood still already */
function advance(spokes: Spokes, newton: boolean): boolean {
  let whole = 0;
  for (let i = 0; i < size; i++) {
    const k = way[i]!;
    whole = Math.max(whole, Math.abs(spokes.re[k]!) + Math.abs(spokes.im[k]!));
  }
  let homeRe = 0;
  let homeIm = 0;
  let still = true;
  let near = newton;
  for (let i = 0; i < size; i++) {
    const k = way[i]!;
    const dre = step[2 * i]!;
    const dim = step[2 * i + 1]!;
    kept[2 * i] = spokes.re[k]!;
    kept[2 * i + 1] = spokes.im[k]!;
    const re = spokes.re[k]! + dre;
    const im = spokes.im[k]! + dim;
    const change = Math.abs(dre) + Math.abs(dim);
    const size_A = Math.abs(re) + Math.abs(im);
    still &&= change <= STILL * size_A + ROUNDING * whole;
    near &&= change <= NEARLY_STILL * size_A;
    near = carried(spokes, k, re, im) && near;
    homeRe -= re;
    homeIm -= im;
  }
  // The way home counts too: where it carries the small difference of large currents, they are not still while it moves.
  near &&=
    Math.abs(homeRe - spokes.re[home]!) + Math.abs(homeIm - spokes.im[home]!) <=
    NEARLY_STILL * (Math.abs(homeRe) + Math.abs(homeIm));
  near = carried(spokes, home, homeRe, homeIm) && near;
  return still || near;
}

/** Puts this current in a spoke. @returns whether it stayed on its piece of the curve */
function carried(spokes: Spokes, k: number, re: number, im: number): boolean {
  const piece = spokes.piece[k]!;
  carry(spokes, k, re, im);
  return spokes.piece[k] === piece;
}

/** Takes the last `advance` back. */
function retreat(spokes: Spokes): void {
  let homeRe = 0;
  let homeIm = 0;
  for (let i = 0; i < size; i++) {
    const re = kept[2 * i]!;
    const im = kept[2 * i + 1]!;
    carry(spokes, way[i]!, re, im);
    homeRe -= re;
    homeIm -= im;
  }
  carry(spokes, home, homeRe, homeIm);
}

function largest(): number {
  let re = 0;
  let im = 0;
  for (let i = 0; i < size; i++) {
    re = Math.max(re, Math.abs(volts.re[i]!));
    im = Math.max(im, Math.abs(volts.im[i]!));
  }
  return re + im;
}
