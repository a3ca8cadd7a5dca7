import { z } from 'zod';
import { generatedKeys, generatedTerminals, planGenerated } from '../generated.ts';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('generator'),
  ...generatedKeys,
  // A sustained fault current of three times the rating is usual for small sets with their own regulator (from memory).
  impedance_percent: z
    .number()
    .gt(0)
    .max(500)
    .default(33)
    .describe('while a fault lasts: 100 / times the rated current'),
  x_over_r: z.number().min(0).max(100).default(5),
  zero_sequence_ratio: z.number().gt(0).max(10).default(0.5).describe('Z0 over Z1, of three phases'),
});

type Generator = z.output<typeof schema>;

/** A generating set, portable or fixed, steady: an EMF behind one impedance. */
export const generator = {
  kind: 'generator',
  schema,
  source: true,
  ends: 'a; with split phase a, b; with three phases a, b, c; neutral, frame',
  terminals: (part) => generatedTerminals(part),
  plan: (name, part, { region }) =>
    planGenerated(name, part, region, {
      impedance_pu: part.impedance_percent / 100,
      x_over_r: part.x_over_r,
      zeroRatio: part.zero_sequence_ratio,
    }),
} satisfies PartKind<Generator>;
