import { assertMagnitude, type Operation, type Tolerance } from './operation.ts';
import { ul943ClassA, ul943Longest_s } from './ul943.ts';

/** A residual-current device as bought. */
export interface ResidualSettings {
  readonly family: 'ul943-class-a';
}

/** When this device opens at this steady residual current (r.m.s. A), s from now.
 *  Threshold 4, 5 or 6 mA (fast, middle, slow). A slow device takes the longest time the curve allows, a fast one the time at the
 *  end of the curve (25 ms) at any current (common practice, no source), a middle one the geometric mean of the two.
 *  @throws RangeError for a current that is no such thing */
export function residualOperation(
  _settings: ResidualSettings,
  residual_A: number,
  tolerance: Tolerance = 'middle',
): Operation {
  assertMagnitude('The residual current', residual_A);
  const at_s = time_s(residual_A, tolerance);
  return {
    at_s,
    earliest_s: time_s(residual_A, 'fast'),
    latest_s: time_s(residual_A, 'slow'),
    region: at_s === Infinity ? 'none' : 'residual',
    certain: residual_A < ul943ClassA.from_A || residual_A >= ul943ClassA.to_A,
    multiple: residual_A / threshold_A(tolerance),
  };
}

function threshold_A(tolerance: Tolerance): number {
  const { from_A, to_A } = ul943ClassA;
  switch (tolerance) {
    case 'fast':
      return from_A;
    case 'middle':
      return (from_A + to_A) / 2;
    case 'slow':
      return to_A;
  }
}

function time_s(residual_A: number, tolerance: Tolerance): number {
  if (residual_A < threshold_A(tolerance)) return Infinity;
  const shortest_s = ul943Longest_s(ul943ClassA.end_A);
  const longest_s = ul943Longest_s(residual_A);
  switch (tolerance) {
    case 'fast':
      return shortest_s;
    case 'middle':
      return Math.sqrt(shortest_s * longest_s);
    case 'slow':
      return longest_s;
  }
}
