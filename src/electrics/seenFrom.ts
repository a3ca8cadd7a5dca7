/** What a set of nodes sees of the network, from the factors alone. */
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import type { Factors } from './factors.ts';

/** Ω between each of these nodes and earth, and between each two of them, n×n row by row.
 *  Only the ways from the nodes to the last pivot are walked, so it costs far less than n solves.
 *  @param out written to, if it is given */
export function seenFrom(factors: Factors, nodes: readonly number[], out = phasors(nodes.length ** 2)): Phasors {
  const { size, pivots, position, next } = factors.pattern;
  const count = nodes.length;
  const s = factors.store;
  if (factors.reach.length < 2 * size * count) factors.reach = new Float64Array(2 * size * count);
  const reach = factors.reach;
  for (let n = 0; n < count; n++) passOn(factors, n * 2 * size, position[nodes[n]!]!);
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
  const { cells, starts, rows, next } = pattern;
  if (start < 0) return;
  reach[base + 2 * start] = 1;
  for (let p = start; p >= 0; p = next[p]!) {
    const ar = reach[base + 2 * p]!;
    const ai = reach[base + 2 * p + 1]!;
    const end = starts[p + 1]!;
    for (let e = starts[p]!; e < end; e++) {
      const row = base + ((rows[e]! - cells) >> 1);
      const lr = store[2 * e]!;
      const li = store[2 * e + 1]!;
      reach[row]! += ar * lr - ai * li;
      reach[row + 1]! += ar * li + ai * lr;
    }
  }
}
