/** First-order image of a bimetal: heat follows the square of the current with one time constant and opens at a limit.
 *  Heat is counted in (I / rated current)²: 0 cold, p² after a long time at p times the rating.
 *  @see IEC 60255-149:2013 (form of the image), from memory; used for breakers as an approximation, common practice, no source */
export interface ThermalImage {
  /** Heat at which it opens: the square of the greatest multiple it holds for ever. */
  readonly limit: number;
  readonly tau_s: number;
}

/** A published point that a device must meet by opening: at this multiple, from this heat, within this time. */
export interface MustOpen {
  readonly multiple: number;
  readonly heat: number;
  readonly within_s: number;
}

/** A published point that a device must meet by staying shut: at this multiple, from cold, for this time. */
export interface MustHold {
  readonly multiple: number;
  readonly for_s: number;
}

/** A device on the edge of its band stands this share inside the published time, so that rounding never carries it over. */
const INSIDE = 0.01;
/** A limit nearer than this share to the heat it is reached from could not be told from it: double rounding, with four digits left. */
const RESOLVABLE = 1e-12;
/** Two or three are enough for the published points, where T is ten times τ and more. */
const ROUNDS = 40;

/** Time from this heat to opening at a steady multiple, s: τ·ln[(m² − heat) / (m² − limit)]; `Infinity` if it never opens. */
export function openingTime_s(image: ThermalImage, heat: number, multiple: number): number {
  const short = image.limit - heat;
  if (short <= 0) return 0;
  const excess = multiple * multiple - image.limit;
  return excess > 0 ? image.tau_s * Math.log1p(short / excess) : Infinity;
}

/** Heat after this time at a steady multiple, in (I / rated current)². */
export function heatAfter(image: ThermalImage, heat: number, multiple: number, time_s: number): number {
  const final = multiple * multiple;
  return final + (heat - final) * Math.exp(-time_s / image.tau_s);
}

/** The slowest image that still opens in time at every point.
 *  Derivation: a point (m, h, T) is met if τ·ln[(m² − h)/(m² − limit)] ≤ T. Every higher point bounds τ for a given limit, so
 *  τ = min over them of T / ln[(m² − h)/(m² − limit)]; the lowest point then gives the greatest limit that τ allows,
 *  limit = m² − (m² − h)·exp(−T/τ). The two are repeated until they stand still.
 *  @param lowest the point of lowest multiple; it decides up to what current such a device may hold for ever */
export function slowestImage(lowest: MustOpen, higher: readonly MustOpen[]): ThermalImage {
  const square = lowest.multiple * lowest.multiple;
  let limit = square;
  let tau_s = 0;
  for (let round = 0; round < ROUNDS; round++) {
    tau_s = Infinity;
    for (const { multiple, heat, within_s } of higher) {
      const logarithm = Math.log1p((limit - heat) / (multiple * multiple - limit));
      tau_s = Math.min(tau_s, (within_s * (1 - INSIDE)) / logarithm);
    }
    const last = Math.exp((-lowest.within_s * (1 - INSIDE)) / tau_s);
    limit = square - (square - lowest.heat) * Math.max(last, RESOLVABLE);
  }
  return { limit, tau_s };
}

/** The fastest image that holds this multiple for ever and stays shut long enough at every point, from cold.
 *  Derivation: a point (m, T) is met if τ·ln[m²/(m² − limit)] > T, so τ = max over them of T / ln[m²/(m² − limit)]. */
export function fastestImage(holding: number, points: readonly MustHold[]): ThermalImage {
  const limit = holding * holding;
  let tau_s = 0;
  for (const { multiple, for_s } of points) {
    tau_s = Math.max(tau_s, (for_s * (1 + INSIDE)) / Math.log1p(limit / (multiple * multiple - limit)));
  }
  return { limit, tau_s };
}

/** The image between two: mean of what they hold, geometric mean of their time constants; opens between them at any current and heat. */
export function middleImage(fast: ThermalImage, slow: ThermalImage): ThermalImage {
  const holding = (Math.sqrt(fast.limit) + Math.sqrt(slow.limit)) / 2;
  return { limit: holding * holding, tau_s: Math.sqrt(fast.tau_s * slow.tau_s) };
}
