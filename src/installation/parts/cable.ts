import { z } from 'zod';
import { likelyConductor, perMetre, readConductor, tableTemperature_C, type Raceway } from '../conductor.ts';
import { leakage, type PartKind, type PlannedBranch, type Surroundings } from '../plan.ts';
import { length_m, nameSchema, reactance_ohm, resistance_ohm, temperature_C } from '../quantity.ts';

const conductorSchema = z.string().superRefine((text, context) => {
  if (readConductor(text) !== undefined) return;
  context.addIssue({
    code: 'custom',
    message: `no table has a conductor "${text.slice(0, 60)}"`,
    params: { code: 'unknown-conductor', instead: likelyConductor(text) },
  });
});

const measuredSchema = z.strictObject({ resistance_ohm, reactance_ohm: reactance_ohm.default(0) });

const schema = z
  .strictObject({
    kind: z.literal('cable'),
    length_m: length_m.optional(),
    temperature_C: temperature_C.optional().describe('of the conductors; absent: that of their table'),
    raceway: z.enum(['none', 'pvc', 'aluminium', 'steel']).default('none'),
    insulation_ohm_m: z.number().gt(0).max(1e14).default(1e10).describe('insulation of one core to earth, Ω·m'),
    cores: z.record(nameSchema, z.union([conductorSchema, measuredSchema]).meta({ examples: ['12 AWG Cu'] })).meta({
      description: 'by name: a conductor such as 12 AWG Cu or 2.5 mm² Cu, or measured ohms',
      examples: [{ line: '12 AWG Cu', neutral: '12 AWG Cu', protective: '12 AWG Cu' }],
    }),
  })
  .superRefine((part, context) => {
    const byTable = Object.values(part.cores).some((core) => typeof core === 'string');
    if (byTable && part.length_m === undefined)
      context.addIssue({
        code: 'custom',
        path: [],
        message: 'needs its length, because its cores are given by size',
        params: { code: 'missing-key', instead: 'length_m: 12' },
      });
    if (Object.keys(part.cores).length === 0)
      context.addIssue({
        code: 'custom',
        path: ['cores'],
        message: 'has no cores',
        params: {
          code: 'missing-key',
          instead: 'cores: { line: 12 AWG Cu, neutral: 12 AWG Cu, protective: 12 AWG Cu }',
        },
      });
  });

type Cable = z.output<typeof schema>;

/** A cable of any cores, each a branch `<part>.<core>` from its `.supply` to its `.load` end: by size and length from the
 *  conductor tables, or as measured. Cores called neutral or protective are those; every other one is a line. */
export const cable = {
  kind: 'cable',
  schema,
  ends: '<core>.supply and <core>.load of each core, such as line.supply, line.load, neutral.supply, neutral.load, protective.supply, protective.load',
  terminals: (part) => Object.keys(part.cores).flatMap((core) => [`${core}.supply`, `${core}.load`]),
  // A protective core may end free, as on a load without a metal case; any other unused core is left out of the file.
  mustJoin: (part) =>
    Object.keys(part.cores).flatMap((core) => (core === 'protective' ? [] : [`${core}.supply`, `${core}.load`])),
  plan(name, part, surroundings) {
    const length = part.length_m ?? 1;
    const branches = Object.entries(part.cores).flatMap(([core, made]): PlannedBranch[] => {
      const ohms = typeof made === 'string' ? tabulated(made, part, length, surroundings) : made;
      const ends = { from: `${name}.${core}.supply`, to: `${name}.${core}.load` };
      const role = core === 'neutral' || core === 'protective' ? core : 'line';
      const conductor: PlannedBranch = { name: `${name}.${core}`, ...ends, role, medium: 'metal', ...ohms };
      // A protective core may be bare and lies against earthed metal: its own insulation is nobody's barrier.
      if (role === 'protective') return [conductor];
      const insulation_ohm = Math.min(part.insulation_ohm_m / length, 1e10);
      return [conductor, leakage(`${name}.${core}.insulation`, ends.to, insulation_ohm)];
    });
    return { branches };
  },
} satisfies PartKind<Cable>;

function tabulated(
  text: string,
  part: { readonly temperature_C?: number | undefined; readonly raceway: Raceway },
  length_m: number,
  { frequency_Hz }: Surroundings,
) {
  const conductor = readConductor(text);
  if (conductor === undefined) throw new RangeError(`cable: no table has "${text}"`);
  const metre = perMetre(conductor, {
    temperature_C: part.temperature_C ?? tableTemperature_C(conductor),
    frequency_Hz,
    raceway: part.raceway,
  });
  return { resistance_ohm: metre.resistance_ohm_m * length_m, reactance_ohm: metre.reactance_ohm_m * length_m };
}
