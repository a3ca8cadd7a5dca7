import type { Complex } from '../electrics/index.ts';
import { BODIES, crowdOf, type Crowd } from './crowd.ts';
import { STEPS, stepsOf, type Spread } from './normal.ts';
import type { Area, Size, Skin } from './person.ts';
import { limitsAt, type Limits, type ZoneCurve } from './zones.ts';

/** Ways people of a population touch, by hand; all but hand to hand lead through shoes and floor. */
export type Touch = 'left hand to feet' | 'right hand to feet' | 'both hands to feet' | 'hand to hand';

/** What everybody touches: its volts to the place where they stand (to the other thing, hand to hand), and the impedance behind them. */
export interface TouchedSource {
  readonly volts: number;
  readonly impedance_ohm: Complex;
  /** 0 is direct current. */
  readonly frequency_Hz: number;
}

/** Who touches, and how. Shares of each kind add up to any whole. */
export interface People {
  readonly touches: Readonly<Partial<Record<Touch, number>>>;
  readonly skins: Readonly<Partial<Record<Skin, number>>>;
  readonly areas: Readonly<Partial<Record<Area, number>>>;
  /** One shoe, Ω. */
  readonly shoe_ohm: Spread;
  /** What both feet stand on, to remote earth, Ω: 1.5 ρ of the soil. */
  readonly floor_ohm: Spread;
  /** How long they touch, s. */
  readonly time_s: Spread;
  readonly size: Size;
}

/** What became of some of them; those of other ranges of people can be added. */
export interface Tally {
  readonly people: number;
  /** In each zone, from the mildest. */
  readonly zones: Float64Array;
  /** Who could not let go by the long limit for everybody. */
  readonly held: number;
  /** By body current: one bin a 0.2 % step from 1 µA to 100 A, with what lies outside in the first and the last. */
  readonly currents: Float64Array;
}

const BINS = 8192;
const LEAST_A = 1e-6;
const MOST_A = 100;
const PER_NEPER = BINS / Math.log(MOST_A / LEAST_A);

/** Hands and feet side by side, and the heart-current factor of the way (IEC TS 60479-1:2005 table 12, seen in a copy). */
const WAYS: Readonly<Record<Touch, { readonly hands: 1 | 2; readonly feet: 0 | 2; readonly factor: number }>> = {
  'left hand to feet': { hands: 1, feet: 2, factor: 1 },
  'right hand to feet': { hands: 1, feet: 2, factor: 0.8 },
  'both hands to feet': { hands: 2, feet: 2, factor: 1 },
  'hand to hand': { hands: 1, feet: 0, factor: 0.4 },
};

const CURVES: readonly ZoneCurve[] = ['a', 'b', 'c1', 'c2', 'c3'];

/** What becomes of people number `from` up to, but not including, `to`. Person n of one seed is always the same, so ranges may be counted
 *  apart and added in any order. Feet have the skin of the hands and always a large contact.
 *  @throws RangeError if the source is not finite, or a share is below zero or none is above */
export function population(source: TouchedSource, people: People, seed: number, from: number, to: number): Tally {
  const { volts, impedance_ohm, frequency_Hz } = source;
  if (!(volts >= 0 && volts < Infinity && impedance_ohm.re >= 0 && Math.abs(impedance_ohm.im) < Infinity)) {
    throw new RangeError(`A source of ${volts} V behind ${impedance_ohm.re} Ω: write finite figures of zero or more`);
  }
  const limits = limitsAt(frequency_Hz, people.size);
  const pickTouch = picker(people.touches, 'touches');
  const pickSkin = picker(people.skins, 'skins');
  const pickArea = picker(people.areas, 'areas');
  const ways = pickTouch.names.map((touch) => WAYS[touch]);
  const feet = pickSkin.names.map((skin) => crowdOf(skin, 'large', limits.direct));
  const hands = pickSkin.names.map((skin) => pickArea.names.map((area) => crowdOf(skin, area, limits.direct)));
  const shoes_ohm = stepsOf(people.shoe_ohm);
  const floors_ohm = stepsOf(people.floor_ohm);
  const boundaries = boundariesAt(stepsOf(people.time_s), limits);
  const zones = new Float64Array(CURVES.length + 1);
  const currents = new Float64Array(BINS);
  let held = 0;
  for (let person = from; person < to; person++) {
    begin(seed, person);
    const body = Math.floor(chance() * BODIES);
    const way = ways[pick(pickTouch)]!;
    const skin = pick(pickSkin);
    const hand = hands[skin]![pick(pickArea)]!;
    const shoe = shoes_ohm[Math.floor(chance() * STEPS)]!;
    const floor = floors_ohm[Math.floor(chance() * STEPS)]!;
    const time = Math.floor(chance() * STEPS);
    const outside_ohm = way.feet === 0 ? 0 : shoe / 2 + floor;
    const amperes = current_A(
      volts,
      impedance_ohm.re + outside_ohm,
      impedance_ohm.im,
      hand,
      way.hands,
      way.feet === 0 ? hand : feet[skin]!,
      way.feet === 0 ? 1 : way.feet,
      body,
    );
    const heart_A = amperes * way.factor;
    let reached = heart_A > boundaries[time * CURVES.length]! ? 1 : 0;
    for (let step = 1; step < CURVES.length; step++) {
      if (heart_A >= boundaries[time * CURVES.length + step]!) reached = step + 1;
    }
    zones[reached]!++;
    if (amperes / way.hands > limits.letGo_A) held++;
    currents[binOf(amperes)]!++;
  }
  return { people: Math.max(0, to - from), zones, held, currents };
}

