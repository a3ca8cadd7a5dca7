import { z } from 'zod';
import { GAP_OHM, type PartKind, type PlannedBranch } from '../plan.ts';
import { nameSchema, reactance_ohm, resistance_ohm } from '../quantity.ts';
import { windingEnds } from './coupledWindings.ts';

const turns = z.number().gt(0).max(1e6);

const windingSchema = z
  .union([
    turns.transform((own) => ({ turns: own, resistance_ohm: 0, reactance_ohm: 0 })),
    z.strictObject({ turns, resistance_ohm: resistance_ohm.default(0), reactance_ohm: reactance_ohm.default(0) }),
  ])
  .meta({ examples: [10] });

const schema = z
  .strictObject({
    kind: z.literal('ideal-transformer'),
    windings: z
      .record(nameSchema, windingSchema)
      .meta({ examples: [{ primary: 10, secondary: 1 }] })
      .describe('turns by name, or { turns, resistance_ohm, reactance_ohm }; the first is the one that is fed'),
  })
  .superRefine((part, context) => {
    const of = Object.values(part.windings).map((winding) => winding.turns);
    if (of.length < 2)
      context.addIssue({
        code: 'custom',
        path: ['windings'],
        message: 'needs two windings or more',
        params: { code: 'missing-key', instead: 'windings: { primary: 10, secondary: 1 }' },
      });
    else if (Math.max(...of) > 1e6 * Math.min(...of))
      context.addIssue({
        code: 'custom',
        path: ['windings'],
        message: 'has a ratio of turns beyond one million',
        params: { code: 'out-of-range', instead: 'windings: { primary: 10, secondary: 1 }' },
      });
  });

type IdealTransformer = z.output<typeof schema>;

/** Windings on one ideal core: volts go as the turns, and turns times amperes add up to nothing; each winding has its own
 *  impedance in series if one is written. `<part>.<winding>` runs from its `.dot` to its `.end`. */
export const idealTransformer = {
  kind: 'ideal-transformer',
  schema,
  ends: '<winding>.dot and <winding>.end of each winding, such as primary.dot, primary.end, secondary.dot, secondary.end',
  terminals: (part) => Object.keys(part.windings).flatMap((winding) => [`${winding}.dot`, `${winding}.end`]),
  plan(name, part) {
    const branches = Object.entries(part.windings).map(([winding, own], at): PlannedBranch => ({
      name: `${name}.${winding}`,
      ...windingEnds(name, winding, at),
      resistance_ohm: own.resistance_ohm,
      reactance_ohm: own.reactance_ohm,
    }));
    const of = Object.values(part.windings).map((winding) => winding.turns);
    const most = Math.max(...of);
    const core = { branches: branches.map((branch) => branch.name), turns: of.map((own) => own / most) };
    return { branches: [...branches, magnetising(name, branches[0])], cores: [core] };
  },
} satisfies PartKind<IdealTransformer>;

/** What the core takes for itself: next to nothing, but enough that its volts are known where no winding is loaded. */
function magnetising(name: string, fed: PlannedBranch | undefined): PlannedBranch {
  return {
    name: `${name}.magnetising`,
    from: fed?.from ?? 'earth',
    to: fed?.to ?? 'earth',
    role: 'insulation',
    medium: 'insulation',
    resistance_ohm: GAP_OHM,
    reactance_ohm: 0,
  };
}
