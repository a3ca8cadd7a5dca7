/** From impedances to admittances: one a branch, one matrix a winding and a core, every bad value named. */
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import { couple, coresOf } from './cores.ts';
import type { Cores } from './cores.ts';
import { coupledBranches } from './network.ts';
import type { Network, Values } from './network.ts';

/** Admittances that `admit` overwrites. */
export interface Admittance {
  /** Siemens: one a branch, then one a pair of each winding and core; what `factor` reads. */
  readonly siemens: Phasors;
  /** Per branch |Z|², ohm². */
  readonly square: Float64Array;
  /** The branches that drive each other: of each winding, then of each core. */
  readonly coupled: readonly (readonly number[])[];
  /** For each of `coupled` the siemens between them, n×n row by row. */
  readonly wound: readonly Phasors[];
  /** Per branch 1 if it belongs to a winding, 2 if to a core. */
  readonly isWound: Uint8Array;
  readonly cores: Cores;
  readonly work: Phasors;
}

/** What no circuit has, and what leaves room for products of a few figures in double precision. */
const SIZES = 'one between 1e-50 and 1e50';
const LEAST_SQUARE = 1e-100;
const MOST_SQUARE = 1e100;

/** Room for the admittances of a network. */
export function admittanceOf(network: Network): Admittance {
  const count = network.branches.length;
  const isWound = new Uint8Array(count);
  let pairs = 0;
  let widest = 0;
  const coupled = coupledBranches(network);
  coupled.forEach((members, w) => {
    for (const b of members) isWound[b] = w < network.windings.length ? 1 : 2;
    pairs += (members.length * (members.length - 1)) / 2;
    widest = Math.max(widest, members.length);
  });
  return {
    siemens: phasors(count + pairs),
    square: new Float64Array(count),
    coupled,
    wound: coupled.map((members) => phasors(members.length ** 2)),
    isWound,
    cores: coresOf(network),
    work: phasors(widest ** 2),
  };
}

/** Writes the admittances of these values.
 *  @throws RangeError naming the branch whose impedance, EMF or injection is no finite number, or zero, or too small or large,
 *  and the windings whose impedance has no inverse */
export function admit(network: Network, values: Values, out: Admittance): void {
  const { siemens, square, isWound } = out;
  const zr = values.impedance.re;
  const zi = values.impedance.im;
  const er = values.emf.re;
  const ei = values.emf.im;
  const count = square.length;
  if (values.injection !== undefined) admitInjection(network, values.injection);
  for (let b = 0; b < count; b++) {
    if (!isSize(er[b]!, ei[b]!)) refuse(network, values, b);
    if (isWound[b] === 1) continue;
    const r = zr[b]!;
    const i = zi[b]!;
    const s = r * r + i * i;
    if (!(s >= LEAST_SQUARE && s <= MOST_SQUARE)) refuse(network, values, b);
    square[b] = s;
    siemens.re[b] = r / s;
    siemens.im[b] = -i / s;
  }
  const windings = network.windings.length;
  let pair = count;
  for (let w = 0; w < out.coupled.length; w++) {
    const members = out.coupled[w]!;
    const n = members.length;
    const y = out.wound[w]!;
    if (w < windings) invert(network, w, values.coupling[w]!, out.work, y);
    else couple(network, out.cores, w - windings, siemens, y);
    for (let k = 0; k < n; k++) {
      const b = members[k]!;
      const own = k * n + k;
      if (w < windings) square[b] = values.coupling[w]!.re[own]! ** 2 + values.coupling[w]!.im[own]! ** 2;
      siemens.re[b] = y.re[own]!;
      siemens.im[b] = y.im[own]!;
      for (let l = k + 1; l < n; l++, pair++) {
        siemens.re[pair] = (y.re[k * n + l]! + y.re[l * n + k]!) / 2;
        siemens.im[pair] = (y.im[k * n + l]! + y.im[l * n + k]!) / 2;
      }
    }
  }
}

/** Checks that values fit a network in number.
 *  @throws RangeError saying which array is too short or too long */
export function checkLengths(network: Network, values: Values): void {
  const count = network.branches.length;
  const { impedance, emf, injection, coupling } = values;
  if (fits(network, values)) return;
  for (const [name, array] of [
    ['impedance.re', impedance.re],
    ['impedance.im', impedance.im],
    ['emf.re', emf.re],
    ['emf.im', emf.im],
    ['injection.re', injection?.re ?? emf.re],
    ['injection.im', injection?.im ?? emf.im],
  ] as const) {
    if (array.length !== count) {
      throw new RangeError(`values.${name} has ${array.length} places; give one for each of the ${count} branches`);
    }
  }
  if (coupling.length !== network.windings.length) {
    throw new RangeError(`values.coupling has ${coupling.length} matrices; give one for each winding`);
  }
  network.windings.forEach(({ branches }, w) => {
    const wanted = branches.length ** 2;
    const matrix = coupling[w];
    if (matrix?.re.length !== wanted || matrix.im.length !== wanted) {
      throw new RangeError(`values.coupling[${w}] must have ${wanted} places, ${branches.length} × ${branches.length}`);
    }
  });
}

/** The same check without a word, and without allocating. */
function fits({ branches, windings }: Network, { impedance, emf, injection, coupling }: Values): boolean {
  const count = branches.length;
  if (impedance.re.length !== count || impedance.im.length !== count) return false;
  if (emf.re.length !== count || emf.im.length !== count) return false;
  if (injection !== undefined && (injection.re.length !== count || injection.im.length !== count)) return false;
  if (coupling.length !== windings.length) return false;
  for (let w = 0; w < windings.length; w++) {
    const wanted = windings[w]!.branches.length ** 2;
    if (coupling[w]!.re.length !== wanted || coupling[w]!.im.length !== wanted) return false;
  }
  return true;
}

