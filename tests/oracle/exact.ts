/** A solver without rounding, for small networks: every double is a fraction, so Kirchhoff's and Ohm's laws are solved
 *  in whole numbers by fraction-free elimination (E. H. Bareiss, Math. Comp. 22, 1968) and rounded once at the end. */
import type { Network, Solution, Values } from '../../src/electrics/index.ts';

/** A Gaussian integer. */
interface Whole {
  readonly re: bigint;
  readonly im: bigint;
}

const NOTHING: Whole = { re: 0n, im: 0n };
/** Every value is multiplied by 2^BITS; a value with digits below that is refused. */
const BITS = 120;

/** V of every node and A of every branch, right to the last digit.
 *  @throws RangeError if a value has digits below 2^−120, or the network has no single solution */
export function solveExactly(network: Network, values: Values): Solution {
  const nodes = network.nodes.length - 1;
  const count = network.branches.length;
  const { cores = [] } = network;
  const size = nodes + count + cores.length;
  const one = { re: 1n << BigInt(BITS), im: 0n };
  const { injection } = values;
  /** What the injected amperes of Kirchhoff's law are written in, if there are any. */
  const unit = injection ? one : { re: 1n, im: 0n };
  const injected = (b: number): Whole => (injection ? whole(injection.re[b]!, injection.im[b]!) : NOTHING);
  const rows: Whole[][] = Array.from({ length: size }, () => Array.from({ length: size + 1 }, () => NOTHING));
  const set = (row: number, column: number, value: Whole): void => {
    rows[row]![column] = plus(rows[row]![column]!, value);
  };
  network.branches.forEach(({ from, to }, b) => {
    const law = nodes + b;
    if (from !== to) {
      if (from > 0) set(from - 1, nodes + b, unit);
      if (to > 0) set(to - 1, nodes + b, minus(unit));
      if (from > 0) set(from - 1, size, minus(injected(b)));
      if (to > 0) set(to - 1, size, injected(b));
      if (from > 0) set(law, from - 1, one);
      if (to > 0) set(law, to - 1, minus(one));
    }
    set(law, size, minus(whole(values.emf.re[b]!, values.emf.im[b]!)));
    if (network.windings.every(({ branches }) => !branches.includes(b))) {
      set(law, nodes + b, minus(whole(values.impedance.re[b]!, values.impedance.im[b]!)));
    }
  });
  network.windings.forEach(({ branches }, w) => {
    const z = values.coupling[w]!;
    branches.forEach((b, k) =>
      branches.forEach((other, l) => {
        const at = k * branches.length + l;
        set(nodes + b, nodes + other, minus(whole(z.re[at]!, z.im[at]!)));
      }),
    );
  });
  cores.forEach(({ branches, turns }, c) => {
    const law = nodes + count + c;
    branches.forEach((b, k) => {
      set(law, nodes + b, whole(turns[k]!, 0));
      set(nodes + b, law, minus(whole(turns[k]!, 0)));
    });
  });
  const { determinant, numerators } = bareiss(rows);
  const solution = {
    volts: { re: new Float64Array(nodes + 1), im: new Float64Array(nodes + 1) },
    amperes: { re: new Float64Array(count), im: new Float64Array(count) },
  };
  numerators.forEach((numerator, k) => {
    const { re, im } = times(numerator, { re: determinant.re, im: -determinant.im });
    const square = determinant.re * determinant.re + determinant.im * determinant.im;
    if (k < nodes) {
      solution.volts.re[k + 1] = quotient(re, square);
      solution.volts.im[k + 1] = quotient(im, square);
    } else if (k < nodes + count) {
      // The unknown is what goes through the impedance; what is injected beside it comes on top.
      const beside = injected(k - nodes);
      solution.amperes.re[k - nodes] = quotient(re * one.re + beside.re * square, square * one.re);
      solution.amperes.im[k - nodes] = quotient(im * one.re + beside.im * square, square * one.re);
    }
  });
  return solution;
}

/** Upper triangle by fraction-free elimination, then X = determinant · x row by row from below. */
function bareiss(rows: Whole[][]): { determinant: Whole; numerators: Whole[] } {
  const size = rows.length;
  let before: Whole = { re: 1n, im: 0n };
  for (let k = 0; k < size; k++) {
    const best = rows.findIndex((row, r) => r >= k && !isNothing(row[k]!));
    if (best < 0) throw new RangeError('solveExactly: the network has no single solution');
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    const top = rows[k]!;
    for (let r = k + 1; r < size; r++) {
      const row = rows[r]!;
      const factor = row[k]!;
      for (let c = k; c <= size; c++) {
        if (isNothing(row[c]!) && (isNothing(factor) || isNothing(top[c]!))) continue;
        row[c] = exactly(plus(times(row[c]!, top[k]!), minus(times(factor, top[c]!))), before);
      }
    }
    before = top[k]!;
  }
  const determinant = rows[size - 1]![size - 1]!;
  const numerators: Whole[] = Array.from({ length: size }, () => NOTHING);
  for (let r = size - 1; r >= 0; r--) {
    const row = rows[r]!;
    let sum = times(determinant, row[size]!);
    for (let c = r + 1; c < size; c++) sum = plus(sum, minus(times(row[c]!, numerators[c]!)));
    numerators[r] = exactly(sum, row[r]!);
  }
  return { determinant, numerators };
}

function plus(a: Whole, b: Whole): Whole {
  return { re: a.re + b.re, im: a.im + b.im };
}

function minus(a: Whole): Whole {
  return { re: -a.re, im: -a.im };
}

function times(a: Whole, b: Whole): Whole {
  if (isNothing(a) || isNothing(b)) return NOTHING;
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

function isNothing(a: Whole): boolean {
  return a.re === 0n && a.im === 0n;
}

/** A division that must leave no rest. */
function exactly(a: Whole, b: Whole): Whole {
  if (b.im === 0n && b.re === 1n) return a;
  const square = b.re * b.re + b.im * b.im;
  const { re, im } = times(a, { re: b.re, im: -b.im });
  if (re % square !== 0n || im % square !== 0n) throw new RangeError('solveExactly: a division left a rest');
  return { re: re / square, im: im / square };
}

/** A complex double times 2^BITS. */
function whole(re: number, im: number): Whole {
  return { re: wholePart(re), im: wholePart(im) };
}

function wholePart(value: number): bigint {
  if (value === 0) return 0n;
  let mantissa = value;
  let shift = BITS;
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    shift--;
  }
  if (shift < 0) throw new RangeError(`solveExactly: ${value} has digits below 2^-${BITS}`);
  return BigInt(mantissa) << BigInt(shift);
}

/** a / b rounded once, b > 0. */
function quotient(a: bigint, b: bigint): number {
  if (a === 0n) return 0;
  const top = a < 0n ? -a : a;
  const shift = b.toString(2).length - top.toString(2).length + 64;
  const ratio = shift >= 0 ? (top << BigInt(shift)) / b : top / (b << BigInt(-shift));
  return (a < 0n ? -1 : 1) * Number(ratio) * 2 ** -shift;
}
