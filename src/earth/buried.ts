import { checkGround, type Ground } from './ground.ts';
import { imagesOf, layerAt, type Images, type Layer } from './images.ts';
import { meanPotential_ohm, potentialAt_ohm } from './kernel.ts';
import { cutAt, lengthOf, type Place, type Segment } from './segment.ts';
import { solveSymmetric } from './symmetric.ts';

/** An electrode as wires that metal joins: all its segments stand at one potential. */
export type Wires = readonly Segment[];

/** Electrodes that were solved together in one ground. */
export interface Buried {
  readonly ground: Ground;
  readonly segments: readonly Segment[];
  /** Resistances between electrodes and remote earth, n×n, Ω: volts of the row's electrode per ampere into the column's, all
   *  others floating. On the diagonal the resistance of an electrode; symmetric. */
  readonly resistance_ohm: readonly (readonly number[])[];
  /** For each electrode, the current that leaves each segment per ampere into it, all others floating. */
  readonly leak: readonly Float64Array[];
}

/** More segments than this are refused: the work grows with their cube. */
const MOST_SEGMENTS = 500;

/** Solves electrodes in even or two-layer soil: each segment leaks evenly, its mean potential is that of its electrode, the
 *  soil's boundaries are images (Galerkin's method of moments; one segment for each straight wire is Dwight's average
 *  potential).
 *  @throws RangeError if there are no wires, more than 500 segments, a wire out of the soil, or a soil of nothing */
export function bury(electrodes: readonly Wires[], ground: Ground): Buried {
  checkGround(ground);
  const laid = electrodes.map((wires) =>
    ground.kind === 'even' ? wires : wires.flatMap((segment) => cutAt(segment, ground.thickness_m)),
  );
  const segments = laid.flat();
  checkSegments(laid);
  const n = segments.length;
  const images = imagesBetween(ground, spanOf(segments));
  const layers = segments.map(({ from, to }) => layerAt(ground, (from.z + to.z) / 2));
  const mutual = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const ohm = meanPotential_ohm(images(layers[j]!, layers[i]!), segments[i]!, segments[j]!);
      mutual[i * n + j] = ohm;
      mutual[j * n + i] = ohm;
    }
  const owner = laid.flatMap((wires, electrode) => wires.map(() => electrode));
  const volt = laid.map((_, electrode) => Float64Array.from(owner, (own) => (own === electrode ? 1 : 0)));
  solveSymmetric(mutual, n, volt);
  const count = laid.length;
  const conductance = new Float64Array(count * count);
  volt.forEach((leak, column) => {
    leak.forEach((amperes, at) => {
      conductance[owner[at]! * count + column]! += amperes;
    });
  });
  const columns = laid.map((_, electrode) => Float64Array.from(laid, (__, other) => (other === electrode ? 1 : 0)));
  solveSymmetric(conductance, count, columns);
  return {
    ground,
    segments,
    resistance_ohm: laid.map((_, row) => columns.map((column) => column[row]!)),
    leak: columns.map((column) =>
      Float64Array.from(segments, (_, at) => volt.reduce((sum, leak, other) => sum + leak[at]! * column[other]!, 0)),
    ),
  };
}

/** Resistance of one electrode to remote earth, Ω.
 *  @throws RangeError as `bury` does */
export function buriedResistance_ohm(wires: Wires, ground: Ground): number {
  return bury([wires], ground).resistance_ohm[0]![0]!;
}

/** Volts at a place per ampere into one of the electrodes, all others floating, Ω: on the soil's surface or in it, never more
 *  than on the electrode itself. */
export function transfer_ohm(buried: Buried, electrode: number, place: Place): number {
  const { ground, segments } = buried;
  const leak = known(buried.leak[electrode], electrode);
  const images = imagesBetween(ground, spanOf(segments, place));
  const field = layerAt(ground, place.z);
  const sum = segments.reduce((volts, segment, at) => {
    const layer = layerAt(ground, (segment.from.z + segment.to.z) / 2);
    return volts + leak[at]! * potentialAt_ohm(images(layer, field), place, segment);
  }, 0);
  return Math.min(sum, known(buried.resistance_ohm[electrode]?.[electrode], electrode));
}

function known<T>(found: T | undefined, electrode: number): T {
  if (found === undefined) throw new RangeError(`There is no electrode ${electrode}: count them from 0`);
  return found;
}

function imagesBetween(ground: Ground, span_m: number): (source: Layer, field: Layer) => Images {
  const made = new Map<number, Images>();
  return (source, field) => {
    const key = 2 * source + field;
    const images = made.get(key) ?? imagesOf(ground, source, field, span_m);
    made.set(key, images);
    return images;
  };
}

function spanOf(segments: readonly Segment[], ...places: readonly Place[]): number {
  const all = [...places, ...segments.flatMap(({ from, to }) => [from, to])];
  const extent = (key: 'x' | 'y' | 'z') => {
    const values = all.map((place) => place[key]);
    return Math.max(...values) - Math.min(...values);
  };
  const deepest = Math.max(...all.map(({ z }) => z));
  return Math.hypot(extent('x'), extent('y')) + 2 * deepest;
}

function checkSegments(electrodes: readonly Wires[]): void {
  const segments = electrodes.flat();
  if (electrodes.length === 0 || electrodes.some((wires) => wires.length === 0))
    throw new RangeError('There is an electrode without a wire: give each at least one');
  if (segments.length > MOST_SEGMENTS)
    throw new RangeError(`${segments.length} segments of wire: write fewer or longer ones, at most ${MOST_SEGMENTS}`);
  for (const segment of segments) {
    const length = lengthOf(segment);
    const { from, to, radius_m } = segment;
    if (!(radius_m > 0 && length > radius_m && length < Infinity))
      throw new RangeError(`A piece of wire ${length} m long of radius ${radius_m} m: write a length above the radius`);
    if (!(Math.min(from.z, to.z) >= 0)) throw new RangeError('A wire stands out of the soil: write depths from 0 down');
  }
}
