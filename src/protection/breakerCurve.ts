import type { Tolerance } from './operation.ts';
import type { ThermalImage } from './thermalImage.ts';

/** A breaker family's behaviour at one rating: an image and an opening time per tolerance, and the magnetic band. */
export interface BreakerCurve {
  readonly images: Readonly<Record<Tolerance, ThermalImage>>;
  /** Multiples of the rating between which the magnetic part may act; up to `from` it never does, at `to` it always does. */
  readonly magneticFrom: number;
  readonly magneticTo: number;
  /** Time from the start of a current that acts magnetically until the contacts have parted. */
  readonly opening_s: Readonly<Record<Tolerance, number>>;
}
