import { z } from 'zod';
import { footResistance_ohm } from '../../earth/index.ts';
import type { PartKind } from '../plan.ts';
import { resistivity_ohm_m, soilName, soil_ohm_m } from '../quantity.ts';
import { coveringSchema, worn_ohm } from '../worn.ts';

const schema = z
  .strictObject({
    kind: z.literal('floor'),
    resistivity_ohm_m: soil_ohm_m.optional(),
    of: soilName.optional().describe('instead of resistivity_ohm_m'),
    resistance_ohm: coveringSchema.optional().describe('or measured, both feet to remote earth, or a floor by name'),
  })
  .superRefine((part, context) => {
    const ways = [part.resistivity_ohm_m, part.of, part.resistance_ohm].filter((way) => way !== undefined);
    if (ways.length === 1) return;
    context.addIssue({
      code: 'custom',
      path: [],
      message: 'needs one of resistivity_ohm_m, of, or a measured resistance_ohm of both feet to earth',
      params: { code: 'missing-key', instead: 'resistivity_ohm_m: 100' },
    });
  });

type Floor = z.output<typeof schema>;

/** What one person stands on: `<part>` runs from `surface`, under both feet, to remote earth.
 *  @see IEEE Std 80: 3ρ for one foot, 1.5ρ for two in parallel */
export const floor = {
  kind: 'floor',
  schema,
  ends: 'surface',
  terminals: () => ['surface'],
  plan(name, part) {
    const branch = { name, from: `${name}.surface`, to: 'earth', role: 'floor', medium: 'soil' } as const;
    return { branches: [{ ...branch, resistance_ohm: bothFeet_ohm(part), reactance_ohm: 0 }] };
  },
} satisfies PartKind<Floor>;

function bothFeet_ohm(part: Floor): number {
  const resistivity = resistivity_ohm_m(part.resistivity_ohm_m, part.of);
  if (part.resistance_ohm !== undefined) return worn_ohm(part.resistance_ohm);
  if (resistivity === undefined) throw new RangeError('floor: neither its material nor its resistance is given');
  return footResistance_ohm(resistivity) / 2;
}
