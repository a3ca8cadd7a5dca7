import { z } from 'zod';
import { capacitor } from '../capacitor.ts';
import type { PartKind } from '../plan.ts';
import { pairSchema } from '../quantity.ts';

const schema = z.strictObject({
  kind: z.literal('capacitance'),
  between: pairSchema.optional().describe('two terminals; absent: its own terminals a and b'),
  capacitance_F: z
    .number()
    .gt(0)
    .max(1000)
    .meta({ examples: [4.7e-9] }),
  as: z.enum(['load', 'insulation']).default('load').describe('what it stands for'),
});

type Capacitance = z.output<typeof schema>;

/** A plain capacitance between two terminals named in `between` or its own a and b. */
export const capacitance = {
  kind: 'capacitance',
  schema,
  ends: 'a, b; none of its own if between is written',
  terminals: (part) => (part.between === undefined ? ['a', 'b'] : []),
  touches: (part) => (part.between ?? []).map((terminal, index) => ({ key: ['between', index], terminal })),
  plan(name, part, surroundings) {
    const [from, to] = part.between ?? [`${name}.a`, `${name}.b`];
    return {
      branches: [capacitor({ name, from, to, role: part.as, medium: part.as }, part.capacitance_F, surroundings)],
      load: name,
    };
  },
} satisfies PartKind<Capacitance>;
