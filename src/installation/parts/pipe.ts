import { z } from 'zod';
import { wireResistance_ohm } from '../../earth/index.ts';
import { length_m, resistance_ohm, resistivity_ohm_m, soilName, soil_ohm_m } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

// Resistivity at 20 °C, Ω·m: copper of the IACS; steel 1.38e-7 (armour and conduit, IEC practice).
const RESISTIVITY_ohm_m = { copper: 1.7241e-8, steel: 1.38e-7 } as const;

const schema = z
  .strictObject({
    kind: z.literal('pipe'),
    earth_resistance_ohm: resistance_ohm.optional().describe('of the buried part, measured, to remote earth'),
    buried: z
      .strictObject({
        length_m,
        depth_m: z.number().gt(0).max(100).default(0.75),
        soil_ohm_m: soil_ohm_m.optional(),
        soil: soilName.optional().describe('instead of soil_ohm_m'),
      })
      .optional()
      .describe('or by geometry: bare metal in even soil, with the outside_mm of the pipe'),
    material: z.enum(['copper', 'steel']).optional(),
    length_m: length_m.optional().describe('from the bond to the tap'),
    outside_mm: z.number().gt(0).max(1000).optional(),
    wall_mm: z.number().gt(0).max(100).optional(),
    resistance_ohm: resistance_ohm.optional().describe('or measured, from the bond to the tap'),
  })
  .superRefine((part, context) => {
    const { buried } = part;
    const radius_m = (part.outside_mm ?? 0) / 2000;
    const ground = buried === undefined ? undefined : resistivity_ohm_m(buried.soil_ohm_m, buried.soil);
    const known = ground !== undefined && radius_m > 0;
    if ((part.earth_resistance_ohm === undefined) === (buried === undefined) || (buried !== undefined && !known))
      context.addIssue({
        code: 'custom',
        path: [],
        message: 'needs earth_resistance_ohm, or buried with its soil, length_m and the outside_mm of the pipe',
        params: { code: 'missing-key', instead: 'earth_resistance_ohm: 3' },
      });
    else if (buried !== undefined && (buried.length_m < 20 * buried.depth_m || buried.depth_m < 10 * radius_m))
      context.addIssue({
        code: 'custom',
        path: ['buried'],
        message: 'is too short or too shallow: the formula is for a long thin pipe, 20 times as long as it lies deep',
        params: { code: 'out-of-range', instead: 'earth_resistance_ohm: 3' },
      });
    if (part.resistance_ohm !== undefined) return;
    const keys = ['material', 'length_m', 'outside_mm', 'wall_mm'] as const;
    const missing = keys.filter((key) => part[key] === undefined);
    if (missing.length > 0)
      context.addIssue({
        code: 'custom',
        path: [],
        message: `needs ${missing.join(', ')}, or a measured resistance_ohm`,
        params: { code: 'missing-key', instead: 'resistance_ohm: 0.002' },
      });
    else if (2 * (part.wall_mm ?? 0) > (part.outside_mm ?? 0))
      context.addIssue({
        code: 'custom',
        path: ['wall_mm'],
        message: 'is thicker than half the pipe',
        params: { code: 'out-of-range', instead: 'wall_mm: 0.9' },
      });
  });

type Pipe = z.output<typeof schema>;

/** A metal pipe that comes out of the ground: `<part>` is its buried length (bond → earth), `<part>.metal` the run indoors
 *  (bond → tap), from its section at 20 °C or measured; its reactance is left out.
 *  @see H. B. Dwight, AIEE Trans. 55 (1936): a long buried wire, for the buried length where it is not measured */
export const pipe = {
  kind: 'pipe',
  schema,
  ends: 'bond, tap',
  terminals: () => ['bond', 'tap'],
  plan(name, part) {
    const metal_ohm = along_ohm(part);
    const bond = `${name}.bond`;
    return {
      branches: [
        {
          name,
          from: bond,
          to: 'earth',
          role: 'pipe',
          medium: 'soil',
          resistance_ohm: toEarth_ohm(part),
          reactance_ohm: 0,
        },
        {
          name: `${name}.metal`,
          from: bond,
          to: `${name}.tap`,
          role: 'pipe',
          medium: 'metal',
          resistance_ohm: metal_ohm,
          reactance_ohm: 0,
        },
      ],
    };
  },
} satisfies PartKind<Pipe>;

function toEarth_ohm({ earth_resistance_ohm, buried, outside_mm = 0 }: Pipe): number {
  if (earth_resistance_ohm !== undefined) return earth_resistance_ohm;
  const ground = buried === undefined ? undefined : resistivity_ohm_m(buried.soil_ohm_m, buried.soil);
  if (buried === undefined || ground === undefined)
    throw new RangeError('pipe: neither its buried part nor its earth resistance is given');
  return wireResistance_ohm(buried.length_m, outside_mm / 2000, buried.depth_m, ground);
}

function along_ohm(part: Pipe): number {
  const { material, length_m, outside_mm, wall_mm } = part;
  if (part.resistance_ohm !== undefined) return part.resistance_ohm;
  if (material === undefined || length_m === undefined || outside_mm === undefined || wall_mm === undefined)
    throw new RangeError('pipe: neither its geometry nor its resistance is given');
  const area_m2 = Math.PI * wall_mm * (outside_mm - wall_mm) * 1e-6;
  return (RESISTIVITY_ohm_m[material] * length_m) / area_m2;
}