function admitInjection(network: Network, { re, im }: Phasors): void {
  for (let b = 0; b < re.length; b++) {
    if (isSize(re[b]!, im[b]!)) continue;
    const name = network.branches[b]?.name ?? String(b);
    throw new RangeError(`branch "${name}": its injection is ${re[b]} + j${im[b]} A; write ${SIZES} A, or 0`);
  }
}

/** Says what is wrong with the values of a branch; silent if only a sum overflowed. */
function refuse(network: Network, values: Values, b: number): void {
  const name = network.branches[b]?.name ?? String(b);
  const re = values.impedance.re[b] ?? NaN;
  const im = values.impedance.im[b] ?? NaN;
  const parts = [values.emf.re[b] ?? NaN, values.emf.im[b] ?? NaN];
  if (!isSize(parts[0] ?? NaN, parts[1] ?? NaN)) {
    throw new RangeError(`branch "${name}": its EMF is ${parts.join(' + j')} V; write ${SIZES} V, or 0`);
  }
  if (!Number.isFinite(re) || !Number.isFinite(im)) {
    throw new RangeError(
      `branch "${name}": its impedance is ${re} + j${im} ohm; write a finite number, 1e9 if it is open`,
    );
  }
  if (re === 0 && im === 0) {
    throw new RangeError(
      `branch "${name}": its impedance is 0 ohm; nothing is ideal, write a small one such as 1e-4 ohm`,
    );
  }
  throw new RangeError(`branch "${name}": its impedance is ${re} + j${im} ohm; write ${SIZES} ohm`);
}

/** Whether a source is at rest or of a size that may be squared and multiplied. */
function isSize(re: number, im: number): boolean {
  const square = re * re + im * im;
  return (square >= LEAST_SQUARE && square <= MOST_SQUARE) || (re === 0 && im === 0);
}

/** Inverse of a winding's impedance by Gauss–Jordan elimination, into `out`. Without pivoting: a core and wires that
 *  only take power, never give it, leave no pivot small (R. Mathias, SIAM J. Matrix Anal. Appl. 13, 1992, from memory). */
function invert(network: Network, w: number, z: Phasors, work: Phasors, out: Phasors): void {
  const n = network.windings[w]!.branches.length;
  const ar = work.re;
  const ai = work.im;
  for (let r = 0; r < n; r++) {
    for (let c = 0; c < n; c++) {
      const at = r * n + c;
      ar[at] = z.re[at]!;
      ai[at] = z.im[at]!;
      out.re[at] = r === c ? 1 : 0;
      out.im[at] = 0;
      const skew = Math.abs(z.re[c * n + r]! - ar[at]!) + Math.abs(z.im[c * n + r]! - ai[at]!);
      if (!(skew <= 1e-9 * (Math.abs(ar[at]!) + Math.abs(ai[at]!)) && isSize(ar[at]!, ai[at]!))) {
        refuseWinding(network, w, 'is not a symmetric matrix of finite numbers; write the same both ways');
      }
    }
  }
  for (let r = 0; r < n; r++) {
    for (let c = 0; c < r; c++) {
      const shared = squareAt(z, r * n + c);
      if (shared * shared <= 1.0001 * squareAt(z, r * n + r) * squareAt(z, c * n + c)) continue;
      refuseWinding(network, w, 'is more between two than either has; no core couples more than all');
    }
  }
  for (let c = 0; c < n; c++) {
    const own = c * n + c;
    const square = ar[own]! ** 2 + ai[own]! ** 2;
    // 1e-26: less than 1e-13 left of a winding's own impedance means that no digit of the difference is sure.
    if (!(square > 1e-26 * (z.re[own]! ** 2 + z.im[own]! ** 2) && square < Infinity)) {
      refuseWinding(network, w, 'has no inverse; give each a resistance of its own');
    }
    const ir = ar[own]! / square;
    const ii = -ai[own]! / square;
    for (let k = c * n; k < c * n + n; k++) {
      multiply(ar, ai, k, ir, ii);
      multiply(out.re, out.im, k, ir, ii);
    }
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const fr = ar[r * n + c]!;
      const fi = ai[r * n + c]!;
      for (let k = 0; k < n; k++) {
        subtract(ar, ai, r * n + k, c * n + k, fr, fi);
        subtract(out.re, out.im, r * n + k, c * n + k, fr, fi);
      }
    }
  }
}

function squareAt({ re, im }: Phasors, at: number): number {
  return re[at]! ** 2 + im[at]! ** 2;
}

/** Multiplies one place by f. */
function multiply(re: Float64Array, im: Float64Array, at: number, fr: number, fi: number): void {
  const xr = re[at]!;
  const xi = im[at]!;
  re[at] = xr * fr - xi * fi;
  im[at] = xr * fi + xi * fr;
}

/** Takes f times one place from another. */
function subtract(re: Float64Array, im: Float64Array, at: number, other: number, fr: number, fi: number): void {
  const xr = re[other]!;
  const xi = im[other]!;
  re[at]! -= xr * fr - xi * fi;
  im[at]! -= xr * fi + xi * fr;
}

/** Says which windings cannot be solved. */
function refuseWinding(network: Network, w: number, what: string): never {
  const names = network.windings[w]?.branches.map((b) => `"${network.branches[b]?.name ?? b}"`) ?? [];
  throw new RangeError(`the impedance of the windings ${names.join(' and ')} ${what}`);
}
