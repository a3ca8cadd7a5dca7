/** The bakery's nodal matrix as any other solver wants it. */
import { add, complex, div, mul, neg, phasor, phasors, sub } from '../../../src/electrics/index.ts';
import type { Complex, Network, Phasors, Values } from '../../../src/electrics/index.ts';

/** Siemens as `factor` reads them: one a branch, then the mutual one of each winding of two. */
export function admittances(network: Network, values: Values): Phasors {
  const count = network.branches.length;
  const out = phasors(count + network.windings.length);
  const put = (at: number, { re, im }: Complex): void => {
    out.re[at] = re;
    out.im[at] = im;
  };
  network.branches.forEach((_, b) => put(b, div(complex(1), phasor(values.impedance, b))));
  network.windings.forEach(({ branches }, w) => {
    const [first, second, ...more] = branches;
    if (first === undefined || second === undefined || more.length > 0) {
      throw new RangeError('the bench knows windings of two halves');
    }
    const z = values.coupling[w]!;
    const determinant = sub(mul(phasor(z, 0), phasor(z, 3)), mul(phasor(z, 1), phasor(z, 2)));
    put(first, div(phasor(z, 3), determinant));
    put(second, div(phasor(z, 0), determinant));
    put(count + w, div(neg(phasor(z, 1)), determinant));
  });
  return out;
}

/** A into each node from the EMFs, index = node. */
export function injections(network: Network, values: Values, siemens: Phasors): Phasors {
  const out = phasors(network.nodes.length);
  for (const [b, other, y] of pairs(network, siemens)) {
    const { re, im } = mul(y, phasor(values.emf, other));
    const { from, to } = network.branches[b]!;
    out.re[from]! -= re;
    out.im[from]! -= im;
    out.re[to]! += re;
    out.im[to]! += im;
  }
  return out;
}

/** The matrix without earth, row by row, its zeros left out. */
export function nodalRows(network: Network, siemens: Phasors): readonly ReadonlyMap<number, Complex>[] {
  const rows = Array.from({ length: network.nodes.length - 1 }, () => new Map<number, Complex>());
  const put = (row: number, column: number, value: Complex): void => {
    if (row === 0 || column === 0) return;
    const cells = rows[row - 1]!;
    cells.set(column - 1, add(cells.get(column - 1) ?? complex(0), value));
  };
  for (const [b, other, y] of pairs(network, siemens)) {
    const here = network.branches[b]!;
    const there = network.branches[other]!;
    put(here.from, there.from, y);
    put(here.to, there.to, y);
    put(here.from, there.to, neg(y));
    put(here.to, there.from, neg(y));
  }
  return rows;
}

/** Every branch with itself, and the two halves of every winding with each other, both ways. */
function pairs(network: Network, siemens: Phasors): readonly (readonly [number, number, Complex])[] {
  const count = network.branches.length;
  const own = network.branches.map((_, b) => [b, b, phasor(siemens, b)] as const);
  const mutual = network.windings.flatMap(({ branches: [first = 0, second = 0] }, w) => {
    const y = phasor(siemens, count + w);
    return [[first, second, y] as const, [second, first, y] as const];
  });
  return [...own, ...mutual];
}
