import { transfer_ohm, type Buried } from './buried.ts';
import { readingOf, type Reading } from './reading.ts';
import { pinPotential_ohm } from './surface.ts';

/** The share of the way to the current pin where the potential pin reads right, if the electrode is small beside the distance
 *  and the soil is even: (√5 − 1)/2.
 *  @see G. F. Tagg, "Earth Resistances" (1964); IEEE Std 81 */
export const SIXTY_TWO_PERCENT = (Math.sqrt(5) - 1) / 2;

/** Fall of potential, Ω: a current goes into the electrode and out of a far pin, a potential pin stands between them on the same
 *  line. The instrument reads R − t(D) − t(x) + g(D − x), with the electrode's potential t at either pin (by reciprocity the far
 *  pin lowers the electrode as much as the electrode raises the pin) and that of the far pin g at the potential pin.
 *  @param current_m distance of the current pin from 0, 0
 *  @param potential_m distance of the potential pin, below that of the current pin
 *  @throws RangeError if the pins are not in that order */
export function fallOfPotential(
  buried: Buried,
  current_m: number,
  potential_m: number = SIXTY_TWO_PERCENT * current_m,
  { electrode = 0, bearing_rad = 0 } = {},
): Reading {
  if (!(potential_m > 0 && potential_m < current_m && current_m < Infinity))
    throw new RangeError(
      `A potential pin at ${potential_m} m, a current pin at ${current_m} m: the potential pin stands between`,
    );
  const at = (distance: number) =>
    transfer_ohm(buried, electrode, {
      x: distance * Math.cos(bearing_rad),
      y: distance * Math.sin(bearing_rad),
      z: 0,
    });
  const truth = buried.resistance_ohm[electrode]?.[electrode] ?? NaN;
  const far = at(current_m);
  const between = pinPotential_ohm(buried.ground, current_m - potential_m);
  return readingOf(truth - far - at(potential_m) + between, truth);
}

/** The whole curve, as one walks the potential pin out: it has a level stretch only if the current pin is far enough. */
export function fallCurve(
  buried: Buried,
  current_m: number,
  potentials_m: readonly number[],
): readonly (Reading & { readonly potential_m: number })[] {
  return potentials_m.map((potential_m) => ({ potential_m, ...fallOfPotential(buried, current_m, potential_m) }));
}
