/** The numeric half of the solver: LDLᵀ by star–mesh elimination on a fixed pattern, without a single subtraction
 *  on the diagonal, so that an island hanging on 1 GΩ keeps all its digits. */
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import type { Pattern } from './pattern.ts';

/** Factors in memory that `refactor` overwrites. */
export interface Factors {
  readonly pattern: Pattern;
  /** entries + size + 1 slots: L below the diagonal (positive = a joint), then what each position had to earth. */
  readonly lower: Phasors;
  /** size: one over the pivot. */
  readonly inverse: Phasors;
  /** size: work of `solve`. */
  readonly work: Phasors;
  /** The smallest pivot found, over the sum of the sizes of what it was summed from; 1 to 0. Near 0 = digits lost. */
  weakest: number;
}

/** Factors the nodal matrix of these admittances for the first time.
 *  @param admittance siemens: one a branch, then one a pair of each winding, as `analyse` counts them */
export function factor(pattern: Pattern, admittance: Phasors): Factors {
  const factors: Factors = {
    pattern,
    lower: phasors(pattern.entries + pattern.size + 1),
    inverse: phasors(pattern.size),
    work: phasors(pattern.size),
    weakest: 1,
  };
  refactor(factors, admittance);
  return factors;
}

/** Factors again with other admittances, in the same memory, allocating nothing. */
export function refactor(factors: Factors, admittance: Phasors): void {
  const { size, entries, starts, rows, targets } = factors.pattern;
  const wr = factors.lower.re;
  const wi = factors.lower.im;
  const dr = factors.inverse.re;
  const di = factors.inverse.im;
  stamp(factors, admittance);
  let weakest = 1;
  let pair = 0;
  for (let p = 0; p < size; p++) {
    const first = starts[p]!;
    const end = starts[p + 1]!;
    const er = wr[entries + p]!;
    const ei = wi[entries + p]!;
    let sr = er;
    let si = ei;
    let whole = Math.abs(er) + Math.abs(ei);
    for (let e = first; e < end; e++) {
      const r = wr[e]!;
      const i = wi[e]!;
      sr += r;
      si += i;
      whole += Math.abs(r) + Math.abs(i);
    }
    const square = sr * sr + si * si;
    const ir = sr / square;
    const ii = -si / square;
    dr[p] = ir;
    di[p] = ii;
    const left = Math.abs(sr) + Math.abs(si);
    if (!(left >= weakest * whole)) weakest = left / whole;
    for (let e = first; e < end; e++) {
      const ar = wr[e]!;
      const ai = wi[e]!;
      const lr = ar * ir - ai * ii;
      const li = ar * ii + ai * ir;
      const excess = entries + rows[e]!;
      wr[excess]! += er * lr - ei * li;
      wi[excess]! += er * li + ei * lr;
      for (let f = e + 1; f < end; f++) {
        const br = wr[f]!;
        const bi = wi[f]!;
        const t = targets[pair++]!;
        wr[t]! += br * lr - bi * li;
        wi[t]! += br * li + bi * lr;
      }
      wr[e] = lr;
      wi[e] = li;
    }
  }
  factors.weakest = weakest;
}

/** Solves for the volts that these injected amperes raise; allocates nothing.
 *  @param injection A into each node, index = node (earth's is ignored)
 *  @param out V of each node against earth; may be `injection` itself */
