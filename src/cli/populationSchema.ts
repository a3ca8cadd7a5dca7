import { z } from 'zod';
import { amperes, about, seconds, volts, zone } from './measures.ts';

const share = z.number().min(0).max(1);
const weight = z.number().min(0).describe('shares of each kind add up to any whole');
const spread = z
  .strictObject({ median: z.number().min(0), factor: z.number().min(1) })
  .describe('half lie below the median, and one in twenty above the median times the factor');

/** What `ohmward population --json` prints. */
export const populationSchema = z.strictObject({
  ...about,
  seed: z.number().int().min(0).describe('the same seed gives the same people'),
  exposed: z.strictObject({
    part: z.string(),
    source: z.strictObject({
      volts: volts.describe('to remote earth, before anybody touches it'),
      impedance_ohm: z.strictObject({ re: z.number().min(0), im: z.number() }),
      frequency_Hz: z.number().min(0),
    }),
    ends_s: seconds.describe('when a device ends it; null: never'),
  }),
  who: z.strictObject({
    touches: z.partialRecord(
      z.enum(['left hand to feet', 'right hand to feet', 'both hands to feet', 'hand to hand']),
      weight,
    ),
    skins: z.partialRecord(z.enum(['dry', 'water-wet', 'salt-wet']), weight),
    areas: z.partialRecord(z.enum(['large', 'medium', 'small']), weight),
    shoe_ohm: spread,
    floor_ohm: spread,
    time_s: spread,
    size: z.enum(['adult', 'small adult', 'child']),
  }),
  outcome: z.strictObject({
    people: z.number().int().min(1),
    zones: z.array(z.strictObject({ zone, share })).readonly().describe('mildest first; the shares sum to 1'),
    held: share.describe('could not let go by the long limit'),
    quantiles: z
      .array(z.strictObject({ share, amperes }))
      .readonly()
      .describe('body current that this share stays below'),
  }),
});
