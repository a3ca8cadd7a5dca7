/** The numeric half of the solver: LDLᵀ by star–mesh elimination on a fixed pattern, without a single subtraction
 *  on the diagonal, so that an island hanging on 1 GΩ keeps all its digits. */
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import type { Pattern } from './pattern.ts';

/** Factors in memory that `refactor` overwrites. */
export interface Factors {
  readonly pattern: Pattern;
  /** Pairs (re, im), one array so that one check of bounds and one address serve all: first the slots of the pattern,
   *  which hold L (what a column passes on to each row, positive for a joint) and the excess to earth; then, size pairs
   *  each, one over the pivots and the work of `solve`. */
  readonly store: Float64Array;
  /** Work of `seenFrom`, size pairs a node asked for; all zero between calls. */
  reach: Float64Array;
}

/** Factors the nodal matrix of these admittances for the first time.
 *  @param admittance siemens: one a branch, then one a pair of each winding, as `analyse` counts them */
export function factor(pattern: Pattern, admittance: Phasors): Factors {
  const factors: Factors = {
    pattern,
    store: new Float64Array(pattern.pivots + 4 * pattern.size),
    reach: new Float64Array(6 * pattern.size),
  };
  refactor(factors, admittance);
  return factors;
}

/** Factors again with other admittances, in the same memory, allocating nothing. */
export function refactor(factors: Factors, admittance: Phasors): void {
  const { size, entries, pivots, plan } = factors.pattern;
  const s = factors.store;
  stamp(factors, admittance);
  let excess = 2 * entries;
  let pivot = pivots;
  let e = 0;
  let step = 0;
  for (let p = 0; p < size; p++, excess += 2, pivot += 2) {
    const degree = plan[step++]!;
    const er = s[excess]!;
    const ei = s[excess + 1]!;
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
      s[right]! += er * mr - ei * mi;
      s[right + 1]! += er * mi + ei * mr;
      s[target]! += ar * mr - ai * mi;
      s[target + 1]! += ar * mi + ai * mr;
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
    step = pair;
  }
}

/** Solves for the volts that these injected amperes raise; allocates nothing.
 *  @param injection A into each node, index = node (earth's is ignored)
 *  @param out V of each node against earth; may be `injection` itself */
export function solve(factors: Factors, injection: Phasors, out: Phasors): void {
  const { size, pivots, node, sweep } = factors.pattern;
  const s = factors.store;
  const x = pivots + 2 * size;
  const br = injection.re;
  const bi = injection.im;
  const vr = out.re;
  const vi = out.im;
  for (let p = 0, at = x; p < size; p++, at += 2) {
    const n = node[p]!;
    s[at] = br[n]!;
    s[at + 1] = bi[n]!;
  }
  // One loop over all slots, not one a column: columns of two slots are too short to loop over.
  const last = sweep.length;
  for (let e = 0; e < last; e += 2) {
    const column = sweep[e]!;
    const row = sweep[e + 1]!;
    const ar = s[column]!;
    const ai = s[column + 1]!;
    const lr = s[e]!;
    const li = s[e + 1]!;
    s[row]! += ar * lr - ai * li;
    s[row + 1]! += ar * li + ai * lr;
  }
  for (let at = x, pivot = pivots; pivot < x; at += 2, pivot += 2) {
    const ar = s[at]!;
    const ai = s[at + 1]!;
    const ir = s[pivot]!;
    const ii = s[pivot + 1]!;
    s[at] = ar * ir - ai * ii;
    s[at + 1] = ar * ii + ai * ir;
  }
  for (let e = last - 2; e >= 0; e -= 2) {
    const column = sweep[e]!;
    const row = sweep[e + 1]!;
    const ar = s[row]!;
    const ai = s[row + 1]!;
    const lr = s[e]!;
    const li = s[e + 1]!;
    s[column]! += ar * lr - ai * li;
    s[column + 1]! += ar * li + ai * lr;
  }
  vr[0] = 0;
  vi[0] = 0;
  for (let p = 0, at = x; p < size; p++, at += 2) {
    const n = node[p]!;
    vr[n] = s[at]!;
    vi[n] = s[at + 1]!;
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

/** Ω between each of these nodes and earth, and between each two of them, n×n row by row.
 *  Only the ways from the nodes to the last pivot are walked, so it costs far less than n solves. */
export function seenFrom(factors: Factors, nodes: readonly number[]): Phasors {
  const { size, pivots, position, next } = factors.pattern;
  const count = nodes.length;
  const s = factors.store;
  if (factors.reach.length < 2 * size * count) factors.reach = new Float64Array(2 * size * count);
  const reach = factors.reach;
  for (let n = 0; n < count; n++) passOn(factors, n * 2 * size, position[nodes[n]!]!);
  const out = phasors(count * count);
  for (let n = 0; n < count; n++) {
    const own = n * 2 * size;
    for (let m = 0; m <= n; m++) {
      const other = m * 2 * size;
      let sr = 0;
      let si = 0;
      for (let p = position[nodes[n]!]!; p >= 0; p = next[p]!) {
        const ar = reach[own + 2 * p]!;
        const ai = reach[own + 2 * p + 1]!;
        const br = reach[other + 2 * p]!;
        const bi = reach[other + 2 * p + 1]!;
        const ir = s[pivots + 2 * p]!;
        const ii = s[pivots + 2 * p + 1]!;
        const tr = ar * br - ai * bi;
        const ti = ar * bi + ai * br;
        sr += tr * ir - ti * ii;
        si += tr * ii + ti * ir;
      }
      out.re[n * count + m] = sr;
      out.im[n * count + m] = si;
      out.re[m * count + n] = sr;
      out.im[m * count + n] = si;
    }
  }
  for (let n = 0; n < count; n++) {
    for (let p = position[nodes[n]!]!; p >= 0; p = next[p]!) {
      reach[n * 2 * size + 2 * p] = 0;
      reach[n * 2 * size + 2 * p + 1] = 0;
    }
  }
  return out;
}

/** What 1 A into a position passes on to every position after it. */
function passOn({ pattern, store, reach }: Factors, base: number, start: number): void {
  const { starts, rows, next } = pattern;
  if (start < 0) return;
  reach[base + 2 * start] = 1;
  for (let p = start; p >= 0; p = next[p]!) {
    const ar = reach[base + 2 * p]!;
    const ai = reach[base + 2 * p + 1]!;
    const end = starts[p + 1]!;
    for (let e = starts[p]!; e < end; e++) {
      const row = base + 2 * rows[e]!;
      const lr = store[2 * e]!;
      const li = store[2 * e + 1]!;
      reach[row]! += ar * lr - ai * li;
      reach[row + 1]! += ar * li + ai * lr;
    }
  }
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
