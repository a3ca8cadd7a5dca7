import { z } from 'zod';
import { length_m, resistance_ohm } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

// Steel at 20 °C, Ω·m (IEC practice for armour and conduit; rolled sections lie a little above it).
const STEEL_ohm_m = 1.38e-7;

const schema = z
  .strictObject({
    kind: z.literal('structural-steel'),
    earth_resistance_ohm: resistance_ohm.describe('of its footings, measured, to remote earth'),
    length_m: length_m.optional().describe('from the foot to where it is joined'),
    section_mm2: z.number().gt(0).max(1e6).optional().describe('of the steel on that way'),
    resistance_ohm: resistance_ohm.optional().describe('or measured, from the foot to where it is joined'),
  })
  .superRefine((part, context) => {
    const geometry = part.length_m !== undefined && part.section_mm2 !== undefined;
    if (geometry || part.resistance_ohm !== undefined) return;
    context.addIssue({
      code: 'custom',
      path: [],
      message: 'needs length_m and section_mm2, or a measured resistance_ohm',
      params: { code: 'missing-key', instead: 'resistance_ohm: 0.001' },
    });
  });

type StructuralSteel = z.output<typeof schema>;

/** The steel frame of a building: `<part>` is its footings (foot → earth), `<part>.metal` the steel from the foot to the
 *  place where something is joined to it (foot → tap); its reactance is left out. */
export const structuralSteel = {
  kind: 'structural-steel',
  schema,
  ends: 'foot, tap',
  terminals: () => ['foot', 'tap'],
  plan(name, part) {
    const foot = `${name}.foot`;
    const footings = { name, from: foot, to: 'earth', role: 'electrode', medium: 'soil' } as const;
    const metal = { name: `${name}.metal`, from: foot, to: `${name}.tap`, role: 'bond', medium: 'metal' } as const;
    const along_ohm = (STEEL_ohm_m * (part.length_m ?? 0)) / ((part.section_mm2 ?? 1) * 1e-6);
    return {
      branches: [
        { ...footings, resistance_ohm: part.earth_resistance_ohm, reactance_ohm: 0 },
        { ...metal, resistance_ohm: part.resistance_ohm ?? along_ohm, reactance_ohm: 0 },
      ],
    };
  },
} satisfies PartKind<StructuralSteel>;
