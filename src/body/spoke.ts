import { byCurrent, type ByCurrent } from './impedance.ts';
import type { Body, Contact } from './person.ts';

/** One way from a thing touched to the trunk, and the current in it while the star is being solved. */
export interface Spoke {
  /** Place among the contacts given. */
  readonly place: number;
  readonly outside_ohm: number;
  /** How many equal limbs share it: both feet are two. */
  readonly limbs: 1 | 2;
  readonly curve: ByCurrent;
  /** Current from the thing touched to the trunk, A. */
  re: number;
  im: number;
  /** Resistance at this current, Ω: outside + skin + limb. */
  ohm: number;
  /** How it falls as the current rises, over the current: (dR/dI)/I, Ω/A², never above zero. */
  bend: number;
}

/** A spoke without current. */
export function spokeOf(body: Body, contact: Contact, place: number): Spoke {
  const spoke = {
    place,
    outside_ohm: contact.outside_ohm,
    limbs: contact.limb === 'feet' ? 2 : 1,
    curve: byCurrent(body.percentile, contact.skin ?? body.skin),
    re: 0,
    im: 0,
    ohm: 0,
    bend: 0,
  } as const;
  carry(spoke, 0, 0);
  return spoke;
}

/** Puts this current in a spoke, and the resistance that goes with it. */
export function carry(spoke: Spoke, re: number, im: number): void {
  const { from_A, a_ohm, b } = spoke.curve;
  const each_A = Math.sqrt(re * re + im * im) / spoke.limbs;
  let piece = 0;
  while (each_A >= from_A[piece + 1]!) piece++;
  // Half of Z(I) = a / (1 + b·I) is one limb with its skin; equal limbs in parallel share it.
  const fall = 1 + b[piece]! * each_A;
  const limb_ohm = a_ohm[piece]! / (2 * fall);
  spoke.re = re;
  spoke.im = im;
  spoke.ohm = spoke.outside_ohm + limb_ohm / spoke.limbs;
  spoke.bend = each_A > 0 ? (-limb_ohm * b[piece]!) / (fall * each_A * spoke.limbs ** 3) : 0;
}
