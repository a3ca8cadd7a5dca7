import { z } from 'zod';
import { footResistance_ohm } from '../../earth/index.ts';
import type { PartKind } from '../plan.ts';
import { resistance_ohm, soil_ohm_m } from '../quantity.ts';

const schema = z
  .strictObject({
    kind: z.literal('floor'),
    resistivity_ohm_m: soil_ohm_m.optional(),
    resistance_ohm: resistance_ohm.optional().describe('or measured, both feet to remote earth'),
  })
  .superRefine((part, context) => {
    if ((part.resistivity_ohm_m === undefined) !== (part.resistance_ohm === undefined)) return;
    context.addIssue({
      code: 'custom',
      path: [],
      message: 'needs resistivity_ohm_m, or a measured resistance_ohm of both feet to earth',
      params: { code: 'missing-key', instead: 'resistivity_ohm_m: 100' },
    });
  });

type Floor = z.output<typeof schema>;

/** What one person stands on: `<part>` runs from `surface`, under both feet, to remote earth.
 *  @see IEEE Std 80: 3ρ for one foot, 1.5ρ for two in parallel */
export const floor = {
  kind: 'floor',
  schema,
  terminals: () => ['surface'],
  plan(name, part) {
    const both_ohm = part.resistance_ohm ?? footResistance_ohm(part.resistivity_ohm_m ?? 100) / 2;
    const branch = { name, from: `${name}.surface`, to: 'earth', role: 'floor', medium: 'soil' } as const;
    return { branches: [{ ...branch, resistance_ohm: both_ohm, reactance_ohm: 0 }] };
  },
} satisfies PartKind<Floor>;
