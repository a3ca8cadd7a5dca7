import { z } from 'zod';
import { poleBranch, poleEnds, poleResistance_ohm, rating_A } from '../poles.ts';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('fuse'),
  rating_A,
  family: z
    .enum(['gg', 'ul248-time-delay'])
    .optional()
    .describe('absent: ul248-time-delay in north-america, gg in iec'),
  resistance_ohm: resistance_ohm.optional().describe('absent: by rating'),
});

type Fuse = z.output<typeof schema>;

/** A fuse: one branch `<part>` from its `.line` to its `.load`. Three phases take three; each opens alone. */
export const fuse = {
  kind: 'fuse',
  schema,
  ends: 'line, load',
  terminals: () => poleEnds(1),
  mustJoin: () => poleEnds(1),
  plan(name, part, { region }) {
    const branches = [poleBranch(name, 'line', part.resistance_ohm ?? poleResistance_ohm(part.rating_A))];
    const family = part.family ?? (region === 'iec' ? 'gg' : 'ul248-time-delay');
    return { branches, device: { kind: 'fuse', poles: [name], settings: { family, rating_A: part.rating_A } } };
  },
} satisfies PartKind<Fuse>;
