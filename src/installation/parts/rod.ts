import { z } from 'zod';
import { rodResistance_ohm } from '../../earth/index.ts';
import { length_m, resistance_ohm, soil_ohm_m } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({
    kind: z.literal('rod'),
    length_m: length_m.optional(),
    diameter_m: z.number().gt(0).max(1).optional(),
    soil_ohm_m: soil_ohm_m.optional(),
    resistance_ohm: resistance_ohm.optional().describe('or measured, to remote earth'),
  })
  .superRefine((part, context) => {
    if (part.resistance_ohm !== undefined) return;
    const missing = (['length_m', 'diameter_m', 'soil_ohm_m'] as const).filter((key) => part[key] === undefined);
    if (missing.length > 0)
      context.addIssue({
        code: 'custom',
        path: [],
        message: `needs ${missing.join(', ')}, or a measured resistance_ohm`,
        params: { code: 'missing-key', instead: 'resistance_ohm: 25' },
      });
    else if ((part.length_m ?? 0) < 4 * (part.diameter_m ?? 0))
      context.addIssue({
        code: 'custom',
        path: ['length_m'],
        message: 'is too short for its diameter: the formula is for a slender rod',
        params: { code: 'out-of-range', instead: 'length_m: 2.44' },
      });
  });

type Rod = z.output<typeof schema>;

/** A driven rod, one terminal `top`: its resistance to remote earth from geometry and soil, or measured.
 *  @see IEEE Std 142 (after Dwight, 1936): ρ/(2πL)·(ln(4L/a) − 1) */
export const rod = {
  kind: 'rod',
  schema,
  terminals: () => ['top'],
  plan(name, part) {
    const { length_m = 1, diameter_m = 0.01, soil_ohm_m = 100 } = part;
    const resistance_ohm = part.resistance_ohm ?? rodResistance_ohm(length_m, diameter_m / 2, soil_ohm_m);
    const branch = { name, from: `${name}.top`, to: 'earth', role: 'electrode', medium: 'soil' } as const;
    return { branches: [{ ...branch, resistance_ohm, reactance_ohm: 0 }] };
  },
} satisfies PartKind<Rod>;
