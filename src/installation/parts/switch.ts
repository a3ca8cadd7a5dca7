import { z } from 'zod';
import { GAP_OHM, JOINT_OHM, type PartKind } from '../plan.ts';
import { pairSchema, resistance_ohm } from '../quantity.ts';

const schema = z.strictObject({
  kind: z.literal('switch'),
  between: pairSchema.optional().describe('two terminals; absent: its own terminals a and b'),
  closed: z.boolean().default(true).describe('to open it by a condition: { kind: open, at: its name }'),
  resistance_ohm: resistance_ohm.default(JOINT_OHM).describe('while closed'),
  as: z.enum(['line', 'neutral', 'protective', 'bond']).default('line').describe('which conductor it stands in'),
});

type Switch = z.output<typeof schema>;

/** A plain switch of one pole between two terminals named in `between` or its own a and b. */
export const plainSwitch = {
  kind: 'switch',
  schema,
  ends: 'a, b; none of its own if between is written',
  terminals: (part) => (part.between === undefined ? ['a', 'b'] : []),
  touches: (part) => (part.between ?? []).map((terminal, index) => ({ key: ['between', index], terminal })),
  mustJoin: (part) => (part.between === undefined ? ['a', 'b'] : []),
  plan(name, part) {
    const [from, to] = part.between ?? [`${name}.a`, `${name}.b`];
    const branch = { name, from, to, role: part.as, medium: 'metal' } as const;
    return {
      branches: [{ ...branch, resistance_ohm: part.closed ? part.resistance_ohm : GAP_OHM, reactance_ohm: 0 }],
    };
  },
} satisfies PartKind<Switch>;
