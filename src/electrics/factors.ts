/** The numeric half of the solver: LDLᵀ by star–mesh elimination on a fixed pattern, without a single subtraction
 *  on the diagonal, so that an island hanging on 1 GΩ keeps all its digits. */
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import type { Pattern } from './pattern.ts';

/** Factors in memory that `refactor` overwrites. */
export interface Factors {
  readonly pattern: Pattern;
  /** Pairs (re, im), one array so that one check of bounds and one address serve all: the slots of the pattern, which hold
   *  L (what a column passes on to each row, positive for a joint); the cells, which hold the excess to earth and the
   *  right-hand side; one over the pivots. */
  readonly store: Float64Array;
  /** Nothing into any node. */
  readonly rest: Phasors;
  /** Work of `seenFrom`, size pairs a node asked for; all zero between calls. */
  reach: Float64Array;
}

/** Factors the nodal matrix of these admittances for the first time.
 *  @param admittance siemens: one a branch, then one a pair of each winding, as `analyse` counts them */
export function factor(pattern: Pattern, admittance: Phasors): Factors {
  const factors: Factors = {
    pattern,
    store: new Float64Array(pattern.pivots + 2 * pattern.size),
    rest: phasors(pattern.size + 1),
    reach: new Float64Array(6 * pattern.size),
  };
  refactor(factors, admittance);
  return factors;
}

/** Factors again with other admittances, in the same memory, allocating nothing. */
export function refactor(factors: Factors, admittance: Phasors): void {
  eliminate(factors, admittance, factors.rest);
}

/** Factors again and solves, in one go: a third less time than `refactor` and `solve`. Allocates nothing.
 *  @param injection A into each node, index = node (earth's is ignored)
 *  @param out V of each node against earth; may be `injection` itself */
export function refactorAndSolve(factors: Factors, admittance: Phasors, injection: Phasors, out: Phasors): void {
  eliminate(factors, admittance, injection);
  substituteBack(factors, out);
}

/** Solves with the factors as they are for the volts that these injected amperes raise; allocates nothing.
 *  @param injection A into each node, index = node (earth's is ignored)
 *  @param out V of each node against earth; may be `injection` itself */
export function solve(factors: Factors, injection: Phasors, out: Phasors): void {
  const { size, cells, pivots, node, starts, rows } = factors.pattern;
  const s = factors.store;
  const br = injection.re;
  const bi = injection.im;
  for (let p = 0, at = cells; p < size; p++, at += 4) {
    const n = node[p]!;
    s[at + 2] = br[n]!;
    s[at + 3] = bi[n]!;
  }
  for (let p = 0, e = 0, at = cells, pivot = pivots; p < size; p++, at += 4, pivot += 2) {
    const end = starts[p + 1]!;
    const xr = s[at + 2]!;
    const xi = s[at + 3]!;
    // Amperes into a few nodes, such as a person's, pass few others on their way.
    if (xr === 0 && xi === 0) {
      e = end;
      continue;
    }
    const ir = s[pivot]!;
    const ii = s[pivot + 1]!;
    for (; e < end; e++) {
      const row = rows[e]!;
      const lr = s[2 * e]!;
      const li = s[2 * e + 1]!;
      s[row + 2]! += xr * lr - xi * li;
      s[row + 3]! += xr * li + xi * lr;
    }
    s[at + 2] = xr * ir - xi * ii;
    s[at + 3] = xr * ii + xi * ir;
  }
  substituteBack(factors, out);
}

