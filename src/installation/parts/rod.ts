import { z } from 'zod';
import { rodResistance_ohm } from '../../earth/index.ts';
import type { PartKind } from '../plan.ts';
import { length_m, resistance_ohm, resistivity_ohm_m, soilName, soil_ohm_m } from '../quantity.ts';

const schema = z
  .strictObject({
    kind: z.literal('rod'),
    length_m: length_m.optional(),
    diameter_m: z.number().gt(0).max(1).optional(),
    soil_ohm_m: soil_ohm_m.optional(),
    soil: soilName.optional().describe('instead of soil_ohm_m'),
    resistance_ohm: resistance_ohm.optional().describe('or measured, to remote earth'),
  })
  .superRefine((part, context) => {
    if (part.resistance_ohm !== undefined) return;
    const { length_m, diameter_m } = part;
    const given = { length_m, diameter_m, soil_ohm_m: part.soil_ohm_m ?? part.soil };
    const missing = Object.entries(given).flatMap(([key, value]) => (value === undefined ? [key] : []));
    if (missing.length > 0)
      context.addIssue({
        code: 'custom',
        path: [],
        message: `needs ${missing.join(', ')}, or a measured resistance_ohm`,
        params: { code: 'missing-key', instead: 'resistance_ohm: 25' },
      });
    else if (length_m !== undefined && diameter_m !== undefined && length_m > 0 && length_m < 4 * diameter_m)
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
  ends: 'top',
  terminals: () => ['top'],
  plan(name, part) {
    const branch = { name, from: `${name}.top`, to: 'earth', role: 'electrode', medium: 'soil' } as const;
    return { branches: [{ ...branch, resistance_ohm: toEarth_ohm(part), reactance_ohm: 0 }] };
  },
} satisfies PartKind<Rod>;

function toEarth_ohm(part: Rod): number {
  const soil = resistivity_ohm_m(part.soil_ohm_m, part.soil);
  if (part.resistance_ohm !== undefined) return part.resistance_ohm;
  if (part.length_m === undefined || part.diameter_m === undefined || soil === undefined)
    throw new RangeError('rod: neither its geometry nor its resistance is given');
  return rodResistance_ohm(part.length_m, part.diameter_m / 2, soil);
}
