import type { Phasors } from '../electrics/index.ts';
import { makeLoops, solveLoops } from './loops.ts';
import type { Body, Contact } from './person.ts';
import { type Spoke, spokeOf } from './spoke.ts';

/** A person solved on what is seen from the contacts. */
export interface SolvedBody {
  /** Per contact: outside + skin + limb, Ω, from the thing touched to the trunk; `Infinity` where there is no contact. */
  readonly limb_ohm: Float64Array;
  /** Into the body at each contact, A. */
  readonly amperes: Phasors;
  /** Greatest open-circuit voltage between two contacts, V: before anyone touches. */
  readonly prospective_V: number;
  /** Greatest voltage across the body itself between two contacts, skin to skin, without gloves and shoes, V. */
  readonly touch_V: number;
  readonly iterations: number;
}

const MOST_CONTACTS = 3;

/** Solves the nonlinear body on the Thévenin equivalent of its contacts.
 *
 *  The body is a star: each contact leads through gloves or shoes, skin and one limb (half the internal impedance) to the trunk; both
 *  feet are two such in parallel. Skin follows the current of its own contact: with I = U / Z(U) from the table, skin is
 *  (Z(U) − internal) / 2. The voltage across a limb then always rises with its current, so there is one solution.
 *  @param volts open-circuit phasor at each contact, V
 *  @param impedance seen between each contact and earth, row by row, Ω
 *  @param start currents to begin from, A; the answer does not depend on them
 *  @throws RangeError for more than three contacts, arrays that do not fit, or figures that are not finite
 *  @see IEC 60479-1:2018 figure 3 (four equal limbs, no trunk), from memory */
export function solveBody(
  body: Body,
  contacts: readonly Contact[],
  volts: Phasors,
  impedance: Phasors,
  start?: Phasors,
): SolvedBody {
  const count = contacts.length;
  assertFits(count, volts, impedance, start);
  const limb_ohm = new Float64Array(count).fill(Infinity);
  const amperes = { re: new Float64Array(count), im: new Float64Array(count) };
  const spokes: Spoke[] = [];
  for (let place = 0; place < count; place++) {
    const contact = contacts[place]!;
    if (!(contact.outside_ohm >= 0)) {
      throw new RangeError(`${contact.limb}: ${contact.outside_ohm} Ω outside the skin; write zero or more`);
    }
    if (contact.outside_ohm < Infinity) spokes.push(spokeOf(body, contact, place));
  }
  const iterations = spokes.length > 1 ? solveLoops(makeLoops(spokes, volts, impedance), start) : 0;
  for (const { place, ohm, re, im } of spokes) {
    limb_ohm[place] = ohm;
    amperes.re[place] = re;
    amperes.im[place] = im;
  }
  return { limb_ohm, amperes, ...voltages(spokes, volts), iterations };
}

function assertFits(count: number, volts: Phasors, impedance: Phasors, start: Phasors | undefined): void {
  if (count > MOST_CONTACTS) throw new RangeError(`${count} contacts: a person has at most ${MOST_CONTACTS}`);
  const fits = (phasors: Phasors, length: number): boolean =>
    phasors.re.length === length && phasors.im.length === length;
  if (!fits(volts, count) || !fits(impedance, count * count) || (start && !fits(start, count))) {
    throw new RangeError(
      `${count} contacts need ${count} voltages, ${count * count} impedances and ${count} currents to start from`,
    );
  }
}

function voltages(spokes: readonly Spoke[], volts: Phasors): Pick<SolvedBody, 'prospective_V' | 'touch_V'> {
  let prospective_V = 0;
  let touch_V = 0;
  for (let i = 1; i < spokes.length; i++) {
    for (let j = 0; j < i; j++) {
      const one = spokes[i]!;
      const other = spokes[j]!;
      const inside = one.ohm - one.outside_ohm;
      const otherInside = other.ohm - other.outside_ohm;
      const prospective = Math.hypot(
        volts.re[one.place]! - volts.re[other.place]!,
        volts.im[one.place]! - volts.im[other.place]!,
      );
      const touch = Math.hypot(inside * one.re - otherInside * other.re, inside * one.im - otherInside * other.im);
      prospective_V = Math.max(prospective_V, prospective);
      touch_V = Math.max(touch_V, touch);
    }
  }
  return { prospective_V, touch_V };
}
