import { z } from 'zod';
import { generatedKeys, generatedTerminals, planGenerated, rated_A } from '../generated.ts';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('inverter'),
  ...generatedKeys,
  limit: z
    .number()
    .min(1)
    .max(10)
    .default(1.5)
    .describe('times the rated current, that it never exceeds: 1.2 to 2 is usual (common practice, no source)'),
  impedance_percent: z.number().gt(0).max(50).default(2).describe('of its filter, below the limit (invented)'),
  x_over_r: z.number().min(0).max(100).default(3),
});

type Inverter = z.output<typeof schema>;

/** An inverter or uninterruptible supply on its own: an EMF behind its filter up to the limit, beyond it the volts fold back
 *  so that the current stays at the limit. */
export const inverter = {
  kind: 'inverter',
  schema,
  source: true,
  ends: 'a; with split phase a, b; with three phases a, b, c; neutral, frame',
  terminals: (part) => generatedTerminals(part),
  plan: (name, part, { region }) =>
    planGenerated(name, part, region, {
      impedance_pu: part.impedance_percent / 100,
      x_over_r: part.x_over_r,
      zeroRatio: 1,
      limit_A: part.limit * rated_A(part, region),
    }),
} satisfies PartKind<Inverter>;
