import type { Images } from './images.ts';
import { along, lengthOf, type Place, type Segment } from './segment.ts';

// Gauss–Legendre on 0…1: places and weights.
const GAUSS: Readonly<Record<2 | 4 | 12, readonly (readonly [number, number])[]>> = {
  2: gauss([[0.5773502691896257, 1]]),
  4: gauss([
    [0.3399810435848563, 0.6521451548625461],
    [0.8611363115940526, 0.3478548451374538],
  ]),
  12: gauss([
    [0.1252334085114689, 0.2491470458134028],
    [0.3678314989981802, 0.2334925365383548],
    [0.5873179542866175, 0.2031674267230659],
    [0.7699026741943047, 0.1600783285433462],
    [0.9041172563704749, 0.1069393259953184],
    [0.9815606342467192, 0.0471753363865118],
  ]),
};

/** Potential at a place per ampere that leaks evenly from a segment, Ω, with all its images. */
export function potentialAt_ohm({ scale_ohm_m, images, rest_per_m }: Images, place: Place, source: Segment): number {
  const length = lengthOf(source);
  const middle = along(source, 0.5);
  let sum = rest_per_m;
  for (const { weight, sign, shift_m } of images) {
    const flat = (middle.x - place.x) ** 2 + (middle.y - place.y) ** 2;
    const far = Math.sqrt(flat + (sign * middle.z + shift_m - place.z) ** 2);
    sum += weight * (far > 8 * length ? 1 / far : nearby(place, source, length, sign, shift_m, source.radius_m));
  }
  return (scale_ohm_m * sum) / (4 * Math.PI);
}

/** Mean potential along one segment per ampere that leaks evenly from another or from itself, Ω. The same both ways. */
export function meanPotential_ohm(images: Images, field: Segment, source: Segment): number {
  const [across, length] = [lengthOf(field), lengthOf(source)];
  const [here, middle] = [along(field, 0.5), along(source, 0.5)];
  const radius_m = Math.sqrt((field.radius_m ** 2 + source.radius_m ** 2) / 2);
  const flat = (middle.x - here.x) ** 2 + (middle.y - here.y) ** 2;
  let sum = images.rest_per_m;
  for (const { weight, sign, shift_m } of images.images) {
    const far = Math.sqrt(flat + (sign * middle.z + shift_m - here.z) ** 2);
    const close = far / (across + length);
    if (close > 4) sum += weight / far;
    else if (field === source && sign === 1 && shift_m === 0) sum += weight * itself(length, radius_m);
    else {
      const rule = GAUSS[close < 0.8 ? 12 : close < 1.6 ? 4 : 2];
      for (const [share, part] of rule)
        sum += weight * part * nearby(along(field, share), source, length, sign, shift_m, radius_m);
    }
  }
  return (images.scale_ohm_m * sum) / (4 * Math.PI);
}

/** Mean of 1/distance along a straight wire, seen from a place that lies no nearer to its axis than the wire is thick:
 *  ln((a + b + L)/(a + b − L))/L with the distances a, b to its ends. */
function nearby(
  place: Place,
  { from, to }: Segment,
  length: number,
  sign: 1 | -1,
  shift_m: number,
  radius_m: number,
): number {
  const one = (from.x - place.x) ** 2 + (from.y - place.y) ** 2 + (sign * from.z + shift_m - place.z) ** 2;
  const other = (to.x - place.x) ** 2 + (to.y - place.y) ** 2 + (sign * to.z + shift_m - place.z) ** 2;
  const foot = (one - other + length * length) / (2 * length);
  const off = Math.max(0, one - foot * foot);
  const out = Math.max(0, radius_m * radius_m - off);
  const reach = Math.sqrt(one + out) + Math.sqrt(other + out);
  return Math.log((reach + length) / (reach - length)) / length;
}

/** The mean over a wire of its own mean of 1/distance, with the distance taken at its skin. */
function itself(length: number, radius_m: number): number {
  const slim = radius_m / length;
  return (2 / length) * (Math.asinh(1 / slim) - Math.sqrt(1 + slim * slim) + slim);
}

function gauss(half: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  return half.flatMap(([place, weight]): [number, number][] => [
    [(1 - place) / 2, weight / 2],
    [(1 + place) / 2, weight / 2],
  ]);
}
