import { z } from 'zod';
import { GAP_OHM, type PartKind } from '../plan.ts';
import { pairSchema } from '../quantity.ts';

const orderSchema = z.strictObject({
  order: z.number().int().min(1).max(50).describe('1 is the installation’s own frequency'),
  current_A: z
    .number()
    .min(0)
    .max(1e6)
    .meta({ examples: [5] }),
  angle_deg: z.number().min(-360).max(360).default(0).describe('at its own frequency'),
});

const schema = z
  .strictObject({
    kind: z.literal('harmonic-source'),
    between: pairSchema.optional().describe('two terminals; absent: its own terminals a and b'),
    currents: z
      .array(orderSchema)
      .min(1)
      .max(50)
      .meta({ examples: [[{ order: 3, current_A: 5 }]] }),
    shift_deg: z
      .number()
      .min(-360)
      .max(360)
      .default(0)
      .describe('of the whole wave, such as -120 on the second phase: order h turns by h times as much'),
  })
  .superRefine((part, context) => {
    const orders = part.currents.map(({ order }) => order);
    if (new Set(orders).size < orders.length)
      context.addIssue({
        code: 'custom',
        path: ['currents'],
        message: 'names one order twice',
        params: { code: 'duplicate-name', instead: 'one entry for each order' },
      });
  });

type HarmonicSource = z.output<typeof schema>;

/** A source of current at the installation's frequency and its multiples, as an electronic load is to its supply: what it
 *  takes goes in at a (the first of `between`) and out at b, whatever the volts. Where its supply is cut it takes nothing. */
export const harmonicSource = {
  kind: 'harmonic-source',
  schema,
  ends: 'a, b; none of its own if between is written',
  terminals: (part) => (part.between === undefined ? ['a', 'b'] : []),
  touches: (part) => (part.between ?? []).map((terminal, index) => ({ key: ['between', index], terminal })),
  mustJoin: (part) => (part.between === undefined ? ['a', 'b'] : []),
  plan(name, part) {
    const [from, to] = part.between ?? [`${name}.a`, `${name}.b`];
    const branch = { name, from, to, role: 'load', medium: 'load' } as const;
    const injection = part.currents.map(({ order, current_A, angle_deg }) => ({
      order,
      current_A,
      angle_rad: ((angle_deg + order * part.shift_deg) * Math.PI) / 180,
    }));
    return { branches: [{ ...branch, resistance_ohm: GAP_OHM, reactance_ohm: 0, injection }], load: name };
  },
} satisfies PartKind<HarmonicSource>;
