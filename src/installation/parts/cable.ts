import { z } from 'zod';
import { capacitor } from '../capacitor.ts';
import type { Raceway } from '../conductor.ts';
import { coreMetre, isCore, likelyCore } from '../core.ts';
import { coreRole, mayEndFree } from '../coreRole.ts';
import { leakage, type PartKind, type PlannedBranch, type Surroundings } from '../plan.ts';
import { capacitance_nF_m, length_m, nameSchema, reactance_ohm, resistance_ohm, temperature_C } from '../quantity.ts';

const writtenSchema = z.string().superRefine((text, context) => {
  if (isCore(text)) return;
  context.addIssue({
    code: 'custom',
    message: `no table has a conductor "${text.slice(0, 60)}"`,
    params: { code: 'unknown-conductor', instead: likelyCore(text) },
  });
});

const measuredSchema = z.strictObject({ resistance_ohm, reactance_ohm: reactance_ohm.default(0) });

const schema = z
  .strictObject({
    kind: z.literal('cable'),
    length_m: length_m.optional(),
    temperature_C: temperature_C.optional().describe('of all its cores; absent: that of the table of each'),
    raceway: z.enum(['none', 'pvc', 'aluminium', 'steel']).default('none'),
    insulation_ohm_m: z.number().gt(0).max(1e14).default(1e10).describe('insulation of one core to earth, Ω·m'),
    capacitance_nF_m: capacitance_nF_m
      .optional()
      .describe(
        'of each insulated core to the protective core, armour, screen or PEN beside it, else to earth; absent: left out',
      ),
    cores: z.record(nameSchema, z.union([writtenSchema, measuredSchema]).meta({ examples: ['12 AWG Cu'] })).meta({
      description:
        'by name: a conductor such as 12 AWG Cu, 2.5 mm² Cu or 4 AWG Cu bare, a conduit such as EMT 1/2 or rigid 1, an armour such ' +
        'as SWA 2.5 mm² 3-core or AWA 95 mm², or measured ohms. Those called neutral, PEN, protective, armour, conduit, ' +
        'raceway or screen are that; every other one is a line',
      examples: [{ line: '12 AWG Cu', neutral: '12 AWG Cu', protective: '12 AWG Cu' }],
    }),
  })
  .superRefine((part, context) => {
    const byLength =
      part.capacitance_nF_m !== undefined || Object.values(part.cores).some((core) => typeof core === 'string');
    if (byLength && part.length_m === undefined)
      context.addIssue({
        code: 'custom',
        path: [],
        message: 'needs its length, because its cores or its capacitance are given by the metre',
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
 *  tables of conductors, conduits and armours, or as measured. Its capacitance is lumped at the load end. */
export const cable = {
  kind: 'cable',
  schema,
  ends: '<core>.supply and <core>.load of each core, such as line.supply, line.load, neutral.supply, neutral.load, protective.supply, protective.load',
  terminals: (part) => Object.keys(part.cores).flatMap((core) => [`${core}.supply`, `${core}.load`]),
  mustJoin: (part) =>
    Object.keys(part.cores).flatMap((core) => (mayEndFree(core) ? [] : [`${core}.supply`, `${core}.load`])),
  plan(name, part, surroundings) {
    const length = part.length_m ?? 1;
    const made = Object.entries(part.cores).map(([core, written]) => ({
      core,
      ...(typeof written === 'string'
        ? tabulated(written, part, length, surroundings)
        : { ohms: written, bare: false, metal: undefined }),
    }));
    const beside = BESIDE.find((core) => Object.hasOwn(part.cores, core));
    const branches = made.flatMap(({ core, ohms, bare, metal }): PlannedBranch[] => {
      const ends = { from: `${name}.${core}.supply`, to: `${name}.${core}.load` };
      const role = coreRole(core);
      const conductor: PlannedBranch = {
        name: `${name}.${core}`,
        ...ends,
        role,
        medium: 'metal',
        ...ohms,
        ...(metal === undefined ? {} : { metal }),
      };
      // A protective core may be bare and lies against earthed metal: its own insulation is nobody's barrier.
      if (role === 'protective' || bare) return [conductor];
      const insulation_ohm = Math.min(part.insulation_ohm_m / length, 1e10);
      const leak = leakage(`${name}.${core}.insulation`, ends.to, insulation_ohm);
      if (part.capacitance_nF_m === undefined || core === beside) return [conductor, leak];
      const to = beside === undefined ? 'earth' : `${name}.${beside}.load`;
      const farad = part.capacitance_nF_m * 1e-9 * length;
      return [
        conductor,
        leak,
        capacitor(
          { name: `${name}.${core}.capacitance`, from: ends.to, to, role: 'insulation', medium: 'insulation' },
          farad,
          surroundings,
        ),
      ];
    });
    return { branches };
  },
} satisfies PartKind<Cable>;

// What a core's charging current goes to, the nearest metal first.
const BESIDE: readonly string[] = ['screen', 'armour', 'protective', 'conduit', 'raceway', 'PEN'];

function tabulated(
  text: string,
  part: { readonly temperature_C?: number | undefined; readonly raceway: Raceway },
  length_m: number,
  { frequency_Hz }: Surroundings,
) {
  const metre = coreMetre(text, { temperature_C: part.temperature_C, frequency_Hz, raceway: part.raceway });
  if (metre === undefined) throw new RangeError(`cable: no table has "${text}"`);
  return {
    ohms: { resistance_ohm: metre.resistance_ohm_m * length_m, reactance_ohm: metre.reactance_ohm_m * length_m },
    bare: metre.bare,
    metal: { of: metre.metal, area_mm2: metre.area_mm2 },
  };
}
