import type { ByCurrent } from './impedance.ts';
import { byCurrent } from './impedance.ts';
import type { Body, Contact } from './person.ts';
import { limbsTo } from './person.ts';

/** A person touches with both hands, both feet, seat, chest and back at most. */
export const MOST_CONTACTS = 7;

/** The ways from the things touched to the trunk, side by side, and the current in each while the star is being solved. */
export interface Spokes {
  count: number;
  /** Place among the contacts given. */
  readonly place: Int32Array;
  readonly outside_ohm: Float64Array;
  /** Share of the current in each of the equal limbs: both feet are two. */
  readonly share: Float64Array;
  readonly curve: ByCurrent[];
  /** Where on its curve. */
  readonly piece: Int32Array;
  /** Current from the thing touched to the trunk, A. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Resistance at this current, Ω: outside + skin + limb. */
  readonly ohm: Float64Array;
  /** How it falls as the current rises, over the current: (dR/dI)/I, Ω/A², never above zero. */
  readonly bend: Float64Array;
}

/** Room for a person. */
export function spokesOf(most: number): Spokes {
  const values = (): Float64Array => new Float64Array(most);
  const places = (): Int32Array => new Int32Array(most);
  return {
    count: 0,
    place: places(),
    outside_ohm: values(),
    share: values(),
    curve: [],
    piece: places(),
    re: values(),
    im: values(),
    ohm: values(),
    bend: values(),
  };
}

/** Adds the spoke of this contact, without current. */
export function addSpoke(spokes: Spokes, body: Body, { limb, outside_ohm, skin, area }: Contact, place: number): void {
  const k = spokes.count++;
  spokes.place[k] = place;
  spokes.outside_ohm[k] = outside_ohm;
  spokes.share[k] = limbsTo(limb) === 2 ? 0.5 : 1;
  spokes.curve[k] = byCurrent(
    limb,
    body.percentile,
    skin ?? body.skin,
    area ?? body.area ?? 'large',
    body.direct === true,
  );
  spokes.piece[k] = 0;
  carry(spokes, k, 0, 0);
}

/** Puts this current in a spoke, and the resistance that goes with it. */
export function carry(spokes: Spokes, k: number, re: number, im: number): void {
  const { from_A, fixed_ohm, a, d, b } = spokes.curve[k]!;
  const share = spokes.share[k]!;
  const each_A = Math.sqrt(re * re + im * im) * share;
  let piece = spokes.piece[k]!;
  while (each_A >= from_A[piece + 1]!) piece++;
  while (each_A < from_A[piece]!) piece--;
  const slope = b[piece]!;
  const fall = d[piece]! + slope * each_A;
  const above = a[piece]! / fall;
  spokes.piece[k] = piece;
  spokes.re[k] = re;
  spokes.im[k] = im;
  spokes.ohm[k] = spokes.outside_ohm[k]! + (fixed_ohm[piece]! + above) * share;
  spokes.bend[k] = each_A > 0 ? (-above * slope * share * share * share) / (fall * each_A) : 0;
}

/** Gives a spoke without current the resistance it would have at about this voltage across limb and skin, V. */
export function expect(spokes: Spokes, k: number, volts: number): void {
  const { from_V, from_ohm } = spokes.curve[k]!;
  let piece = 0;
  while (volts >= from_V[piece + 1]!) piece++;
  let inside_ohm = from_ohm[piece]!;
  if (piece + 1 < from_ohm.length) {
    const along = (volts - from_V[piece]!) / (from_V[piece + 1]! - from_V[piece]!);
    inside_ohm += along * (from_ohm[piece + 1]! - inside_ohm);
  }
  spokes.piece[k] = piece;
  spokes.ohm[k] = spokes.outside_ohm[k]! + inside_ohm * spokes.share[k]!;
  spokes.bend[k] = 0;
}
