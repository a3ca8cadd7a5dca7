import { z } from 'zod';
import { findingSchema } from './findingSchema.ts';
import { about, amperes, degrees, limb, moment, operation, seconds, volts, wayKind, zone } from './measures.ts';

const because = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('begins') }),
  z.strictObject({ kind: z.literal('fault-strikes'), condition: z.string() }),
  z.strictObject({ kind: z.literal('touches'), person: z.string() }),
  z.strictObject({ kind: z.enum(['device-operated', 'device-warned']), device: z.string(), operation }),
  z.strictObject({ kind: z.literal('person-released'), person: z.string() }),
  z.strictObject({ kind: z.literal('zone-reached'), person: z.string(), zone }),
]);

const state = z.enum(['closed', 'open', 'warning', 'jammed', 'not fitted']);

const person = z.strictObject({
  person: z.string(),
  touching: z.array(limb),
  prospective_V: volts.describe('between the contacts before the touch'),
  touch_V: volts.describe('across the body while touching'),
  limbs_A: z.partialRecord(limb, amperes),
  body_A: amperes.describe('through the limb that carries most'),
  heart_A: amperes.describe('left hand to feet equivalent, IEC 60479-1'),
  heartFactor: z.number().min(0),
  path: z.string(),
  zone: zone.describe('at the end of the interval, for the whole exposure so far'),
  exposure_s: seconds,
  contacts: z.array(
    z.strictObject({
      limb,
      outside_ohm: z.number().min(0).describe('shoes, gloves'),
      skin: z.enum(['dry', 'water-wet', 'salt-wet']).optional(),
      area: z.enum(['large', 'medium', 'small']).optional(),
      held: z.boolean().optional().describe('somebody else takes hold here'),
    }),
  ),
  letGo: z.boolean().describe('whether the hand can still be opened at will'),
  perception_A: amperes.describe('up to here nothing is felt'),
});

const paths = z.strictObject({
  of: z.enum(['fault', 'load']),
  total_A: amperes,
  circulating_A: amperes,
  ways: z.array(
    z.strictObject({
      name: z.string(),
      kind: wayKind,
      via: z.array(z.string()).describe('parts in order, from the fault or the load to the winding'),
      amperes: z.number().describe('in phase with the whole; they sum to total_A'),
      branches: z.array(z.string()),
      metal: z.boolean().describe('metal from the fault or the load to the winding'),
      text: z.string(),
      hops: z.array(z.string()),
    }),
  ),
});

const interval = z.strictObject({
  start_s: moment,
  end_s: seconds.describe('null: it never ends'),
  because,
  conditions: about.conditions,
  branches: z.array(
    z.strictObject({
      name: z.string(),
      part: z.string(),
      role: z.string(),
      amperes: amperes.describe('counted from → to'),
      degrees,
    }),
  ),
  harmonics: z
    .array(
      z.strictObject({
        order: z.number().int().min(2),
        branches: z.array(z.strictObject({ name: z.string(), amperes, degrees })),
      }),
    )
    .optional()
    .describe('multiples of the frequency at which currents flow; a total is the root of the sum of squares'),
  nodes: z.array(z.strictObject({ name: z.string(), volts: volts.describe('against remote earth'), degrees })),
  people: z.array(person),
  devices: z.array(
    z.strictObject({
      device: z.string(),
      state,
      amperes,
      residual_A: amperes.optional(),
      reads_ohm: z.number().min(0).nullable().optional().describe('by what it sends out itself'),
      operation: operation.describe('outlook from the start of this interval'),
    }),
  ),
  paths: paths.nullable().describe('where the current goes home; null if none leaves the windings'),
});

/** What `ohmward run --json` prints. Amperes and volts r.m.s.; null stands for never and for without end. */
export const resultSchema = z.strictObject({
  ...about,
  frequency_Hz: z.number(),
  vocabulary: z.enum(['north-america', 'iec']),
  tolerance: z.enum(['fast', 'middle', 'slow']),
  until_s: z.number().gt(0),
  devices: z.array(
    z.strictObject({
      device: z.string(),
      kind: z.enum([
        'breaker',
        'residual-device',
        'rcbo',
        'afci',
        'adjustable-breaker',
        'fuse',
        'device-by-points',
        'insulation-monitor',
      ]),
      state: state.describe('in the end'),
      operated: z
        .strictObject({ at_s: z.number().min(0), amperes, residual_A: amperes.optional(), operation })
        .nullable()
        .describe('when and why; null if it did not'),
    }),
  ),
  intervals: z.array(interval).min(1),
  findings: z.array(findingSchema),
  words: z.strictObject({
    headline: z.string(),
    why: z.array(z.string()),
    story: z.array(z.strictObject({ at_s: moment, text: z.string() })),
    cautions: z.array(z.string()),
  }),
});
