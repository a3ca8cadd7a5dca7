import { z } from 'zod';
import { poleBranch, poleCount, poleEnds, poleNames, poleResistance_ohm, rating_A } from '../poles.ts';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({
    kind: z.literal('breaker'),
    rating_A,
    poles: poleCount,
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

/** A breaker with one to four poles that open together; one branch `<part>`, or `<part>.a`, `<part>.b` … */
export const breaker = {
  kind: 'breaker',
  schema,
  ends: 'line, load; with more poles a.line, a.load, b.line, b.load, …',
  terminals: (part) => poleEnds(part.poles),
  mustJoin: (part) => poleEnds(part.poles),
  plan(name, part, { region }) {
    const resistance_ohm = part.resistance_ohm ?? poleResistance_ohm(part.rating_A);
    const poles = poleNames(name, part.poles);
    const branches = poles.map((pole) => poleBranch(pole, 'line', resistance_ohm));
    const settings = {
      family: part.family ?? (region === 'iec' ? 'iec60898-b' : 'ul489'),
      rating_A: part.rating_A,
      ...(part.magnetic_from === undefined ? {} : { magneticFrom: part.magnetic_from }),
      ...(part.magnetic_to === undefined ? {} : { magneticTo: part.magnetic_to }),
    } as const;
    return { branches, device: { kind: 'breaker', poles, settings } };
  },
} satisfies PartKind<Breaker>;
