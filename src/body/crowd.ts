import { limbCurve } from './impedance.ts';
import { column } from './impedanceTables.ts';
import { deviate, NINETEEN_IN_TWENTY } from './normal.ts';
import type { Area, Skin } from './person.ts';

/** How many bodies, equally likely, stand for everybody of one skin and area. */
export const BODIES = 512;

/** One limb of each of them by its current, a stride of numbers a body: from which current each piece holds, then a and b of
 *  R = a / (1 + b·I), Ω. */
export interface Crowd {
  readonly stride: number;
  readonly pieces: number;
  readonly curves: Float64Array;
}

/** Everybody, from the one with the least impedance up. Between and beyond the tabled 5, 50 and 95 % the logarithm of the impedance
 *  is taken as normal on either side of the middle: an assumption of ours, the standard gives three columns only. */
export function crowdOf(skin: Skin, area: Area, direct: boolean): Crowd {
  const [low, middle, high] = [
    column(5, skin, area, direct),
    column(50, skin, area, direct),
    column(95, skin, area, direct),
  ];
  const pieces = middle.length;
  const stride = 3 * pieces + 1;
  const curves = new Float64Array(BODIES * stride);
  for (let body = 0; body < BODIES; body++) {
    const z = deviate((body + 0.5) / BODIES) / NINETEEN_IN_TWENTY;
    const far = z < 0 ? low : high;
    const ohms = middle.map((ohm, row) => ohm * ((far[row] ?? NaN) / ohm) ** Math.abs(z));
    const { from_A, a, b } = limbCurve(ohms);
    curves.set(from_A, body * stride);
    curves.set(a, body * stride + pieces + 1);
    curves.set(b, body * stride + 2 * pieces + 1);
  }
  return { stride, pieces, curves };
}
