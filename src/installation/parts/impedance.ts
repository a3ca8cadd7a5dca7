import { z } from 'zod';
import { pairSchema, reactance_ohm, resistance_ohm } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

const roles = ['load', 'line', 'neutral', 'protective', 'bond', 'link', 'fault', 'electrode', 'pipe', 'floor'] as const;

const schema = z.strictObject({
  kind: z.literal('impedance'),
  between: pairSchema.optional().describe('two terminals; absent: its own terminals a and b'),
  resistance_ohm,
  reactance_ohm: reactance_ohm.default(0),
  as: z.enum(roles).default('load').describe('what it stands for'),
});

type Impedance = z.output<typeof schema>;

const MEDIUM = { load: 'load', electrode: 'soil', floor: 'soil' } as const;

/** A plain impedance, by measured values, between two terminals named in `between` or its own a and b. */
export const impedance = {
  kind: 'impedance',
  schema,
  ends: 'a, b; none of its own if between is written',
  terminals: (part) => (part.between === undefined ? ['a', 'b'] : []),
  touches: (part) => (part.between ?? []).map((terminal, index) => ({ key: ['between', index], terminal })),
  plan(name, part) {
    const [from, to] = part.between ?? [`${name}.a`, `${name}.b`];
    const medium = part.as in MEDIUM ? MEDIUM[part.as as keyof typeof MEDIUM] : 'metal';
    const branch = { name, from, to, role: part.as, medium } as const;
    return {
      branches: [{ ...branch, resistance_ohm: part.resistance_ohm, reactance_ohm: part.reactance_ohm }],
      load: name,
    };
  },
} satisfies PartKind<Impedance>;
