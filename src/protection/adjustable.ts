import type { Band, Edge } from './band.ts';
import type { Acting } from './operation.ts';

/** A delayed element: from this current on, after this time; with I²t it is later at less than `reference_A`. */
export interface DelayedElement {
  readonly pickup_A: number;
  readonly delay_s: number;
  readonly i2t: boolean;
}

/** A breaker with an adjustable electronic release; an element that is left out is switched off. */
export interface AdjustableSettings {
  readonly family: 'adjustable';
  /** Pickup of the long-time element, A. */
  readonly rating_A: number;
  /** Time of the long-time element at six times its pickup, s. */
  readonly longDelay_s: number;
  readonly short?: DelayedElement;
  readonly instantaneous_A?: number;
  /** Feels the phasor sum of its poles and neutral. */
  readonly ground?: DelayedElement;
}

/** Long-time: holds 1.05, acts at 1.30 (IEC 60947-2 table 6, from memory). All others within a fifth of the setting
 *  (IEC 60947-2, short-circuit releases, from memory). */
const PICKUP = { long: [1.05, 1.3], other: [0.8, 1.2] } as const;
/** Spread of a delay, and the time to part the contacts, s: common practice, no source. */
const DELAY = { fast: 0.9, slow: 1.1, contacts_s: 0.05, fastContacts_s: 0.01 } as const;
/** I²t of the short-time element ends at ten times the rating, that of the ground-fault element at the rating: common
 *  practice, no source. */
const I2T_ENDS = { short: 10, ground: 1 } as const;
/** The long-time delay is set at this multiple: common practice, no source. */
const LONG_AT = 6;

/** The elements of an adjustable breaker, one band each.
 *  @throws RangeError for a setting that is no such thing */
export function adjustableBands(settings: AdjustableSettings): readonly Band[] {
  const { rating_A, longDelay_s, short, instantaneous_A, ground } = settings;
  for (const [what, value] of Object.entries({ rating_A, longDelay_s, instantaneous_A: instantaneous_A ?? 1 }))
    if (!(value > 0 && value < Infinity))
      throw new RangeError(`${what} of an adjustable breaker is ${value}: write a finite number above zero`);
  return [
    long(rating_A, longDelay_s, Math.min(short?.pickup_A ?? Infinity, instantaneous_A ?? Infinity)),
    ...(short === undefined ? [] : [delayed('short-time', short, I2T_ENDS.short * rating_A, rating_A)]),
    ...(instantaneous_A === undefined ? [] : [instantaneous(instantaneous_A, rating_A)]),
    ...(ground === undefined ? [] : [delayed('ground-fault', ground, I2T_ENDS.ground * rating_A)]),
  ];
}

/** Counts I²t from its pickup up to where a quicker element takes over; beyond that its time stays. */
function long(rating_A: number, delay_s: number, ends_A: number): Band {
  const edge = (multiple: number, spread: number): Edge => {
    const point = (times: number) => [times * rating_A, spread * delay_s * (LONG_AT / times) ** 2] as const;
    if (ends_A === Infinity) return { points: [point(multiple)], beyond: 'square' };
    const last = Math.max(ends_A / rating_A, 2 * multiple);
    return { points: [point(multiple), point(last)], beyond: 'flat' };
  };
  return {
    acts: 'long-time',
    feels: 'amperes',
    fast: edge(PICKUP.long[0] * (1 + 1e-9), DELAY.fast),
    slow: edge(PICKUP.long[1], DELAY.slow),
    rated: rating_A,
  };
}

/** An instantaneous element within a fifth of its setting; a fast one answers to the first peak. */
function instantaneous(setting_A: number, rated: number): Band {
  const [from, to] = PICKUP.other;
  return magnetic(from * setting_A, to * setting_A, DELAY.contacts_s, rated);
}

/** A magnetic part that may act from one current on and must from another. */
export function magnetic(from_A: number, to_A: number, slowest_s: number, rated: number): Band {
  return {
    acts: 'magnetic',
    feels: 'amperes',
    fast: { points: [[from_A * (1 + 1e-9), DELAY.fastContacts_s]], beyond: 'flat' },
    slow: { points: [[to_A, slowest_s]], beyond: 'flat' },
    rated,
    peaks: true,
  };
}

function delayed(acts: Acting, { pickup_A, delay_s, i2t }: DelayedElement, reference_A: number, rated?: number): Band {
  const [from, to] = PICKUP.other;
  const edge = (pickup: number, spread: number, contacts_s: number) => {
    const least_s = spread * delay_s + contacts_s;
    if (!i2t || pickup >= reference_A) return { points: [[pickup, least_s] as const], beyond: 'flat' as const };
    const first_s = spread * delay_s * (reference_A / pickup) ** 2 + contacts_s;
    return { points: [[pickup, first_s] as const, [reference_A, least_s] as const], beyond: 'flat' as const };
  };
  return {
    acts,
    feels: acts === 'ground-fault' ? 'residual' : 'amperes',
    fast: edge(from * pickup_A * (1 + 1e-9), DELAY.fast, DELAY.fastContacts_s),
    slow: edge(to * pickup_A, DELAY.slow, DELAY.contacts_s),
    ...(rated === undefined ? {} : { rated }),
  };
}
