/** Where in its permitted band this particular device lies. */
export type Tolerance = 'fast' | 'middle' | 'slow';

/** When a device operates at a steady current, s from now; `Infinity` = never.
 *  `at_s` is this device, `earliest_s` and `latest_s` bound every device its standard would pass: earliest ≤ at ≤ latest. */
export interface Operation {
  readonly at_s: number;
  readonly earliest_s: number;
  readonly latest_s: number;
  /** What opens this device; `none` while it stays shut. */
  readonly region: 'none' | 'thermal' | 'magnetic' | 'residual';
  /** False while the current lies inside a band where the device may or may not act. */
  readonly certain: boolean;
  /** Current over the rating (breaker) or over this device's threshold (residual device). */
  readonly multiple: number;
}

/** Refuses a magnitude that is negative, infinite or not a number.
 *  @throws RangeError naming the quantity and the value */
export function assertMagnitude(what: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${what} is ${value}: write a finite number, zero or more`);
}
