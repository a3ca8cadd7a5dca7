import { z } from 'zod';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind, PlannedBranch } from '../plan.ts';

const schema = z
  .strictObject({
    kind: z.literal('breaker'),
    rating_A: z
      .number()
      .gt(0)
      .max(1e5)
      .meta({ examples: [20] }),
    poles: z.literal([1, 2]).default(1).describe('one: terminals line and load; two: a.line, a.load, b.line, b.load'),
    family: z
      .enum(['ul489', 'iec60898-b', 'iec60898-c', 'iec60898-d'])
      .optional()
      .describe('absent: ul489 in north-america, iec60898-b in iec'),
    magnetic_from: z.number().gt(1).max(100).optional().describe('times the rating: may open at once'),
    magnetic_to: z.number().gt(1).max(100).optional().describe('times the rating: must open at once'),
    resistance_ohm: resistance_ohm.optional().describe('of one pole; absent: by rating'),
  })
  .superRefine((part, context) => {
    if (part.magnetic_from !== undefined && part.magnetic_to !== undefined && part.magnetic_from > part.magnetic_to)
      context.addIssue({
        code: 'custom',
        path: ['magnetic_from'],
        message: 'is above magnetic_to',
        params: { code: 'out-of-range', instead: `magnetic_from: ${part.magnetic_to}` },
      });
  });

type Breaker = z.output<typeof schema>;

// A pole loses about 2 W at its rating (common practice, no source): R = 2 W / I².
const POLE_LOSS_W = 2;

function ends(part: Breaker): readonly string[] {
  return part.poles === 1 ? ['line', 'load'] : ['a.line', 'a.load', 'b.line', 'b.load'];
}

/** A breaker with one or two poles that open together; one branch `<part>`, or `<part>.a` and `<part>.b`. */
export const breaker = {
  kind: 'breaker',
  schema,
  ends: 'line, load; with two poles a.line, a.load, b.line, b.load',
  terminals: ends,
  mustJoin: ends,
  plan(name, part, { region }) {
    const resistance_ohm = part.resistance_ohm ?? POLE_LOSS_W / part.rating_A ** 2;
    const poles = part.poles === 1 ? [name] : [`${name}.a`, `${name}.b`];
    const branches = poles.map((pole): PlannedBranch => ({
      name: pole,
      from: `${pole}.line`,
      to: `${pole}.load`,
      role: 'device',
      medium: 'metal',
      resistance_ohm,
      reactance_ohm: 0,
    }));
    const settings = {
      family: part.family ?? (region === 'iec' ? 'iec60898-b' : 'ul489'),
      rating_A: part.rating_A,
      ...(part.magnetic_from === undefined ? {} : { magneticFrom: part.magnetic_from }),
      ...(part.magnetic_to === undefined ? {} : { magneticTo: part.magnetic_to }),
    } as const;
    return { branches, device: { kind: 'breaker', poles, settings } };
  },
} satisfies PartKind<Breaker>;
