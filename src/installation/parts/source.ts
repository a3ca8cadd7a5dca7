import { z } from 'zod';
import { reactance_ohm, resistance_ohm } from '../quantity.ts';
import { leakage, type PartKind, type PlannedBranch } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('source'),
  emf_V: z
    .number()
    .gt(0)
    .max(1e6)
    .meta({ examples: [120] }),
  angle_deg: z.number().min(-360).max(360).default(0),
  resistance_ohm: resistance_ohm.default(0),
  reactance_ohm: reactance_ohm.default(0),
  limit_A: z.number().gt(0).max(1e6).optional().describe('it folds back and never gives more; absent: no limit'),
});

type Source = z.output<typeof schema>;

/** A plain voltage behind its own impedance, terminals plus and minus, so that any textbook circuit can be written. */
export const source = {
  kind: 'source',
  schema,
  source: true,
  ends: 'plus, minus',
  terminals: () => ['plus', 'minus'],
  mustJoin: () => ['plus', 'minus'],
  plan(name, part) {
    const emf = { emf_V: part.emf_V, angle_rad: (part.angle_deg * Math.PI) / 180 };
    const winding: PlannedBranch = {
      name,
      from: `${name}.minus`,
      to: `${name}.plus`,
      role: 'winding',
      medium: 'metal',
      resistance_ohm: part.resistance_ohm,
      reactance_ohm: part.reactance_ohm,
      ...emf,
      ...(part.limit_A === undefined ? {} : { limit_A: part.limit_A }),
    };
    return {
      branches: [winding, leakage(`${name}.insulation`, `${name}.minus`)],
      supply: { phases: 1, neutral: winding.from, lines: [{ terminal: winding.to, ...emf }] },
    };
  },
} satisfies PartKind<Source>;
