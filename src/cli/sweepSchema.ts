import { z } from 'zod';
import { amperes, about, seconds, volts, zone } from './measures.ts';

/** What `ohmward sweep --json` prints. */
export const sweepSchema = z.strictObject({
  ...about,
  axes: z
    .array(z.strictObject({ path: z.string(), from: z.number(), to: z.number(), steps: z.number().int().min(1) }))
    .readonly()
    .describe('one value, or two for a map'),
  points: z
    .array(
      z.strictObject({
        values: z.array(z.number()).readonly().describe('in the order of the axes, the last fastest'),
        fault_A: amperes.describe('when the fault strikes; 0 where none does'),
        opens_s: seconds.describe('when the first device opens; null: never'),
        metal_V: volts.describe('the highest metal when the fault strikes, above the floor'),
        body_A: amperes.describe('through whoever carries most'),
        zone,
        safe: z.boolean(),
      }),
    )
    .readonly(),
});
