import { z } from 'zod';
import { LEAST_OHM } from './plan.ts';
import { reactance_ohm, resistance_ohm } from './quantity.ts';

/** A resistance and a reactance in series, Ω. */
export interface SeriesOhms {
  readonly r: number;
  readonly x: number;
}

const percent = z.number().gt(0).max(50);

/** The keys in which a nameplate tells the impedance of a winding, in one of three ways. */
export const nameplateKeys = {
  resistance_percent: percent.optional().describe('on the rating'),
  reactance_percent: percent.optional(),
  impedance_percent: percent.optional().describe('or |Z| …'),
  x_over_r: z.number().min(0).max(100).optional().describe('… and X/R'),
  resistance_ohm: resistance_ohm.optional().describe('or measured on the secondary'),
  reactance_ohm: reactance_ohm.optional(),
};

type Nameplate = { readonly [Key in keyof typeof nameplateKeys]?: number | undefined };

/** Says so if the impedance is not written in exactly one way. */
export function checkNameplate(part: Nameplate, context: z.RefinementCtx): void {
  const ways = [
    ['resistance_percent', 'reactance_percent'],
    ['impedance_percent', 'x_over_r'],
    ['resistance_ohm', 'reactance_ohm'],
  ] as const;
  const started = ways.filter(([a, b]) => part[a] !== undefined || part[b] !== undefined);
  const whole = started[0];
  if (started.length === 1 && whole !== undefined && part[whole[0]] !== undefined && part[whole[1]] !== undefined)
    return;
  context.addIssue({
    code: 'custom',
    path: [],
    message:
      'needs its impedance in one way: resistance_percent and reactance_percent, or impedance_percent and x_over_r, or resistance_ohm and reactance_ohm',
    params: { code: 'missing-key', instead: 'resistance_percent: 1.3, reactance_percent: 1.4' },
  });
}

/** The impedance a nameplate tells, Ω; no resistance below what the solver calls a conductor.
 *  @param base_ohm V²/S of the winding */
export function nameplate_ohm(part: Nameplate, base_ohm: number): SeriesOhms {
  const { r, x } = written_ohm(part, base_ohm);
  return { r: Math.max(r, LEAST_OHM), x };
}

function written_ohm(part: Nameplate, base_ohm: number): SeriesOhms {
  if (part.impedance_percent !== undefined && part.x_over_r !== undefined)
    return ohmsOf((part.impedance_percent / 100) * base_ohm, part.x_over_r);
  if (part.resistance_percent !== undefined && part.reactance_percent !== undefined)
    return { r: (part.resistance_percent / 100) * base_ohm, x: (part.reactance_percent / 100) * base_ohm };
  return { r: part.resistance_ohm ?? 0, x: part.reactance_ohm ?? 0 };
}

/** An impedance by its magnitude, Ω, and its X/R. */
export function ohmsOf(magnitude_ohm: number, x_over_r: number): SeriesOhms {
  const r = magnitude_ohm / Math.hypot(1, x_over_r);
  return { r, x: r * x_over_r };
}
