import { z } from 'zod';
import { capacitor } from '../capacitor.ts';
import { GAP_OHM, INSULATION_OHM, leakage, type PartKind, type PlannedBranch, type Surroundings } from '../plan.ts';
import { nameSchema, reactance_ohm, resistance_ohm } from '../quantity.ts';

const schema = z
  .strictObject({
    kind: z.literal('appliance'),
    supply: z
      .tuple([nameSchema, nameSchema])
      .default(['line', 'neutral'])
      .describe('names of the two terminals it is fed by'),
    power_W: z.number().gt(0).max(1e7).optional(),
    voltage_V: z.number().gt(0).max(1e5).optional().describe('at which it takes that power; absent: 120 or 230'),
    power_factor: z.number().gt(0).max(1).default(1).describe('lagging'),
    resistance_ohm: resistance_ohm.optional().describe('or measured'),
    reactance_ohm: reactance_ohm.optional(),
    case: z.enum(['metal', 'insulating']).default('metal').describe('metal has the terminal case'),
    feet: z.enum(['rubber', 'metal']).default('rubber'),
    insulation_ohm: z
      .number()
      .gt(0)
      .max(1e10)
      .default(INSULATION_OHM)
      .describe('of each supply terminal to the case; a damp heating element has 100000 or less'),
    filter_nF: z
      .number()
      .gt(0)
      .max(1e6)
      .optional()
      .describe('of its mains filter, from each supply terminal to the case: 4.7 is usual'),
    leakage_A: z
      .number()
      .gt(0)
      .max(1)
      .optional()
      .describe('or what it sends down its protective conductor at its voltage, as on its data sheet: 0.0035'),
  })
  .superRefine((part, context) => {
    if ((part.power_W === undefined) === (part.resistance_ohm === undefined))
      context.addIssue({
        code: 'custom',
        path: [],
        message: 'needs its load in one way: power_W, or a measured resistance_ohm',
        params: { code: 'missing-key', instead: 'power_W: 750' },
      });
    if (part.supply[0] === part.supply[1] || part.supply.includes('case'))
      context.addIssue({
        code: 'custom',
        path: ['supply'],
        message: 'needs two different terminals, neither called case',
        params: { code: 'duplicate-name', instead: 'supply: [line, neutral]' },
      });
    const leaks = (['filter_nF', 'leakage_A'] as const).filter((key) => part[key] !== undefined);
    if (leaks.length === 2 || (leaks.length === 1 && part.case === 'insulating'))
      context.addIssue({
        code: 'custom',
        path: [leaks[0] ?? 'filter_nF'],
        message: leaks.length === 2 ? 'is written beside leakage_A: one of them is enough' : 'needs a metal case',
        params: { code: 'wrong-target', instead: leaks.length === 2 ? 'only filter_nF' : 'case: metal' },
      });
  });

type Appliance = z.output<typeof schema>;

// From a case through its feet to earth, Ω: rubber on a bakery's floor is never clean (invented); metal feet on concrete (invented).
const FEET_OHM = { rubber: 1e7, metal: 2000 } as const;

/** A load in a case: `<part>` between its two supply terminals; sound insulation from each of them to a metal case, beside
 *  it the capacitors of a filter if there is one, and the case's feet to earth. */
export const appliance = {
  kind: 'appliance',
  schema,
  ends: 'the two named in supply (line, neutral unless said), and case if that is metal',
  terminals: (part) => [...part.supply, ...(part.case === 'metal' ? ['case'] : [])],
  mustJoin: (part) => part.supply,
  plan(name, part, surroundings) {
    const [a, b] = part.supply;
    const volts = part.voltage_V ?? (surroundings.region === 'iec' ? 230 : 120);
    const size_ohm = part.power_W === undefined ? 0 : (volts ** 2 * part.power_factor) / part.power_W;
    const load: PlannedBranch = {
      name,
      from: `${name}.${a}`,
      to: `${name}.${b}`,
      role: 'load',
      medium: 'load',
      resistance_ohm: Math.min(part.resistance_ohm ?? size_ohm * part.power_factor, GAP_OHM),
      reactance_ohm: part.reactance_ohm ?? size_ohm * Math.sqrt(1 - part.power_factor ** 2),
    };
    if (part.case === 'insulating') return { branches: [load], load: name };
    const insulation = part.supply.map((terminal): PlannedBranch => ({
      name: `${name}.${terminal}.insulation`,
      from: `${name}.${terminal}`,
      to: `${name}.case`,
      role: 'insulation',
      medium: 'insulation',
      resistance_ohm: part.insulation_ohm,
      reactance_ohm: 0,
    }));
    return {
      branches: [
        load,
        ...insulation,
        ...filter(name, part, volts, surroundings),
        leakage(`${name}.feet`, `${name}.case`, FEET_OHM[part.feet]),
      ],
      load: name,
    };
  },
} satisfies PartKind<Appliance>;

/** Capacitors to the case: one from each supply terminal, or one from the first that passes the leakage of the data sheet. */
function filter(name: string, part: Appliance, volts: number, surroundings: Surroundings): readonly PlannedBranch[] {
  const [a, b] = part.supply;
  const to = (terminal: string, farad: number): PlannedBranch =>
    capacitor(
      {
        name: `${name}.${terminal}.filter`,
        from: `${name}.${terminal}`,
        to: `${name}.case`,
        role: 'insulation',
        medium: 'insulation',
      },
      farad,
      surroundings,
    );
  if (part.filter_nF !== undefined) return [a, b].map((terminal) => to(terminal, (part.filter_nF ?? 0) * 1e-9));
  // A data sheet's leakage is one of alternating current: the capacitor of a filter passes no other.
  if (part.leakage_A === undefined || surroundings.frequency_Hz === 0) return [];
  return [to(a, part.leakage_A / (2 * Math.PI * surroundings.frequency_Hz * volts))];
}
