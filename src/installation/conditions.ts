import { z } from 'zod';
import { limbs as places } from '../body/index.ts';
import type { Limb } from '../body/index.ts';
import { coveringSchema, gloveSchema, shoeSchema } from './worn.ts';
import { nameSchema, pairSchema, resistance_ohm, terminalSchema } from './quantity.ts';

/** Where a condition stands among the others. */
export type ConditionGroup = 'fault' | 'path' | 'device' | 'load' | 'person';

/** Chosen option by the condition's name; a missing one is its first option, "as it should be". */
export type Conditions = Readonly<Record<string, string>>;

const limbSchema = z.enum(places as [Limb, ...Limb[]]);
const skinSchema = z.enum(['dry', 'water-wet', 'salt-wet']);
const areaSchema = z.enum(['large', 'medium', 'small']);
const place = {
  at: z.string().min(1).max(200).optional().describe('a conductor, e.g. mixer run.protective, or a two-terminal part'),
  between: pairSchema.optional().describe('or the two terminals of a join'),
};
const initially = nameSchema.optional().describe('the option chosen when the place opens');

const SWITCH = ['no', 'yes'] as const;

function withPlace<T extends { readonly at?: string | undefined; readonly between?: readonly string[] | undefined }>(
  value: T,
  context: z.RefinementCtx,
): void {
  if ((value.at === undefined) === (value.between === undefined))
    context.addIssue({
      code: 'custom',
      path: [],
      message: 'needs one place: a conductor (at) or a join (between)',
      params: { code: 'missing-key', instead: 'at: mixer run.protective' },
    });
}

function options<Group extends ConditionGroup>(group: Group, names: readonly string[] = SWITCH) {
  return { group, options: names };
}

/** Options by name, at least one. */
function byOption<Value extends z.ZodType>(value: Value) {
  return z.record(nameSchema, value).superRefine((record, context) => {
    if (Object.keys(record).length > 0) return;
    context.addIssue({
      code: 'custom',
      message: 'has no options',
      params: { code: 'missing-key', instead: 'one option at least, by name' },
    });
  });
}

const insulationFault = z
  .strictObject({
    kind: z.literal('insulation-fault'),
    between: pairSchema,
    resistance_ohm: byOption(resistance_ohm).describe('by the name of each option beside "no"'),
    initially,
  })
  .transform((value) => ({ ...value, ...options('fault', ['no', ...Object.keys(value.resistance_ohm)]) }));
const open = z
  .strictObject({ kind: z.literal('open'), ...place, initially })
  .superRefine(withPlace)
  .transform((value) => ({ ...value, ...options('path') }));
const loose = z
  .strictObject({
    kind: z.literal('loose'),
    ...place,
    resistance_ohm: resistance_ohm.describe('added to what is there'),
    initially,
  })
  .superRefine(withPlace)
  .transform((value) => ({ ...value, ...options('path') }));
const link = z
  .strictObject({ kind: z.literal('link'), between: pairSchema, resistance_ohm: resistance_ohm.optional(), initially })
  .transform((value) => ({ ...value, ...options('path') }));
const swap = z
  .strictObject({
    kind: z.literal('swap'),
    ends: pairSchema.describe('two conductor ends, each in one join: what they are joined to is exchanged'),
    initially,
  })
  .transform((value) => ({ ...value, ...options('path') }));
const move = z
  .strictObject({
    kind: z.literal('move'),
    end: terminalSchema.describe('this terminal …'),
    from: terminalSchema.describe('… leaves the one it is joined to'),
    to: terminalSchema.describe('… and is joined to this one'),
    resistance_ohm: resistance_ohm.optional().describe('of the new lead'),
    initially,
  })
  .transform((value) => ({ ...value, ...options('path') }));
const setting = z
  .strictObject({
    kind: z.literal('setting'),
    device: nameSchema,
    rating_A: z
      .number()
      .gt(0)
      .max(1e5)
      .optional()
      .meta({ examples: [40] }),
    residual_A: z.number().gt(0).max(100).optional().describe('of a residual device'),
    initially,
  })
  .superRefine((value, context) => {
    if (value.rating_A !== undefined || value.residual_A !== undefined) return;
    context.addIssue({
      code: 'custom',
      path: [],
      message: 'sets nothing',
      params: { code: 'missing-key', instead: 'rating_A: 40' },
    });
  })
  .transform((value) => ({ ...value, ...options('device') }));
const jammed = z
  .strictObject({ kind: z.literal('jammed'), device: nameSchema, initially })
  .transform((value) => ({ ...value, ...options('device') }));
const fitted = z
  .strictObject({ kind: z.literal('fitted'), device: nameSchema, initially })
  .transform((value) => ({ ...value, ...options('device') }));
const running = z
  .strictObject({ kind: z.literal('running'), appliance: nameSchema, initially })
  .transform((value) => ({ ...value, ...options('load') }));
const transfer = z
  .strictObject({ kind: z.literal('transfer'), switch: nameSchema.describe('a transfer switch'), initially })
  .transform((value) => ({ ...value, ...options('load', ['normal', 'alternative']) }));
const touching = z
  .strictObject({
    kind: z.literal('touching'),
    person: nameSchema,
    limbs: byOption(z.array(limbSchema)).describe('limbs in touch, by the name of each option'),
    initially,
  })
  .transform((value) => ({ ...value, ...options('person', Object.keys(value.limbs)) }));
const footwear = z
  .strictObject({
    kind: z.literal('footwear'),
    person: nameSchema,
    per_foot_ohm: byOption(shoeSchema).describe('of one shoe, by the name of each option'),
    skin: z.record(nameSchema, skinSchema).optional().describe('of the feet, where it differs from the rest'),
    initially,
  })
  .transform((value) => ({ ...value, ...options('person', Object.keys(value.per_foot_ohm)) }));
const gloves = z
  .strictObject({
    kind: z.literal('gloves'),
    person: nameSchema,
    per_hand_ohm: byOption(gloveSchema).describe('of one glove, by the name of each option; 0 is a bare hand'),
    skin: z.record(nameSchema, skinSchema).optional().describe('of the hands, where it differs from the rest'),
    area: z.record(nameSchema, areaSchema).optional().describe('of the grip, where it differs from the rest'),
    initially,
  })
  .transform((value) => ({ ...value, ...options('person', Object.keys(value.per_hand_ohm)) }));
const mat = z
  .strictObject({
    kind: z.literal('mat'),
    person: nameSchema,
    both_feet_ohm: byOption(coveringSchema).describe('under both feet together, by the name of each option'),
    initially,
  })
  .transform((value) => ({ ...value, ...options('person', Object.keys(value.both_feet_ohm)) }));

const conditionSchemas = [
  insulationFault,
  open,
  loose,
  link,
  swap,
  move,
  setting,
  jammed,
  fitted,
  running,
  transfer,
  touching,
  footwear,
  gloves,
  mat,
] as const;

/** One condition in the file: a switch or a choice that acts on the network, a device, a load or a person. */
export const conditionSchema = z.discriminatedUnion('kind', conditionSchemas);

/** A condition with its options; the first is "as it should be". */
export type Condition = z.output<typeof conditionSchema>;
