import { z } from 'zod';
import { comparing, comparingEnds, knownConductors, poleResistance_ohm, rating_A, through } from '../poles.ts';
import { resistance_ohm } from '../quantity.ts';
import { residualKeys, residualSettings } from '../residualSetting.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({
    kind: z.literal('rcbo'),
    rating_A,
    family: z
      .enum(['ul489', 'iec60898-b', 'iec60898-c', 'iec60898-d'])
      .optional()
      .describe('absent: ul489 in north-america (a GFCI breaker), iec60898-b in iec'),
    ...residualKeys,
    ...through,
    resistance_ohm: resistance_ohm.optional().describe('of one pole; absent: by rating'),
  })
  .superRefine(knownConductors);

type Rcbo = z.output<typeof schema>;

/** A breaker and a residual device in one case (IEC 61009, or a breaker with GFCI): whichever acts first opens its poles. */
export const rcbo = {
  kind: 'rcbo',
  schema,
  ends: 'line.supply, line.load, neutral.supply, neutral.load, or those of its poles',
  terminals: (part) => comparingEnds(part),
  mustJoin: (part) => comparingEnds(part),
  plan(name, part, { region }) {
    const { branches, poles, residual } = comparing(
      name,
      part,
      part.resistance_ohm ?? poleResistance_ohm(part.rating_A),
    );
    const settings = {
      family: part.family ?? (region === 'iec' ? 'iec60898-b' : 'ul489'),
      rating_A: part.rating_A,
      residual: residualSettings(part, region),
    } as const;
    return { branches, device: { kind: 'rcbo', poles, residual, settings } };
  },
} satisfies PartKind<Rcbo>;