export function solve(factors: Factors, injection: Phasors, out: Phasors): void {
  const { size, position, starts, rows } = factors.pattern;
  const wr = factors.lower.re;
  const wi = factors.lower.im;
  const dr = factors.inverse.re;
  const di = factors.inverse.im;
  const xr = factors.work.re;
  const xi = factors.work.im;
  for (let node = 1; node <= size; node++) {
    const p = position[node]!;
    xr[p] = injection.re[node]!;
    xi[p] = injection.im[node]!;
  }
  for (let p = 0; p < size; p++) {
    const br = xr[p]!;
    const bi = xi[p]!;
    const end = starts[p + 1]!;
    for (let e = starts[p]!; e < end; e++) {
      const row = rows[e]!;
      const lr = wr[e]!;
      const li = wi[e]!;
      xr[row]! += br * lr - bi * li;
      xi[row]! += br * li + bi * lr;
    }
  }
  for (let p = size - 1; p >= 0; p--) {
    const br = xr[p]!;
    const bi = xi[p]!;
    let sr = br * dr[p]! - bi * di[p]!;
    let si = br * di[p]! + bi * dr[p]!;
    const end = starts[p + 1]!;
    for (let e = starts[p]!; e < end; e++) {
      const row = rows[e]!;
      const lr = wr[e]!;
      const li = wi[e]!;
      const yr = xr[row]!;
      const yi = xi[row]!;
      sr += yr * lr - yi * li;
      si += yr * li + yi * lr;
    }
    xr[p] = sr;
    xi[p] = si;
  }
  out.re[0] = 0;
  out.im[0] = 0;
  for (let node = 1; node <= size; node++) {
    const p = position[node]!;
    out.re[node] = xr[p]!;
    out.im[node] = xi[p]!;
  }
}

/** Ω between each of these nodes and earth, and between each two of them, n×n row by row.
 *  Only the ways from the nodes to the last pivot are walked, so it costs far less than n solves. */
export function seenFrom(factors: Factors, nodes: readonly number[]): Phasors {
  const { size, position, starts, rows } = factors.pattern;
  const wr = factors.lower.re;
  const wi = factors.lower.im;
  const dr = factors.inverse.re;
  const di = factors.inverse.im;
  const count = nodes.length;
  const reach = phasors(count * size);
  for (let n = 0; n < count; n++) {
    const base = n * size;
    let p = position[nodes[n]!]!;
    if (p < 0) continue;
    reach.re[base + p] = 1;
    for (;;) {
      const br = reach.re[base + p]!;
      const bi = reach.im[base + p]!;
      const first = starts[p]!;
      const end = starts[p + 1]!;
      for (let e = first; e < end; e++) {
        const row = base + rows[e]!;
        const lr = wr[e]!;
        const li = wi[e]!;
        reach.re[row]! += br * lr - bi * li;
        reach.im[row]! += br * li + bi * lr;
      }
      if (first === end) break;
      p = rows[first]!;
    }
  }
  const out = phasors(count * count);
  for (let n = 0; n < count; n++) {
    const a = n * size;
    for (let m = 0; m <= n; m++) {
      const b = m * size;
      let sr = 0;
      let si = 0;
      for (let p = position[nodes[n]!]!; p >= 0;) {
        const ar = reach.re[a + p]!;
        const ai = reach.im[a + p]!;
        const tr = ar * dr[p]! - ai * di[p]!;
        const ti = ar * di[p]! + ai * dr[p]!;
        const br = reach.re[b + p]!;
        const bi = reach.im[b + p]!;
        sr += tr * br - ti * bi;
        si += tr * bi + ti * br;
        p = starts[p] === starts[p + 1] ? -1 : rows[starts[p]!]!;
      }
      out.re[n * count + m] = sr;
      out.im[n * count + m] = si;
      out.re[m * count + n] = sr;
      out.im[m * count + n] = si;
    }
  }
  return out;
}

/** Adds every admittance to its slots. */
function stamp(factors: Factors, admittance: Phasors): void {
  const { slots, mutualSlots } = factors.pattern;
  const wr = factors.lower.re;
  const wi = factors.lower.im;
  wr.fill(0);
  wi.fill(0);
  const count = slots.length;
  for (let b = 0; b < count; b++) {
    const slot = slots[b]!;
    wr[slot]! += admittance.re[b]!;
    wi[slot]! += admittance.im[b]!;
  }
  for (let s = 0, m = count; s < mutualSlots.length; s += 4, m++) {
    const yr = admittance.re[m]!;
    const yi = admittance.im[m]!;
    wr[mutualSlots[s]!]! -= yr;
    wi[mutualSlots[s]!]! -= yi;
    wr[mutualSlots[s + 1]!]! += yr;
    wi[mutualSlots[s + 1]!]! += yi;
    wr[mutualSlots[s + 2]!]! += yr;
    wi[mutualSlots[s + 2]!]! += yi;
    wr[mutualSlots[s + 3]!]! -= yr;
    wi[mutualSlots[s + 3]!]! -= yi;
  }
}
