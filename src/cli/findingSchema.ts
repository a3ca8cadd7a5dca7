import { z } from 'zod';
import { amperes, limb, moment, operation, seconds, volts, wayKind, zone } from './measures.ts';

const at_s = moment;
const name = z.string();

const device = {
  at_s,
  device: name,
  amperes,
  rating_A: amperes.describe('of a residual device its threshold'),
  residual_A: amperes.optional(),
  reads_ohm: z.number().min(0).optional(),
  operation,
};

const remaining = {
  left: z.array(z.strictObject({ condition: name, option: name })),
  oversized: z.strictObject({ device: name, rating_A: amperes, built_A: amperes }).optional(),
  flow: z.strictObject({ amperes, heat_W: z.number().min(0), until_s: seconds, limit_s: z.number() }).optional(),
};

/** One finding of a run; the same kinds and values as in the engine. */
export const findingSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('working'),
    at_s,
    source_A: amperes,
    other_A: amperes,
    shorted: z.boolean(),
    loads: z.array(z.strictObject({ part: name, amperes, both: z.boolean() })),
  }),
  z.strictObject({ kind: z.literal('normal-state'), at_s, neutral_A: amperes, stray_A: amperes }),
  z.strictObject({ kind: z.literal('stray-current'), at_s, way: wayKind, part: name.optional(), amperes }),
  z.strictObject({ kind: z.literal('leg-volts'), at_s, low_V: volts, high_V: volts, nominal_V: volts }),
  z.strictObject({ kind: z.literal('load-volts'), at_s, part: name, volts, nominal_V: volts }),
  z.strictObject({
    kind: z.literal('leakage'),
    at_s,
    total_A: amperes,
    parts: z.array(z.strictObject({ part: name, amperes })),
  }),
  z.strictObject({
    kind: z.literal('neutral-harmonics'),
    at_s,
    part: name,
    amperes: amperes.describe('with all harmonics'),
    harmonic_A: amperes,
    line_A: amperes.describe('in the line beside it that carries most'),
  }),
  z.strictObject({ kind: z.literal('polarity-reversed'), at_s, condition: name }),
  z.strictObject({
    kind: z.literal('fault-current'),
    at_s,
    condition: name,
    option: name,
    amperes,
    source_V: volts.optional(),
    loop_ohm: z.number().min(0).optional(),
  }),
  z.strictObject({
    kind: z.literal('no-fault-current'),
    at_s,
    condition: name,
    option: name,
    amperes,
    volts: volts.describe('what stood across it before'),
    live: z.boolean().describe('whether the fault makes metal live'),
  }),
  z.strictObject({
    kind: z.literal('way-home'),
    at_s,
    name,
    way: wayKind,
    by: z.array(name),
    stations: z.array(name),
    amperes,
    total_A: amperes,
  }),
  z.strictObject({
    kind: z.literal('fault-state'),
    at_s,
    metal: z.number().min(0).max(1).optional().describe('share with metal all the way home; absent if none flows'),
  }),
  z.strictObject({ kind: z.literal('device-sees'), ...device }),
  z.strictObject({
    kind: z.literal('device-operated'),
    ...device,
    others: z
      .array(z.strictObject({ device: name, alone_A: amperes }))
      .describe('who might have been first or with it; up to alone_A it is sure to open alone'),
    letsThrough: z
      .strictObject({ least_A2s: z.number().min(0), most_A2s: z.number().min(0).nullable() })
      .optional()
      .describe('I²t of devices of its kind at this current, from cold; null: without end'),
  }),
  z.strictObject({
    kind: z.literal('device-warned'),
    at_s,
    device: name,
    reads_ohm: z.number().min(0),
    threshold_ohm: z.number().min(0),
  }),
  z.strictObject({
    kind: z.literal('conductor-limit'),
    at_s,
    part: name,
    conductor: z.enum(['line', 'neutral', 'protective']),
    amperes,
    withstand_A2s: z.number().min(0),
    melts_s: seconds,
  }),
  z.strictObject({
    kind: z.literal('device-stays-shut'),
    because: z.enum(['below-rating', 'may-not', 'too-late', 'jammed', 'not-fitted', 'balanced', 'below-threshold']),
    ...device,
  }),
  z.strictObject({
    kind: z.literal('live-metal'),
    at_s,
    part: name,
    what: z.enum(['case', 'metal']),
    volts,
    until_s: seconds,
  }),
  z.strictObject({
    kind: z.literal('person-feels'),
    at_s,
    person: name,
    touching: z.array(limb),
    holding: name.optional().describe('another person'),
    prospective_V: volts,
    touch_V: volts,
    across: z.tuple([limb, limb]).optional().describe('between which places, where there are more'),
    body_A: amperes,
    heart_A: amperes,
    zone,
    letGo: z.boolean(),
    until_s: seconds,
  }),
  z.strictObject({
    kind: z.literal('person-spared'),
    at_s,
    person: name,
    because: z.enum(['away', 'no-current', 'imperceptible']),
    body_A: amperes,
    perception_A: amperes.optional(),
  }),
  z.strictObject({ kind: z.literal('person-released'), at_s, person: name }),
  z.strictObject({
    kind: z.literal('person-held'),
    at_s,
    person: name,
    hand_A: amperes,
    letGo_A: amperes,
    until_s: seconds,
  }),
  z.strictObject({ kind: z.literal('zone-reached'), at_s, person: name, zone, heart_A: amperes }),
  z.strictObject({ kind: z.literal('load-runs-on'), at_s, part: name, amperes, share: z.number().min(0) }),
  z.strictObject({
    kind: z.literal('disconnection'),
    at_s,
    opened_s: seconds,
    limit_s: z.number(),
    nominal_V: volts,
    earthing: z.enum(['TN', 'TT', 'IT']),
  }),
  z.strictObject({
    kind: z.literal('made-safe-by'),
    at_s,
    condition: name,
    option: name,
    device: name.optional(),
    opened_s: seconds.optional(),
    person: name.optional(),
    ...remaining,
  }),
  z.strictObject({ kind: z.literal('already-safe'), at_s, ...remaining }),
  z.strictObject({ kind: z.literal('none-alone'), at_s, tried: z.number().int().min(0), together: z.boolean() }),
]);
