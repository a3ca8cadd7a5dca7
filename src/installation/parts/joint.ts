import { z } from 'zod';
import { JOINT_OHM, type PartKind } from '../plan.ts';
import { pairSchema, resistance_ohm } from '../quantity.ts';

const schema = z.strictObject({
  kind: z.literal('joint'),
  between: pairSchema,
  resistance_ohm: resistance_ohm.default(JOINT_OHM),
  as: z.enum(['bond', 'line', 'neutral', 'protective']).default('bond'),
});

type Joint = z.output<typeof schema>;

/** A joint with a name of its own, such as a main bonding jumper, between two terminals. */
export const joint = {
  kind: 'joint',
  schema,
  ends: 'none of its own: it lies between two others',
  terminals: () => [],
  touches: (part) => part.between.map((terminal, index) => ({ key: ['between', index], terminal })),
  plan(name, part) {
    const [from, to] = part.between;
    const branch = { name, from, to, role: part.as, medium: 'metal' } as const;
    return { branches: [{ ...branch, resistance_ohm: part.resistance_ohm, reactance_ohm: 0 }] };
  },
} satisfies PartKind<Joint>;
