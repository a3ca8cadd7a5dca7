import { z } from 'zod';
import { GAP_OHM, type PartKind, type PlannedBranch } from '../plan.ts';
import { resistance_ohm } from '../quantity.ts';

const schema = z.strictObject({
  kind: z.literal('transfer-switch'),
  lines: z.literal([1, 2, 3]).default(1).describe('how many: a; a and b; a, b and c'),
  neutral: z
    .enum(['switched', 'solid'])
    .default('solid')
    .describe('solid: both supplies and the load share one neutral, and so any bond of either'),
  resistance_ohm: resistance_ohm.default(0.001).describe('of one contact (typical, common practice, no source)'),
});

type TransferSwitch = z.output<typeof schema>;

const SUPPLIES = ['normal', 'alternative'] as const;
type Position = (typeof SUPPLIES)[number];

/** A switch that joins the load to the normal or to the alternative supply, never to both: `<part>.a.normal` and
 *  `<part>.a.alternative` and so on; a condition of kind transfer moves it. */
export const transferSwitch = {
  kind: 'transfer-switch',
  schema,
  ends: 'a.normal, a.alternative, a.load; with more lines the same of b and c; a switched neutral neutral.normal, neutral.alternative, neutral.load, a solid one neutral',
  terminals: (part) => [
    ...poles(part).flatMap((pole) => [`${pole}.normal`, `${pole}.alternative`, `${pole}.load`]),
    ...(part.neutral === 'solid' ? ['neutral'] : []),
  ],
  mustJoin: (part) => poles(part).map((pole) => `${pole}.load`),
  plan: (name, part) => ({
    branches: poles(part).flatMap((pole) =>
      SUPPLIES.map((supply): PlannedBranch => ({
        name: `${name}.${pole}.${supply}`,
        from: `${name}.${pole}.${supply}`,
        to: `${name}.${pole}.load`,
        role: pole === 'neutral' ? 'neutral' : 'line',
        medium: 'metal',
        resistance_ohm: supply === 'normal' ? part.resistance_ohm : GAP_OHM,
        reactance_ohm: 0,
      })),
    ),
  }),
} satisfies PartKind<TransferSwitch>;

/** The contacts of a transfer switch, by the position in which they are closed. */
export function transferContacts(name: string, part: TransferSwitch): Readonly<Record<Position, readonly string[]>> {
  const contacts = (supply: Position) => poles(part).map((pole) => `${name}.${pole}.${supply}`);
  return { normal: contacts('normal'), alternative: contacts('alternative') };
}

function poles(part: TransferSwitch): readonly string[] {
  const lines = ['a', 'b', 'c'].slice(0, part.lines);
  return part.neutral === 'switched' ? [...lines, 'neutral'] : lines;
}
