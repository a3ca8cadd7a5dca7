import { transfer_ohm, type Buried } from './buried.ts';
import type { Ground } from './ground.ts';
import { imagesOf } from './images.ts';

/** Volts between a place on the surface and remote earth while a current goes into an electrode. On the electrode itself they are
 *  R·I: the current leaves it unevenly, so that its metal stands at one potential. (With an even leak the potential at the head
 *  of a rod comes out some 5 % above Dwight's R·I, which is the mean along it.)
 *  @param place m along the surface
 *  @param resistance_ohm of the electrode if it is known otherwise (measured, or by a formula); the profile keeps its shape
 *  @throws RangeError if there is no such electrode */
export function surfacePotential_V(
  buried: Buried,
  electrode: number,
  place: { readonly x: number; readonly y: number },
  amperes: number,
  resistance_ohm?: number,
): number {
  const own = buried.resistance_ohm[electrode]?.[electrode] ?? NaN;
  const ohm = transfer_ohm(buried, electrode, { ...place, z: 0 });
  return (ohm / own) * (resistance_ohm ?? own) * amperes;
}

/** One place of a profile along the surface, V: of the soil there; between the electrode's metal and feet there; between feet
 *  there and one pace farther. */
export interface ProfilePoint {
  readonly distance_m: number;
  readonly surface_V: number;
  readonly touch_V: number;
  readonly step_V: number;
}

/** A pace, m (IEEE Std 80). */
const PACE_M = 1;

/** What lies along a straight line over the soil while a current goes into an electrode: data for a chart.
 *  @param from where the line starts, m along the surface
 *  @param bearing_rad its direction, from x towards y */
export function surfaceProfile(
  buried: Buried,
  electrode: number,
  amperes: number,
  distances_m: readonly number[],
  { from = { x: 0, y: 0 }, bearing_rad = 0, pace_m = PACE_M } = {},
): readonly ProfilePoint[] {
  const rise_V = (buried.resistance_ohm[electrode]?.[electrode] ?? NaN) * amperes;
  const at = (distance: number): number => {
    const place = { x: from.x + distance * Math.cos(bearing_rad), y: from.y + distance * Math.sin(bearing_rad) };
    return surfacePotential_V(buried, electrode, place, amperes);
  };
  return distances_m.map((distance_m) => {
    const surface_V = at(distance_m);
    return { distance_m, surface_V, touch_V: rise_V - surface_V, step_V: surface_V - at(distance_m + pace_m) };
  });
}

/** Volts on the surface per ampere into a small pin in the surface, some way off, Ω: ρ/(2πx) in even soil.
 *  @see F. Wenner, Bulletin of the Bureau of Standards 12 (1915); Tagg's series for two layers, from memory */
export function pinPotential_ohm(ground: Ground, distance_m: number): number {
  const { scale_ohm_m, images, rest_per_m } = imagesOf(ground, 0, 0, distance_m);
  const sum = images.reduce((all, { weight, shift_m }) => all + weight / Math.hypot(distance_m, shift_m), rest_per_m);
  return (scale_ohm_m * sum) / (4 * Math.PI);
}

/** Resistance of half a ball in the surface of even soil, Ω: ρ/(2πa). */
export function hemisphereResistance_ohm(radius_m: number, soil_ohm_m: number): number {
  return pinPotential_ohm({ kind: 'even', soil_ohm_m }, radius_m);
}
