import type { BreakerCurve } from './breakerCurve.ts';
import { iec60898Curve } from './iec60898.ts';
import { assertMagnitude, type Operation, type Tolerance } from './operation.ts';
import type { ResidualSettings } from './residualDevice.ts';
import { heatAfter, openingTime_s } from './thermalImage.ts';
import { ul489Curve } from './ul489.ts';

/** A thermal–magnetic breaker as bought; the magnetic band may be overridden in multiples of the rating. With `residual` it
 *  holds a residual device too (an RCBO, a breaker with GFCI, most arc-fault breakers). */
export interface BreakerSettings {
  readonly family: 'ul489' | 'iec60898-b' | 'iec60898-c' | 'iec60898-d';
  readonly rating_A: number;
  readonly magneticFrom?: number;
  readonly magneticTo?: number;
  readonly residual?: ResidualSettings;
}

/** What the breaker's bimetal remembers: heat in (I / rating)²; 0 cold, p² after a long time at p times the rating. */
export interface ThermalState {
  readonly heat: number;
}

/** When the thermal and magnetic parts of this breaker open it at this steady current (r.m.s. A), s from now.
 *  The band is that of a fast and of a slow device with the same heat as this one. The magnetic part acts above `magneticFrom`
 *  (fast), at the geometric mean of the band (middle) or at `magneticTo` (slow); between the two ends it is not certain.
 *  @param peakFactor κ of the first peak: a fast magnetic part answers to a peak κ times that of the steady wave
 *  @throws RangeError for a rating, band or current that is no such thing */
export function breakerOperation(
  settings: BreakerSettings,
  state: ThermalState,
  amperes: number,
  tolerance: Tolerance = 'middle',
  peakFactor = 1,
): Operation {
  const curve = curveOf(settings);
  assertMagnitude('The current through a breaker', amperes);
  const multiple = amperes / settings.rating_A;
  const magnetic = (which: Tolerance): boolean =>
    actsMagnetically(curve, which === 'fast' ? multiple * peakFactor : multiple, which);
  const time = (which: Tolerance): number => time_s(curve, state.heat, multiple, which, magnetic(which));
  const at_s = time(tolerance);
  const earliest_s = time('fast');
  const latest_s = time('slow');
  const magneticOnlyInSome = magnetic('fast') !== magnetic('slow');
  return {
    at_s,
    earliest_s,
    latest_s,
    region: at_s === Infinity ? 'none' : magnetic(tolerance) ? 'magnetic' : 'thermal',
    certain: !magneticOnlyInSome && (earliest_s === Infinity) === (latest_s === Infinity),
    multiple,
  };
}

/** What the bimetal remembers after this time (s) at this steady current (r.m.s. A).
 *  @throws RangeError for a rating, band, current or time that is no such thing */
export function breakerAfter(
  settings: BreakerSettings,
  state: ThermalState,
  amperes: number,
  time_s: number,
  tolerance: Tolerance = 'middle',
): ThermalState {
  const curve = curveOf(settings);
  assertMagnitude('The current through a breaker', amperes);
  if (!(time_s >= 0)) throw new RangeError(`The time at this current is ${time_s} s: write zero or more`);
  return { heat: heatAfter(curve.images[tolerance], state.heat, amperes / settings.rating_A, time_s) };
}

function curveOf(settings: BreakerSettings): BreakerCurve {
  const { rating_A } = settings;
  if (!(rating_A > 0 && rating_A < Infinity)) {
    throw new RangeError(`A breaker is rated ${rating_A} A: write a finite rating above zero`);
  }
  const curve = familyCurve(settings);
  const { magneticFrom = curve.magneticFrom, magneticTo = curve.magneticTo } = settings;
  if (!(magneticFrom > 0 && magneticFrom <= magneticTo)) {
    throw new RangeError(`The magnetic band runs from ${magneticFrom} to ${magneticTo}: write 0 < from ≤ to`);
  }
  return magneticFrom === curve.magneticFrom && magneticTo === curve.magneticTo
    ? curve
    : { ...curve, magneticFrom, magneticTo };
}

function familyCurve(settings: BreakerSettings): BreakerCurve {
  switch (settings.family) {
    case 'ul489':
      return ul489Curve(settings.rating_A);
    case 'iec60898-b':
      return iec60898Curve('b', settings.rating_A);
    case 'iec60898-c':
      return iec60898Curve('c', settings.rating_A);
    case 'iec60898-d':
      return iec60898Curve('d', settings.rating_A);
    default:
      return unknownFamily(settings.family);
  }
}

function unknownFamily(family: never): never {
  throw new RangeError(`No breaker family ${String(family)}: write ul489, iec60898-b, iec60898-c or iec60898-d`);
}

function actsMagnetically(curve: BreakerCurve, multiple: number, tolerance: Tolerance): boolean {
  if (multiple >= curve.magneticTo) return true;
  switch (tolerance) {
    case 'fast':
      return multiple > curve.magneticFrom;
    case 'middle':
      return multiple >= Math.sqrt(curve.magneticFrom * curve.magneticTo);
    case 'slow':
      return false;
  }
}

/** Whichever part is first; the contacts take their opening time in either case. */
function time_s(
  curve: BreakerCurve,
  heat: number,
  multiple: number,
  tolerance: Tolerance,
  magnetically: boolean,
): number {
  const opening_s = curve.opening_s[tolerance];
  return magnetically ? opening_s : Math.max(openingTime_s(curve.images[tolerance], heat, multiple), opening_s);
}
