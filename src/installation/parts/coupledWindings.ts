import { z } from 'zod';
import { passiveMatrix } from '../passiveMatrix.ts';
import { LEAST_OHM, type PartKind, type PlannedBranch } from '../plan.ts';
import { nameSchema } from '../quantity.ts';

const matrixSchema = z
  .array(z.array(z.number().min(-1e10).max(1e10)))
  .min(2)
  .max(12);

const schema = z
  .strictObject({
    kind: z.literal('coupled-windings'),
    windings: z
      .array(nameSchema)
      .min(2)
      .max(12)
      .meta({ examples: [['primary', 'secondary']] })
      .describe('the first is the one that is fed'),
    resistance_ohm: matrixSchema
      .optional()
      .meta({
        examples: [
          [
            [1, 0],
            [0, 1],
          ],
        ],
      })
      .describe('one row for each winding: its own on the diagonal; absent: none'),
    reactance_ohm: matrixSchema
      .meta({
        examples: [
          [
            [10, 4],
            [4, 8],
          ],
        ],
      })
      .describe(
        'one row for each winding: self on the diagonal, mutual beside it; positive where both dots are at the same end',
      ),
  })
  .superRefine((part, context) => {
    const { windings } = part;
    if (new Set(windings).size < windings.length)
      context.addIssue({
        code: 'custom',
        path: ['windings'],
        message: 'names one winding twice',
        params: { code: 'duplicate-name', instead: 'windings: [primary, secondary]' },
      });
    for (const key of ['resistance_ohm', 'reactance_ohm'] as const) {
      const wrong = part[key] === undefined ? undefined : passiveMatrix(part[key], windings.length);
      if (wrong !== undefined)
        context.addIssue({
          code: 'custom',
          path: [key],
          message: wrong,
          params: { code: 'out-of-range', instead: `${key}: [[10, 4], [4, 8]]` },
        });
    }
  });

// Less than this is no impedance, Ω (invented: far below the least resistance there is).
const NOTHING_OHM = 1e-15;

type CoupledWindings = z.output<typeof schema>;

/** Windings that drive each other, by their impedance matrix: `<part>.<winding>` from its `.dot` to its `.end`. The first is
 *  told as a load of what feeds it, every other one as a winding that feeds what hangs on it. */
export const coupledWindings = {
  kind: 'coupled-windings',
  schema,
  ends: '<winding>.dot and <winding>.end of each winding, such as primary.dot, primary.end, secondary.dot, secondary.end',
  terminals: (part) => part.windings.flatMap((winding) => [`${winding}.dot`, `${winding}.end`]),
  plan(name, part) {
    const count = part.windings.length;
    // Windings without any loss that are coupled to the full would leave nothing to solve.
    const resistance_ohm = Array.from({ length: count ** 2 }, (_, at) => {
      const [row, column] = [Math.floor(at / count), at % count];
      const own = part.resistance_ohm?.[row]?.[column] ?? 0;
      return (Math.abs(own) < NOTHING_OHM ? 0 : own) + (row === column ? LEAST_OHM : 0);
    });
    const reactance_ohm = part.reactance_ohm.flat().map((ohm) => (Math.abs(ohm) < NOTHING_OHM ? 0 : ohm));
    const branches = part.windings.map((winding, at): PlannedBranch => ({
      name: `${name}.${winding}`,
      ...windingEnds(name, winding, at),
      resistance_ohm: resistance_ohm[at * count + at] ?? 0,
      reactance_ohm: reactance_ohm[at * count + at] ?? 0,
    }));
    return { branches, winding: { branches: branches.map((branch) => branch.name), resistance_ohm, reactance_ohm } };
  },
} satisfies PartKind<CoupledWindings>;

/** Where a winding runs and what it counts as. Current counts into the dot of every winding. */
export function windingEnds(part: string, winding: string, at: number) {
  const taking = { role: 'load', medium: 'load' } as const;
  const giving = { role: 'winding', medium: 'metal' } as const;
  return { from: `${part}.${winding}.dot`, to: `${part}.${winding}.end`, ...(at === 0 ? taking : giving) };
}
