/** Windings on ideal cores: with D = diag(1/Z) and n the turns, I = D·V − D·n·U and nᵀ·I = 0, so that the siemens between
 *  the windings are D − D·n·nᵀ·D / (nᵀ·D·n) and U = nᵀ·D·V / (nᵀ·D·n). */
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import type { Network } from './network.ts';

/** The cores of a network and what they are at. */
export interface Cores {
  readonly members: readonly (readonly number[])[];
  readonly turns: readonly Float64Array[];
  /** Per core the largest of its turns. */
  readonly most: Float64Array;
  /** Per core and winding D·n / (nᵀ·D·n), one over turns. */
  readonly share: readonly Phasors[];
  /** Per core 1 / (nᵀ·D·n), ohm a turn squared. */
  readonly reluctance: Phasors;
  /** Per core U, volts a turn. */
  readonly perTurn: Phasors;
  /** Per core nᵀ·I, the ampere-turns left over; nothing when solved. */
  readonly excess: Phasors;
}

/** The cores of a network, with room for their values. */
export function coresOf({ cores = [] }: Network): Cores {
  return {
    members: cores.map(({ branches }) => branches),
    turns: cores.map(({ turns }) => Float64Array.from(turns)),
    most: Float64Array.from(cores, ({ turns }) => turns.reduce((most, n) => Math.max(most, Math.abs(n)), 0)),
    share: cores.map(({ branches }) => phasors(branches.length)),
    reluctance: phasors(cores.length),
    perTurn: phasors(cores.length),
    excess: phasors(cores.length),
  };
}

/** Writes the siemens between the windings of a core.
 *  @param siemens 1/Z of each branch
 *  @param out n×n row by row
 *  @throws RangeError naming windings whose leakages cancel */
export function couple(network: Network, cores: Cores, c: number, siemens: Phasors, out: Phasors): void {
  const members = cores.members[c]!;
  const turns = cores.turns[c]!;
  const share = cores.share[c]!;
  const count = members.length;
  let sr = 0;
  let si = 0;
  let whole = 0;
  for (let k = 0; k < count; k++) {
    const square = turns[k]! ** 2;
    const yr = square * siemens.re[members[k]!]!;
    const yi = square * siemens.im[members[k]!]!;
    sr += yr;
    si += yi;
    whole += Math.abs(yr) + Math.abs(yi);
  }
  if (!(Math.abs(sr) + Math.abs(si) > 1e-13 * whole)) {
    const names = members.map((b) => `"${network.branches[b]?.name ?? b}"`).join(' and ');
    throw new RangeError(`the leakages of the windings ${names} on one core cancel; give each a resistance of its own`);
  }
  const size = sr * sr + si * si;
  const zr = sr / size;
  const zi = -si / size;
  cores.reluctance.re[c] = zr;
  cores.reluctance.im[c] = zi;
  for (let k = 0; k < count; k++) {
    const yr = turns[k]! * siemens.re[members[k]!]!;
    const yi = turns[k]! * siemens.im[members[k]!]!;
    share.re[k] = yr * zr - yi * zi;
    share.im[k] = yr * zi + yi * zr;
  }
  for (let k = 0; k < count; k++) {
    let ownR = 0;
    let ownI = 0;
    for (let l = 0; l < count; l++) {
      if (l === k) continue;
      // What the others share, and not one less its own, which would lose digits.
      ownR += turns[l]! * share.re[l]!;
      ownI += turns[l]! * share.im[l]!;
      product(out, k * count + l, -turns[l]! * share.re[k]!, -turns[l]! * share.im[k]!, siemens, members[l]!);
    }
    product(out, k * count + k, ownR, ownI, siemens, members[k]!);
  }
}

/** Writes to each core the ampere-turns left over; the square of the largest voltage that one misses by. */
export function sumTurns(cores: Cores, amperes: Phasors): number {
  const { members, turns, most, reluctance, excess } = cores;
  let worst = 0;
  for (let c = 0; c < members.length; c++) {
    let sr = 0;
    let si = 0;
    for (let k = 0; k < members[c]!.length; k++) {
      const b = members[c]![k]!;
      sr += turns[c]![k]! * amperes.re[b]!;
      si += turns[c]![k]! * amperes.im[b]!;
    }
    excess.re[c] = sr;
    excess.im[c] = si;
    const square = (sr * sr + si * si) * (reluctance.re[c]! ** 2 + reluctance.im[c]! ** 2) * most[c]! ** 2;
    if (square > worst || Number.isNaN(square)) worst = square;
  }
  return worst;
}

/** The square of the largest voltage of a winding, its leakage left out. */
export function highestTurned({ most, perTurn }: Cores): number {
  let highest = 0;
  for (let c = 0; c < most.length; c++) {
    highest = Math.max(highest, (perTurn.re[c]! ** 2 + perTurn.im[c]! ** 2) * most[c]! ** 2);
  }
  return highest;
}

/** Takes the ampere-turns left over from what the windings of a core carry. */
export function relieve({ members, share, excess }: Cores, c: number, driven: Phasors): void {
  const er = excess.re[c]!;
  const ei = excess.im[c]!;
  for (let k = 0; k < members[c]!.length; k++) {
    const b = members[c]![k]!;
    const gr = share[c]!.re[k]!;
    const gi = share[c]!.im[k]!;
    driven.re[b]! -= gr * er - gi * ei;
    driven.im[b]! -= gr * ei + gi * er;
  }
}

/** Adds to the volts a turn of a core what a voltage across one of its windings brings. */
export function magnetise({ share, perTurn }: Cores, c: number, k: number, vr: number, vi: number): void {
  const gr = share[c]!.re[k]!;
  const gi = share[c]!.im[k]!;
  perTurn.re[c]! += gr * vr - gi * vi;
  perTurn.im[c]! += gr * vi + gi * vr;
}

/** Adds to the volts a turn of a core what the ampere-turns left over bring. */
export function saturate({ reluctance, excess, perTurn }: Cores, c: number): void {
  const zr = reluctance.re[c]!;
  const zi = reluctance.im[c]!;
  const er = excess.re[c]!;
  const ei = excess.im[c]!;
  perTurn.re[c]! += zr * er - zi * ei;
  perTurn.im[c]! += zr * ei + zi * er;
}

/** Writes f times one place of a row of phasors. */
function product(out: Phasors, at: number, fr: number, fi: number, row: Phasors, place: number): void {
  const xr = row.re[place]!;
  const xi = row.im[place]!;
  out.re[at] = fr * xr - fi * xi;
  out.im[at] = fr * xi + fi * xr;
}
