import type { Acting, Operation, Seen, Tolerance } from './operation.ts';

/** One edge of a time–current band: points in order of value, straight between them where both axes are logarithmic.
 *  Below the first nothing happens; beyond the last the time stays, or falls with the square (constant I²t). */
export interface Edge {
  readonly points: readonly (readonly [value: number, time_s: number])[];
  readonly beyond: 'flat' | 'square';
}

/** An element whose time depends on one steady value alone: between a fast edge and a slow one. */
export interface Band {
  readonly acts: Acting;
  /** What it feels; `conductance` of the loop or of the insulation, 1 / Ω. */
  readonly feels: 'amperes' | 'residual' | 'loop' | 'insulation';
  readonly fast: Edge;
  /** Null: no standard obliges it to act at all. */
  readonly slow: Edge | null;
  /** What `multiple` counts in; absent: this device's own threshold. */
  readonly rated?: number;
  /** A fast one answers to the first peak, κ times as high. */
  readonly peaks?: boolean;
}

/** When this element acts on what is seen, s from now. */
export function bandOperation(band: Band, seen: Seen, tolerance: Tolerance): Operation {
  const value = felt(band, seen);
  const time = (which: Tolerance): number =>
    time_s(band, which === 'fast' && band.peaks === true ? value * (seen.peakFactor ?? 1) : value, which);
  const at_s = time(tolerance);
  const earliest_s = time('fast');
  const latest_s = time('slow');
  return {
    at_s,
    earliest_s,
    latest_s,
    region: at_s === Infinity ? 'none' : band.acts,
    certain: earliest_s === Infinity || latest_s < Infinity,
    multiple: value / (band.rated ?? threshold(band, band.slow === null ? 'fast' : tolerance)),
  };
}

function felt({ feels }: Band, seen: Seen): number {
  switch (feels) {
    case 'amperes':
      return seen.amperes;
    case 'residual':
      return seen.residual_A ?? 0;
    case 'loop':
      return 1 / (seen.loop_ohm ?? Infinity);
    case 'insulation':
      return 1 / (seen.insulation_ohm ?? Infinity);
  }
}

function threshold({ fast, slow }: Band, tolerance: Tolerance): number {
  const from = fast.points[0]?.[0] ?? Infinity;
  const must = slow?.points[0]?.[0] ?? Infinity;
  return tolerance === 'fast' ? from : tolerance === 'slow' ? must : (from + must) / 2;
}

/** A middle device starts half-way between the two thresholds and takes the geometric mean of the two times. */
function time_s(band: Band, value: number, tolerance: Tolerance): number {
  if (value < threshold(band, tolerance) || band.slow === null) {
    return tolerance === 'fast' && value >= threshold(band, 'fast') ? on(band.fast, value) : Infinity;
  }
  switch (tolerance) {
    case 'fast':
      return on(band.fast, value);
    case 'middle':
      return Math.sqrt(on(band.fast, value) * on(band.slow, value));
    case 'slow':
      return on(band.slow, value);
  }
}

/** The time on an edge; below its first point along its first stretch. */
function on({ points, beyond }: Edge, value: number): number {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return Infinity;
  if (value >= last[0]) return beyond === 'flat' ? last[1] : last[1] * (last[0] / value) ** 2;
  const next = Math.max(
    1,
    points.findIndex(([at]) => value < at),
  );
  const [low, high] = [points[next - 1] ?? first, points[next]];
  if (high === undefined) return first[1];
  return low[1] * (value / low[0]) ** (Math.log(high[1] / low[1]) / Math.log(high[0] / low[0]));
}
