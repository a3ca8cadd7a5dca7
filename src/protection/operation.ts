/** Where in its permitted band this particular device lies. */
export type Tolerance = 'fast' | 'middle' | 'slow';

/** What in a device acts. `thermal` is a bimetal, `magnetic` any instantaneous element, `published` a device of which only
 *  its sheet is known. */
export type Acting =
  | 'thermal'
  | 'long-time'
  | 'short-time'
  | 'magnetic'
  | 'melting'
  | 'published'
  | 'residual'
  | 'ground-fault'
  | 'grounded-neutral'
  | 'insulation';

/** When a device operates at a steady current, s from now; `Infinity` = never.
 *  `at_s` is this device, `earliest_s` and `latest_s` bound every device its standard would pass: earliest ≤ at ≤ latest. */
export interface Operation {
  readonly at_s: number;
  readonly earliest_s: number;
  readonly latest_s: number;
  /** What opens this device; `none` while it stays shut. */
  readonly region: 'none' | Acting;
  /** False while the current lies inside a band where the device may or may not act. */
  readonly certain: boolean;
  /** Current over the rating, or over this device's threshold where it has no rating (a residual device). */
  readonly multiple: number;
}

/** Everything a device can feel, steady; what is left out is not there. */
export interface Seen {
  /** The largest pole, A r.m.s. */
  readonly amperes: number;
  /** κ of the first peak, 1 where it is not offset (IEC 60909-0). */
  readonly peakFactor?: number;
  /** The phasor sum of what passes through it, A r.m.s. */
  readonly residual_A?: number;
  /** Frequency of that sum; absent: mains. */
  readonly frequency_Hz?: number;
  /** What sort of current that sum is; absent: sinusoidal. */
  readonly content?: ResidualContent;
  /** Smooth d.c. that flows besides, A. */
  readonly smoothDc_A?: number;
  /** Round the loop of the conductors through it, sources at rest, Ω. */
  readonly loop_ohm?: number;
  /** Of the whole system to earth, Ω. */
  readonly insulation_ohm?: number;
}

/** The wave of a residual current. `pulsating`: half waves; `composite`: mains with what a single-phase drive adds. */
export type ResidualContent = 'sinusoidal' | 'pulsating' | 'composite' | 'smooth';

/** Refuses a magnitude that is negative, infinite or not a number.
 *  @throws RangeError naming the quantity and the value */
export function assertMagnitude(what: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${what} is ${value}: write a finite number, zero or more`);
}

/** Several elements on one trip bar: whoever is first opens it, and every edge of the band is the first of its kind. */
export function firstOf(operations: readonly Operation[]): Operation {
  const [only, ...others] = operations;
  if (only === undefined) throw new RangeError('A device has at least one element');
  if (others.length === 0) return only;
  const leader = others.reduce((first, one) => (one.at_s < first.at_s ? one : first), only);
  const least = (time: (one: Operation) => number): number => Math.min(...operations.map(time));
  const latest_s = least((one) => one.latest_s);
  return {
    ...leader,
    earliest_s: least((one) => one.earliest_s),
    latest_s,
    certain: operations.every((one) => one.certain || one.earliest_s >= latest_s),
  };
}
