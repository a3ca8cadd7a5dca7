import { z } from 'zod';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind, PlannedBranch } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('residual-device'),
  family: z.enum(['ul943-class-a']).default('ul943-class-a'),
  resistance_ohm: resistance_ohm.default(0.002).describe('of one pole, contacts and coil'),
});

type ResidualDevice = z.output<typeof schema>;

/** A device that compares what leaves on the line with what comes home on the neutral, and opens both:
 *  `<part>.line` and `<part>.neutral`, each from its `.supply` to its `.load`. Not fitted, it is a piece of wire. */
export const residualDevice = {
  kind: 'residual-device',
  schema,
  ends: 'line.supply, line.load, neutral.supply, neutral.load',
  terminals: () => ['line.supply', 'line.load', 'neutral.supply', 'neutral.load'],
  mustJoin: () => ['line.supply', 'line.load', 'neutral.supply', 'neutral.load'],
  plan(name, part) {
    const poles = [`${name}.line`, `${name}.neutral`];
    const branches = poles.map((pole): PlannedBranch => ({
      name: pole,
      from: `${pole}.supply`,
      to: `${pole}.load`,
      role: 'device',
      medium: 'metal',
      resistance_ohm: part.resistance_ohm,
      reactance_ohm: 0,
    }));
    return { branches, device: { kind: 'residual-device', poles, residual: poles, settings: { family: part.family } } };
  },
} satisfies PartKind<ResidualDevice>;
