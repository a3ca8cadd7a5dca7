import type { Phasors } from '../electrics/index.ts';
import { solveLoops } from './loops.ts';
import type { Body, Contact } from './person.ts';
import { addSpoke, MOST_CONTACTS, spokesOf } from './spokes.ts';

/** A person solved on what is seen from the contacts. */
export interface SolvedBody {
  /** Per contact: outside + skin + limb, Ω, from the thing touched to the trunk; `Infinity` where there is no contact. */
  readonly limb_ohm: Float64Array;
  /** Into the body at each contact, A. */
  readonly amperes: Phasors;
  /** Greatest open-circuit voltage between two contacts, V: before anyone touches. */
  prospective_V: number;
  /** Greatest voltage across the body itself between two contacts, skin to skin, without gloves and shoes, V. */
  touch_V: number;
  iterations: number;
}

// Working memory of one solve; nothing in it outlives the call.
const spokes = spokesOf(MOST_CONTACTS);

/** Room for the answer about a person with this many contacts. */
export function roomForBody(count: number): SolvedBody {
  return {
    limb_ohm: new Float64Array(count),
    amperes: { re: new Float64Array(count), im: new Float64Array(count) },
    prospective_V: 0,
    touch_V: 0,
    iterations: 0,
  };
}

/** Solves the nonlinear body on the Thévenin equivalent of its contacts.
 *
 *  The body is a star: each contact leads through gloves or shoes, skin and one limb (half the internal impedance) to the trunk; both
 *  feet are two such in parallel, and a place on the trunk has skin but no limb. Skin follows the current of its own contact: with
 *  I = U / Z(U) from the table, skin is (Z(U) − internal) / 2. The voltage across a limb never falls as its current rises, so there is
 *  one solution.
 *  @param volts open-circuit phasor at each contact, V
 *  @param impedance seen between each contact and earth, row by row, Ω
 *  @param out where the answer is written, as `roomForBody` makes it; nothing else is allocated
 *  @param start currents to begin from, A; the answer does not depend on them
 *  @throws RangeError for more than seven contacts, arrays that do not fit, or figures that are not finite
 *  @see IEC 60479-1:2018 figure 3 (four equal limbs, no trunk), from memory */
export function solveBody(
  body: Body,
  contacts: readonly Contact[],
  volts: Phasors,
  impedance: Phasors,
  out: SolvedBody = roomForBody(contacts.length),
  start?: Phasors,
): SolvedBody {
  const count = contacts.length;
  assertFits(count, volts, impedance, out.amperes);
  spokes.count = 0;
  for (let place = 0; place < count; place++) {
    const contact = contacts[place]!;
    if (!(contact.outside_ohm >= 0)) {
      throw new RangeError(`${contact.limb}: ${contact.outside_ohm} Ω outside the skin; write zero or more`);
    }
    out.limb_ohm[place] = Infinity;
    out.amperes.re[place] = 0;
    out.amperes.im[place] = 0;
    if (contact.outside_ohm < Infinity) addSpoke(spokes, body, contact, place);
  }
  out.prospective_V = prospective_V(volts);
  out.iterations = spokes.count > 1 ? solveLoops(spokes, volts, impedance, out.prospective_V, start) : 0;
  for (let k = 0; k < spokes.count; k++) {
    const place = spokes.place[k]!;
    out.limb_ohm[place] = spokes.ohm[k]!;
    out.amperes.re[place] = spokes.re[k]!;
    out.amperes.im[place] = spokes.im[k]!;
  }
  out.touch_V = touch_V();
  return out;
}

function assertFits(count: number, volts: Phasors, impedance: Phasors, amperes: Phasors): void {
  if (count > MOST_CONTACTS) throw new RangeError(`${count} contacts: a person has at most ${MOST_CONTACTS}`);
  const square = count * count;
  if (
    volts.re.length !== count ||
    volts.im.length !== count ||
    impedance.re.length !== square ||
    impedance.im.length !== square ||
    amperes.re.length !== count
  ) {
    throw new RangeError(
      `${count} contacts need ${count} voltages, ${square} impedances and room for ${count} currents`,
    );
  }
}

function prospective_V(volts: Phasors): number {
  let square = 0;
  for (let i = 1; i < spokes.count; i++) {
    for (let j = 0; j < i; j++) {
      const re = volts.re[spokes.place[i]!]! - volts.re[spokes.place[j]!]!;
      const im = volts.im[spokes.place[i]!]! - volts.im[spokes.place[j]!]!;
      square = Math.max(square, re * re + im * im);
    }
  }
  return Math.sqrt(square);
}

function touch_V(): number {
  const { ohm, outside_ohm, re, im } = spokes;
  let square = 0;
  for (let i = 1; i < spokes.count; i++) {
    const inside = ohm[i]! - outside_ohm[i]!;
    for (let j = 0; j < i; j++) {
      const otherInside = ohm[j]! - outside_ohm[j]!;
      const vr = inside * re[i]! - otherInside * re[j]!;
      const vi = inside * im[i]! - otherInside * im[j]!;
      square = Math.max(square, vr * vr + vi * vi);
    }
  }
  return Math.sqrt(square);
}
