/** How many equally likely values stand for a distribution. */
export const STEPS = 4096;

/** Lognormal: half lie below the median, one in twenty above `factor` times it (1: all the same). */
export interface Spread {
  readonly median: number;
  readonly factor: number;
}

/** Standard deviations of the normal distribution that nineteen in twenty stay below. */
export const NINETEEN_IN_TWENTY = 1.6448536269514722;

/** The equally likely values of a spread, in rising order.
 *  @throws RangeError if its median is below zero or its factor below one */
export function stepsOf({ median, factor }: Spread): Float64Array {
  if (!(median >= 0 && median < Infinity && factor >= 1 && factor < Infinity)) {
    throw new RangeError(`A median of ${median} and a factor of ${factor}: write zero or more, and one or more`);
  }
  const sigma = Math.log(factor) / NINETEEN_IN_TWENTY;
  return deviations.map((z) => median * Math.exp(sigma * z));
}

/** Normal deviate that this share stays below. Rational approximations of P. J. Acklam (2003), within 1.2e-9, from memory. */
export function deviate(share: number): number {
  if (share > 0.5) return -deviate(1 - share);
  if (share < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(share));
    return polynomial(TAIL, q) / (polynomial(TAIL_UNDER, q) * q + 1);
  }
  const q = share - 0.5;
  const r = q * q;
  return (polynomial(MIDDLE, r) * q) / (polynomial(MIDDLE_UNDER, r) * r + 1);
}

const MIDDLE = [
  -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239,
];
const MIDDLE_UNDER = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572];
const TAIL = [
  -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const TAIL_UNDER = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416];

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}

/** The middle deviate of each of the equally likely steps. */
const deviations = Float64Array.from({ length: STEPS }, (_, step) => deviate((step + 0.5) / STEPS));
