import { z } from 'zod';
import { poleBranch, poleCount, poleEnds, poleNames, poleResistance_ohm, rating_A } from '../poles.ts';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({
    kind: z.literal('device-by-points'),
    holds_A: rating_A.describe('for ever'),
    opens: z
      .array(z.strictObject({ at_A: rating_A, within_s: z.number().gt(0).max(1e5) }))
      .min(1)
      .max(20)
      .meta({ examples: [[{ at_A: 135, within_s: 3600 }]] }),
    magnetic_from_A: rating_A.optional().describe('may open at once'),
    magnetic_to_A: rating_A.optional().describe('must open at once'),
    poles: poleCount,
    resistance_ohm: resistance_ohm.optional().describe('of one pole; absent: by what it holds'),
  })
  .superRefine(({ holds_A, opens, magnetic_from_A: from, magnetic_to_A: to }, context) => {
    const wrong = (path: readonly (string | number)[], message: string, instead: string): void =>
      context.addIssue({ code: 'custom', path: [...path], message, params: { code: 'out-of-range', instead } });
    opens.forEach(({ at_A, within_s }, index) => {
      const before = opens[index - 1];
      const least_A = before?.at_A ?? holds_A;
      if (at_A <= least_A) wrong(['opens', index, 'at_A'], `is not above ${least_A}`, `more than ${least_A}`);
      if (before !== undefined && within_s > before.within_s)
        wrong(['opens', index, 'within_s'], 'is longer at more current', `within_s: ${before.within_s}`);
    });
    if ((from === undefined) !== (to === undefined))
      wrong([], 'needs both ends of its magnetic band', 'magnetic_from_A and magnetic_to_A');
    if (from !== undefined && to !== undefined && from > to)
      wrong(['magnetic_from_A'], 'is above magnetic_to_A', `magnetic_from_A: ${to}`);
  });

type DeviceByPoints = z.output<typeof schema>;

/** A device of which only what its sheet prints is known: what it holds, within what time it opens, from where to where it
 *  opens at once. */
export const deviceByPoints = {
  kind: 'device-by-points',
  schema,
  ends: 'line, load; with more poles a.line, a.load, b.line, b.load, …',
  terminals: (part) => poleEnds(part.poles),
  mustJoin: (part) => poleEnds(part.poles),
  plan(name, part) {
    const poles = poleNames(name, part.poles);
    const { holds_A: rating_A, magnetic_from_A, magnetic_to_A } = part;
    const settings = {
      family: 'points',
      rating_A,
      opens: part.opens.map(({ at_A, within_s }) => ({ amperes: at_A, within_s })),
      ...(magnetic_from_A === undefined ? {} : { magneticFrom_A: magnetic_from_A }),
      ...(magnetic_to_A === undefined ? {} : { magneticTo_A: magnetic_to_A }),
    } as const;
    return {
      branches: poles.map((pole) => poleBranch(pole, 'line', part.resistance_ohm ?? poleResistance_ohm(rating_A))),
      device: { kind: 'device-by-points', poles, settings },
    };
  },
} satisfies PartKind<DeviceByPoints>;
