import { z } from 'zod';
import { limbs, zones } from '../body/index.ts';
import type { Limb } from '../body/index.ts';

/** Amperes r.m.s. */
export const amperes = z.number().min(0);
/** Volts r.m.s. */
export const volts = z.number().min(0);
/** Degrees, −180 to 180. */
export const degrees = z.number().min(-180).max(180);
/** Seconds from the fault, −1 for long before. */
export const moment = z.number().min(-1);
/** Seconds; null = never, or without end. */
export const seconds = z.number().min(0).nullable().describe('null: never, or without end');
export const zone = z.enum(zones);
export const limb = z.enum(limbs as [Limb, ...Limb[]]);
export const wayKind = z.enum(['protective', 'neutral', 'soil', 'pipe', 'person', 'load', 'other']);

/** When a device operates at a steady current. */
export const operation = z.strictObject({
  at_s: seconds,
  earliest_s: seconds,
  latest_s: seconds,
  region: z.enum([
    'none',
    'thermal',
    'long-time',
    'short-time',
    'magnetic',
    'melting',
    'published',
    'residual',
    'ground-fault',
    'grounded-neutral',
    'insulation',
  ]),
  certain: z.boolean(),
  multiple: z.number().min(0).describe('of the rating, or of the threshold of a residual device'),
});

/** What every printed answer says first: which file, under which conditions. */
export const about = {
  ohmward: z.literal(1).describe('version of this format'),
  file: z.string(),
  place: z.string(),
  region: z.enum(['north-america', 'iec']),
  conditions: z.record(z.string(), z.string()).describe('chosen option by condition'),
};
