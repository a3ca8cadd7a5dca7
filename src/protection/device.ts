import { adjustableBands, type AdjustableSettings } from './adjustable.ts';
import { bandOperation, type Band } from './band.ts';
import { breakerAfter, breakerOperation, type BreakerSettings, type ThermalState } from './breaker.ts';
import { fuseBand, type FuseSettings } from './fuse.ts';
import { monitorBand, type MonitorSettings } from './insulationMonitor.ts';
import { assertMagnitude, firstOf, type Operation, type Seen, type Tolerance } from './operation.ts';
import { pointsBands, type PointsSettings } from './publishedPoints.ts';
import { residualBands, type ResidualSettings } from './residualDevice.ts';

/** What counts amperes: each of these has a `rating_A`. */
export type OvercurrentSettings = BreakerSettings | AdjustableSettings | FuseSettings | PointsSettings;

/** Any device as bought. */
export type DeviceSettings = OvercurrentSettings | ResidualSettings | MonitorSettings;

/** One thing in a device that can act: a bimetal with its coil, or a band. */
export type Element = { readonly kind: 'thermal–magnetic'; readonly settings: BreakerSettings } | Band;

const COLD: ThermalState = { heat: 0 };

/** The elements of a device for what it sees, always as many and in the same order.
 *  @throws RangeError for a setting that is no such thing */
export function elementsOf(settings: DeviceSettings, seen: Seen): readonly Element[] {
  switch (settings.family) {
    case 'ul489':
    case 'iec60898-b':
    case 'iec60898-c':
    case 'iec60898-d':
      return [
        { kind: 'thermal–magnetic', settings },
        ...(settings.residual === undefined ? [] : residualBands(settings.residual, seen)),
      ];
    case 'adjustable':
      return adjustableBands(settings);
    case 'gg':
    case 'ul248-time-delay':
      return [fuseBand(settings)];
    case 'points':
      return pointsBands(settings);
    case 'insulation-monitor':
      return [monitorBand(settings)];
    case 'ul943-class-a':
    case 'iec61008':
    case 'equipment':
      return residualBands(settings, seen);
    default:
      throw new RangeError(`No device of the family ${String((settings as { family: unknown }).family)}`);
  }
}

/** When this element acts on what is seen, s from now.
 *  @throws RangeError for a current that is no such thing */
export function elementOperation(element: Element, state: ThermalState, seen: Seen, tolerance: Tolerance): Operation {
  if ('kind' in element) return breakerOperation(element.settings, state, seen.amperes, tolerance, seen.peakFactor);
  assertMagnitude('The current through a device', seen.amperes);
  return bandOperation(element, seen, tolerance);
}

/** What this element remembers of heat after this time, s; bands remember only how far they have come. */
export function elementAfter(
  element: Element,
  state: ThermalState,
  seen: Seen,
  time_s: number,
  tolerance: Tolerance,
): ThermalState {
  return 'kind' in element ? breakerAfter(element.settings, state, seen.amperes, time_s, tolerance) : COLD;
}

/** When a whole device that was cold operates on what is seen, s from now. */
export function coldOperation(settings: DeviceSettings, seen: Seen, tolerance: Tolerance = 'middle'): Operation {
  return firstOf(elementsOf(settings, seen).map((element) => elementOperation(element, COLD, seen, tolerance)));
}

/** Earliest and latest opening from cold at this multiple of the rating, s: the two edges of the time–current band. */
export function overcurrentBand(
  settings: OvercurrentSettings,
  multiple: number,
): { readonly earliest_s: number; readonly latest_s: number } {
  assertMagnitude('The multiple of the rating', multiple);
  const { earliest_s, latest_s } = coldOperation(settings, { amperes: multiple * settings.rating_A });
  return { earliest_s, latest_s };
}

/** What a device that was cold lets through until it is open, I²t in A²s: least and most of its kind; Infinity if it never
 *  opens. Steady alternating current is taken; an offset first wave adds to it, the limiting of a breaker takes away. */
export function letThrough_A2s(
  settings: OvercurrentSettings,
  amperes: number,
): { readonly least: number; readonly most: number } {
  const { earliest_s, latest_s } = coldOperation(settings, { amperes });
  const square = amperes * amperes;
  return { least: earliest_s * square, most: latest_s * square };
}