/** Eliminates node after node, a right-hand side with them. */
function eliminate(factors: Factors, admittance: Phasors, injection: Phasors): void {
  const { size, cells, pivots, plan, node } = factors.pattern;
  const s = factors.store;
  const jr = injection.re;
  const ji = injection.im;
  stamp(factors, admittance);
  let cell = cells;
  let pivot = pivots;
  let e = 0;
  let step = 0;
  for (let p = 0; p < size; p++, cell += 4, pivot += 2) {
    const degree = plan[step++]!;
    const n = node[p]!;
    const er = s[cell]!;
    const ei = s[cell + 1]!;
    const xr = s[cell + 2]! + jr[n]!;
    const xi = s[cell + 3]! + ji[n]!;
    // Most nodes have two neighbours, being somewhere along a wire: written out, they take half the time.
    if (degree === 2) {
      const ar = s[e]!;
      const ai = s[e + 1]!;
      const br = s[e + 2]!;
      const bi = s[e + 3]!;
      const sr = er + ar + br;
      const si = ei + ai + bi;
      const square = 1 / (sr * sr + si * si);
      const ir = sr * square;
      const ii = -si * square;
      const lr = ar * ir - ai * ii;
      const li = ar * ii + ai * ir;
      const mr = br * ir - bi * ii;
      const mi = br * ii + bi * ir;
      const left = plan[step]!;
      const right = plan[step + 1]!;
      const target = plan[step + 2]!;
      s[pivot] = ir;
      s[pivot + 1] = ii;
      s[e] = lr;
      s[e + 1] = li;
      s[e + 2] = mr;
      s[e + 3] = mi;
      s[left]! += er * lr - ei * li;
      s[left + 1]! += er * li + ei * lr;
      s[left + 2]! += xr * lr - xi * li;
      s[left + 3]! += xr * li + xi * lr;
      s[right]! += er * mr - ei * mi;
      s[right + 1]! += er * mi + ei * mr;
      s[right + 2]! += xr * mr - xi * mi;
      s[right + 3]! += xr * mi + xi * mr;
      s[target]! += ar * mr - ai * mi;
      s[target + 1]! += ar * mi + ai * mr;
      s[cell + 2] = xr * ir - xi * ii;
      s[cell + 3] = xr * ii + xi * ir;
      step += 3;
      e += 4;
      continue;
    }
    const end = e + 2 * degree;
    let sr = er;
    let si = ei;
    for (let k = e; k < end; k += 2) {
      sr += s[k]!;
      si += s[k + 1]!;
    }
    const square = 1 / (sr * sr + si * si);
    const ir = sr * square;
    const ii = -si * square;
    s[pivot] = ir;
    s[pivot + 1] = ii;
    let pair = step + degree;
    for (; e < end; e += 2) {
      const ar = s[e]!;
      const ai = s[e + 1]!;
      const lr = ar * ir - ai * ii;
      const li = ar * ii + ai * ir;
      const row = plan[step++]!;
      s[row]! += er * lr - ei * li;
      s[row + 1]! += er * li + ei * lr;
      s[row + 2]! += xr * lr - xi * li;
      s[row + 3]! += xr * li + xi * lr;
      for (let f = e + 2; f < end; f += 2) {
        const br = s[f]!;
        const bi = s[f + 1]!;
        const target = plan[pair++]!;
        s[target]! += br * lr - bi * li;
        s[target + 1]! += br * li + bi * lr;
      }
      s[e] = lr;
      s[e + 1] = li;
    }
    s[cell + 2] = xr * ir - xi * ii;
    s[cell + 3] = xr * ii + xi * ir;
    step = pair;
  }
}

/** From the right-hand side that elimination left in the cells to volts. */
function substituteBack(factors: Factors, out: Phasors): void {
  const { size, entries, cells, starts, rows, node } = factors.pattern;
  const s = factors.store;
  const vr = out.re;
  const vi = out.im;
  vr[0] = 0;
  vi[0] = 0;
  for (let p = size - 1, e = entries, at = cells + 4 * p; p >= 0; p--, at -= 4) {
    const start = starts[p]!;
    let xr = s[at + 2]!;
    let xi = s[at + 3]!;
    while (e > start) {
      e--;
      const row = rows[e]!;
      const ar = s[row + 2]!;
      const ai = s[row + 3]!;
      const lr = s[2 * e]!;
      const li = s[2 * e + 1]!;
      xr += ar * lr - ai * li;
      xi += ar * li + ai * lr;
    }
    s[at + 2] = xr;
    s[at + 3] = xi;
    const n = node[p]!;
    vr[n] = xr;
    vi[n] = xi;
  }
}

/** The largest share that a pivot passes on, |L|; 1 at most where only resistances meet, and large where reactances
 *  cancel at a node and digits are lost. No number if a pivot was nothing. */
export function growth({ pattern, store }: Factors): number {
  let most = 0;
  for (let e = 0; e < 2 * pattern.entries; e++) {
    const here = Math.abs(store[e]!);
    if (!(here <= most)) most = here;
  }
  for (let at = pattern.pivots; at < pattern.pivots + 2 * pattern.size; at++) {
    if (!Number.isFinite(store[at]!)) return NaN;
  }
  return most;
}

/** Adds every admittance to its slot. */
function stamp({ pattern, store: s }: Factors, { re, im }: Phasors): void {
  const { pivots, slots, mutualSlots } = pattern;
  s.fill(0, 0, pivots);
  const count = slots.length;
  for (let b = 0; b < count; b++) {
    const slot = slots[b]!;
    s[slot]! += re[b]!;
    s[slot + 1]! += im[b]!;
  }
  for (let k = 0, m = count; k < mutualSlots.length; k += 4, m++) {
    const yr = re[m]!;
    const yi = im[m]!;
    for (let corner = 0; corner < 4; corner++) {
      const slot = mutualSlots[k + corner]!;
      // Like ends of two windings repel, unlike ends attract.
      const sign = corner === 0 || corner === 3 ? -1 : 1;
      s[slot]! += sign * yr;
      s[slot + 1]! += sign * yi;
    }
  }
}
