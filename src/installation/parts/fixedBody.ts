import { z } from 'zod';
import type { PartKind } from '../plan.ts';
import { pairSchema, resistance_ohm } from '../quantity.ts';

const schema = z.strictObject({
  kind: z.literal('fixed-body'),
  between: pairSchema.describe('the two things it touches'),
  resistance_ohm: resistance_ohm.default(1000).describe('1000 ohm is the usual round figure of textbooks'),
});

type FixedBody = z.output<typeof schema>;

/** A body of fixed resistance between two terminals, as in a textbook: it carries current and has no zones; a person whose
 *  impedance follows its volts, skin and path is the part `person`. */
export const fixedBody = {
  kind: 'fixed-body',
  schema,
  ends: 'none of its own: it lies between two others',
  terminals: () => [],
  touches: (part) => part.between.map((terminal, index) => ({ key: ['between', index], terminal })),
  plan(name, part) {
    const [from, to] = part.between;
    const branch = { name, from, to, role: 'person', medium: 'body' } as const;
    return { branches: [{ ...branch, resistance_ohm: part.resistance_ohm, reactance_ohm: 0 }] };
  },
} satisfies PartKind<FixedBody>;
