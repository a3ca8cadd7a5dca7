import { z } from 'zod';
import { inSeason, type Ground } from '../earth/index.ts';
import { resistivity_ohm_m, soilName, soil_ohm_m } from './quantity.ts';

/** Keys that tell the soil around an electrode: its resistivity or name, a lower layer, the season. */
export const soilKeys = {
  soil_ohm_m: soil_ohm_m.optional(),
  soil: soilName.optional().describe('instead of soil_ohm_m'),
  below: z
    .strictObject({
      from_m: z.number().min(0.1).max(1000).describe('the depth where it begins'),
      soil_ohm_m: soil_ohm_m.optional(),
      soil: soilName.optional().describe('instead of soil_ohm_m'),
    })
    .optional()
    .describe('another soil under the first'),
  seasonal_factor: z
    .number()
    .min(0.1)
    .max(20)
    .optional()
    .describe(
      'what the resistivity of the upper soil, or a measured resistance, is multiplied by; dry season about 1.2 to 1.8',
    ),
} as const;

/** The soil as it was written. */
export type WrittenSoil = z.output<z.ZodObject<typeof soilKeys>>;

/** The ground an electrode stands in, in its season; undefined if no resistivity is written. */
export function groundOf(written: WrittenSoil): Ground | undefined {
  const upper = resistivity_ohm_m(written.soil_ohm_m, written.soil);
  if (upper === undefined) return undefined;
  const { below, seasonal_factor = 1 } = written;
  const lower = below === undefined ? undefined : resistivity_ohm_m(below.soil_ohm_m, below.soil);
  const ground: Ground =
    below === undefined || lower === undefined
      ? { kind: 'even', soil_ohm_m: upper }
      : { kind: 'layered', upper_ohm_m: upper, lower_ohm_m: lower, thickness_m: below.from_m };
  return inSeason(ground, seasonal_factor);
}

/** What is missing of a soil: the path of keys, and what to write there; undefined if nothing is. */
export function soilMissing(written: WrittenSoil): readonly [path: readonly string[], instead: string] | undefined {
  const { below } = written;
  if (resistivity_ohm_m(written.soil_ohm_m, written.soil) === undefined) return [['soil_ohm_m'], 'soil_ohm_m: 100'];
  return below !== undefined && resistivity_ohm_m(below.soil_ohm_m, below.soil) === undefined
    ? [['below', 'soil_ohm_m'], 'soil_ohm_m: 50']
    : undefined;
}
