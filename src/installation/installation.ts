import { z } from 'zod';
import { conditionSchema } from './conditions.ts';
import { partSchema } from './parts/index.ts';
import { JOINT_OHM, type Region } from './plan.ts';
import { nameSchema, pairSchema, resistance_ohm, type TerminalPair } from './quantity.ts';

/** What is screwed to what; every join is a joint with a resistance of its own. */
export interface Join {
  readonly between: TerminalPair;
  readonly resistance_ohm: number;
}

/** One join: two terminals, or two terminals with a measured resistance. */
export const joinSchema = z
  .union([
    pairSchema.transform((between): Join => ({ between, resistance_ohm: JOINT_OHM })),
    z
      .strictObject({ between: pairSchema, resistance_ohm: resistance_ohm.default(JOINT_OHM) })
      .transform((join): Join => join),
  ])
  .meta({ examples: [['panel.neutral bar', 'service rod']] });

const FREQUENCY_HZ: Readonly<Record<Region, number>> = { 'north-america': 60, iec: 50 };

/** Kinds of part that direct current does not pass or drive. */
const ALTERNATING_ONLY: ReadonlySet<string> = new Set([
  'centre-tapped-transformer',
  'coupled-windings',
  'generator',
  'ideal-transformer',
  'inverter',
  'isolating-transformer',
  'three-phase-transformer',
]);

/** The file of an installation: what is built, what is screwed to what, and what may be the matter. */
export const installationSchema = z
  .strictObject({
    place: z
      .string()
      .min(1)
      .max(200)
      .meta({ examples: ['The bakery'] }),
    region: z.enum(['north-america', 'iec']),
    frequency_Hz: z
      .number()
      .min(0)
      .max(1000)
      .optional()
      .describe('0: direct current, EMFs in d.c. volts; absent: 60 in north-america, 50 in iec'),
    drawing: z.string().min(1).max(100).optional().describe('folder of the drawing, if there is one'),
    parts: z.record(nameSchema, partSchema).meta({ examples: [{ supply: { kind: 'source', emf_V: 120 } }] }),
    joins: z
      .array(joinSchema)
      .default([])
      .describe(
        'what is screwed to what: [panel.neutral bar, service rod]. Every join is a joint of 0.0005 ohm unless its own ' +
          'is written: { between: [panel.neutral bar, service rod], resistance_ohm: 0.02 }; nothing counts as less than 0.00001 ohm',
      ),
    conditions: z.record(nameSchema, conditionSchema).default({}),
  })
  .superRefine(({ frequency_Hz, parts }, context) => {
    if (frequency_Hz !== 0) return;
    for (const [name, part] of Object.entries(parts)) {
      const { kind } = part;
      const harmonic = part.kind === 'harmonic-source' && part.currents.some(({ order }) => order > 1);
      if (!harmonic && !ALTERNATING_ONLY.has(kind)) continue;
      context.addIssue({
        code: 'custom',
        path: ['parts', name, 'kind'],
        message: `is a ${kind}, which works with alternating current only; frequency_Hz is 0`,
        params: { code: 'wrong-target', instead: 'kind: source' },
      });
    }
  })
  .transform((file) => ({ ...file, frequency_Hz: file.frequency_Hz ?? FREQUENCY_HZ[file.region] }))
  .meta({
    title: 'An installation',
    examples: [
      {
        place: 'The bakery',
        region: 'north-america',
        parts: { supply: { kind: 'source', emf_V: 120 }, lamp: { kind: 'impedance', resistance_ohm: 144 } },
        joins: [
          ['supply.plus', 'lamp.a'],
          ['lamp.b', 'supply.minus'],
        ],
      },
    ],
  });

/** What is built. */
export type Installation = Readonly<z.output<typeof installationSchema>>;

/** The JSON Schema of an installation's file, for editors. */
export function installationJsonSchema(): object {
  return z.toJSONSchema(installationSchema, { io: 'input' });
}
