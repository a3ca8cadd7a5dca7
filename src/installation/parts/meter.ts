import { z } from 'zod';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind, PlannedBranch } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('meter'),
  resistance_ohm: resistance_ohm
    .default(0.0003)
    .describe('of one line through it (typical, common practice, no source)'),
});

type Meter = z.output<typeof schema>;

/** The utility's meter in both lines: `<part>.a` and `<part>.b`, each from its `.supply` to its `.load`. */
export const meter = {
  kind: 'meter',
  schema,
  ends: 'a.supply, a.load, b.supply, b.load',
  terminals: () => ['a.supply', 'a.load', 'b.supply', 'b.load'],
  mustJoin: () => ['a.supply', 'a.load', 'b.supply', 'b.load'],
  plan: (name, part) => ({
    branches: [`${name}.a`, `${name}.b`].map((line): PlannedBranch => ({
      name: line,
      from: `${line}.supply`,
      to: `${line}.load`,
      role: 'line',
      medium: 'metal',
      resistance_ohm: part.resistance_ohm,
      reactance_ohm: 0,
    })),
  }),
} satisfies PartKind<Meter>;
