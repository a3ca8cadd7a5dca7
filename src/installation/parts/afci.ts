import { z } from 'zod';
import { comparing, comparingEnds, poleResistance_ohm, rating_A } from '../poles.ts';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('afci'),
  rating_A,
  residual_A: z
    .number()
    .gt(0)
    .max(1)
    .optional()
    .describe('of the ground-fault element many of them hold, for equipment; absent: none'),
  resistance_ohm: resistance_ohm.optional().describe('of one pole; absent: by rating'),
});

type Afci = z.output<typeof schema>;

const poles = ['line', 'neutral'] as const;

/** An arc-fault breaker, as far as a steady sine wave goes: the thermal and magnetic parts of its breaker, and the
 *  ground-fault element for equipment where it has one (30 mA and more, common practice, no source). Neither a series nor a
 *  parallel arc is modelled: an arc's wave is its signature, and there is none here, so this device never acts on one. */
export const afci = {
  kind: 'afci',
  schema,
  ends: 'line.supply, line.load, neutral.supply, neutral.load; arcs themselves are not modelled',
  terminals: () => comparingEnds({ poles }),
  mustJoin: () => comparingEnds({ poles }),
  plan(name, part) {
    const made = { poles, opens: ['line'] };
    const compared = comparing(name, made, part.resistance_ohm ?? poleResistance_ohm(part.rating_A));
    const { branches, residual } = compared;
    const breaker = { family: 'ul489', rating_A: part.rating_A } as const;
    if (part.residual_A === undefined)
      return { branches, device: { kind: 'afci', poles: compared.poles, settings: breaker } };
    const settings = { ...breaker, residual: { family: 'equipment', residual_A: part.residual_A } } as const;
    return { branches, device: { kind: 'afci', poles: compared.poles, residual, settings } };
  },
} satisfies PartKind<Afci>;
