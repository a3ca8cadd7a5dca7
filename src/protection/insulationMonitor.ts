import type { Band } from './band.ts';

/** An insulation monitor of an IT system: it warns below this resistance and opens nothing. */
export interface MonitorSettings {
  readonly family: 'insulation-monitor';
  readonly threshold_ohm: number;
}

/** Warns within 15 % of its setting and within 10 s; a fast one in 1 s. IEC 61557-8, from memory.
 *  @throws RangeError for a threshold that is no such thing */
export function monitorBand({ threshold_ohm }: MonitorSettings): Band {
  if (!(threshold_ohm > 0 && threshold_ohm < Infinity))
    throw new RangeError(`An insulation monitor is set to ${threshold_ohm} Ω: write a finite resistance above zero`);
  return {
    acts: 'insulation',
    feels: 'insulation',
    fast: { points: [[1 / (1.15 * threshold_ohm), 1]], beyond: 'flat' },
    slow: { points: [[1 / (0.85 * threshold_ohm), 10]], beyond: 'flat' },
    rated: 1 / threshold_ohm,
  };
}