/** Several ranges of people as one. */
export function together(tallies: readonly Tally[]): Tally {
  const zones = new Float64Array(CURVES.length + 1);
  const currents = new Float64Array(BINS);
  let people = 0;
  let held = 0;
  for (const tally of tallies) {
    people += tally.people;
    held += tally.held;
    tally.zones.forEach((count, zone) => (zones[zone]! += count));
    tally.currents.forEach((count, bin) => (currents[bin]! += count));
  }
  return { people, zones, held, currents };
}

/** The body current that this share of people stays below, A, to 0.2 %. @throws RangeError if nobody was counted */
export function quantile_A({ people, currents }: Tally, share: number): number {
  if (people === 0) throw new RangeError('quantile_A: nobody was counted');
  let below = 0;
  for (let bin = 0; bin < BINS; bin++) {
    const here = currents[bin]!;
    if (here > 0 && below + here >= share * people) {
      const along = Math.max(0, (share * people - below) / here);
      return LEAST_A * Math.exp((bin + along) / PER_NEPER);
    }
    below += here;
  }
  return MOST_A;
}

function binOf(amperes: number): number {
  if (amperes <= LEAST_A) return 0;
  return Math.min(BINS - 1, Math.floor(Math.log(amperes / LEAST_A) * PER_NEPER));
}

/** Newton's method stops when a step is this small beside the current. */
const STILL = 1e-9;
const MOST_STEPS = 60;

/** Current of one body in series with a source: |(r + jx)·I + U(I)| = volts, where U rises with I.
 *  Hands and feet count as limbs side by side. */
function current_A(
  volts: number,
  r: number,
  x: number,
  hand: Crowd,
  hands: number,
  foot: Crowd,
  feet: number,
  body: number,
): number {
  if (volts === 0) return 0;
  let piece = 0;
  let other = 0;
  const handAt = body * hand.stride;
  const footAt = body * foot.stride;
  const handCurves = hand.curves;
  const footCurves = foot.curves;
  // More than what flows: as if no skin were left, and no feet.
  let low = 0;
  let high = volts / Math.hypot(r, x, handCurves[handAt + 2 * hand.pieces]! / hands);
  let amperes = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const each = amperes / hands;
    const below = amperes / feet;
    while (each >= handCurves[handAt + piece + 1]!) piece++;
    while (each < handCurves[handAt + piece]!) piece--;
    while (below >= footCurves[footAt + other + 1]!) other++;
    while (below < footCurves[footAt + other]!) other--;
    const a = handCurves[handAt + hand.pieces + 1 + piece]!;
    const fall = 1 + handCurves[handAt + 2 * hand.pieces + 1 + piece]! * each;
    const c = footCurves[footAt + foot.pieces + 1 + other]!;
    const drop = 1 + footCurves[footAt + 2 * foot.pieces + 1 + other]! * below;
    const ohm = r + a / fall / hands + c / drop / feet;
    const slope = r + a / (fall * fall) / hands + c / (drop * drop) / feet;
    const size = Math.sqrt(ohm * ohm + x * x);
    const wrong = size * amperes - volts;
    if (wrong > 0) high = amperes;
    else low = amperes;
    const rise = size === 0 ? 1 : (ohm * slope + x * x) / size;
    let next = amperes - wrong / rise;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - amperes) <= STILL * next) return next;
    amperes = next;
  }
  return amperes;
}

/** For each time the current at each boundary, A, side by side. */
function boundariesAt(times_s: Float64Array, limits: Limits): Float64Array {
  const at = new Float64Array(times_s.length * CURVES.length);
  times_s.forEach((time_s, index) => {
    CURVES.forEach((curve, step) => {
      const points = limits.curves[curve];
      const after = points.findIndex((point) => time_s < point.time_s);
      const [one, other] = [points[after - 1], points[after]];
      at[index * CURVES.length + step] =
        one === undefined || other === undefined
          ? ((after === 0 ? points[0] : points.at(-1))?.amperes ?? NaN)
          : one.amperes *
            (other.amperes / one.amperes) ** (Math.log(time_s / one.time_s) / Math.log(other.time_s / one.time_s));
    });
  });
  return at;
}

interface Picker<Name extends string> {
  readonly names: readonly Name[];
  /** Share of those up to and with each name. */
  readonly upTo: Float64Array;
}

function picker<Name extends string>(shares: Readonly<Partial<Record<Name, number>>>, what: string): Picker<Name> {
  const entries = (Object.entries(shares) as [Name, number][]).filter(([, share]) => share !== 0);
  const sum = entries.reduce((whole, [, share]) => whole + share, 0);
  if (!(sum > 0 && sum < Infinity) || entries.some(([, share]) => share < 0)) {
    throw new RangeError(`population: the shares of ${what} are none or below zero`);
  }
  let reached = 0;
  const upTo = Float64Array.from(entries, ([, share]) => (reached += share / sum));
  return { names: entries.map(([name]) => name), upTo };
}

function pick<Name extends string>({ upTo }: Picker<Name>): number {
  const at = chance();
  let found = 0;
  while (found < upTo.length - 1 && at >= upTo[found]!) found++;
  return found;
}

let state = 0;

/** Sets the numbers of chance to those of one person: mixed from the seed and the number, so that people do not depend on each other. */
function begin(seed: number, person: number): void {
  state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(person, 0xc2b2ae35) ^ Math.floor(person / 2 ** 32);
  state = Math.imul(state ^ (state >>> 16), 0x7feb352d);
  state = Math.imul(state ^ (state >>> 15), 0x846ca68b);
  state ^= state >>> 16;
}

/** The next number of chance, 0 up to but not including 1 (mulberry32). */
function chance(): number {
  state = (state + 0x6d2b79f5) | 0;
  let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
  mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
}
