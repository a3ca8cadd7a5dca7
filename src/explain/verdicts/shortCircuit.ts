import { abs, add, complex, div, mul, scale, sub, type Complex } from '../../electrics/index.ts';
import { across, at, type Standing } from './standing.ts';

/** Two nodes joined by nothing at all: what flows, round what, and where others stand while it lasts. */
export interface ShortCircuit {
  /** From the first node to the second. */
  readonly amperes: Complex;
  readonly loop: Complex;
  /** Volts r.m.s. between two of the nodes that were asked for. */
  between_V(one: number, other: number): number;
}

/** Shorts the first node to the second.
 *  @param others nodes whose volts are asked for while it lasts
 *  @param most_A what the source gives at most: beyond it its volts fold back, and all that it drives with them */
export function shorted(
  standing: Standing,
  first: number,
  second: number,
  others: readonly number[],
  most_A = Infinity,
): ShortCircuit {
  const nodes = [first, second, ...others];
  const seen = standing.solver.impedanceSeenFrom(nodes);
  const z = (row: number, column: number): Complex => at(seen, row * nodes.length + column);
  const loop = sub(add(z(0, 0), z(1, 1)), add(z(0, 1), z(1, 0)));
  const free = div(across(standing, first, second), loop);
  const share = Math.min(1, most_A / abs(free));
  const amperes = scale(free, share);
  const volts = nodes.map((node, index) =>
    add(scale(at(standing.volts, node), share), mul(amperes, sub(z(index, 1), z(index, 0)))),
  );
  const standsAt = (node: number): Complex => {
    const found = volts[nodes.indexOf(node)];
    if (found === undefined) throw new RangeError(`between_V: node ${node} was not asked for`);
    return found;
  };
  return { amperes, loop, between_V: (one, other) => abs(sub(standsAt(one), standsAt(other))) };
}

/** Largest current where all these lines are joined at one point, A. */
export function allShorted_A(standing: Standing, lines: readonly number[]): number {
  const seen = standing.solver.impedanceSeenFrom(lines);
  const count = lines.length;
  const last = count - 1;
  const z = (row: number, column: number): Complex => at(seen, row * count + column);
  // Every loop runs from a line to the last one: n − 1 equations in the currents of the others.
  const rows = Array.from({ length: last }, (_, row) => [
    ...Array.from({ length: last }, (__, column) =>
      add(sub(z(row, column), z(row, last)), sub(z(last, last), z(last, column))),
    ),
    across(standing, lines[row] ?? 0, lines[last] ?? 0),
  ]);
  const currents = eliminated(rows);
  const rest = currents.reduce(add, complex(0));
  return Math.max(...currents.map(abs), abs(rest));
}

/** Solves a small dense system given as rows with the right-hand side last; the largest pivot of each column is taken. */
function eliminated(rows: readonly (readonly Complex[])[]): readonly Complex[] {
  const left = rows.map((row) => [...row]);
  const size = left.length;
  const entry = (row: number, column: number): Complex => left[row]?.[column] ?? complex(0);
  for (let pivot = 0; pivot < size; pivot += 1) {
    let best = pivot;
    for (let row = pivot + 1; row < size; row += 1) if (abs(entry(row, pivot)) > abs(entry(best, pivot))) best = row;
    const chosen = left[best] ?? [];
    left[best] = left[pivot] ?? [];
    left[pivot] = chosen;
    for (let row = 0; row < size; row += 1) {
      if (row === pivot) continue;
      const factor = div(entry(row, pivot), entry(pivot, pivot));
      left[row] = (left[row] ?? []).map((value, column) => sub(value, mul(factor, entry(pivot, column))));
    }
  }
  return left.map((_, row) => div(entry(row, size), entry(row, row)));
}
