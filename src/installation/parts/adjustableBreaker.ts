import { z } from 'zod';
import { poleBranch, poleEnds, poleNames, poleResistance_ohm, rating_A } from '../poles.ts';
import { resistance_ohm } from '../quantity.ts';
import type { PartKind } from '../plan.ts';

const delayed = z.strictObject({
  pickup_A: rating_A,
  delay_s: z
    .number()
    .min(0.02)
    .max(10)
    .meta({ examples: [0.3] }),
  i2t: z
    .boolean()
    .default(false)
    .describe('true: later at less current, constant I²t up to where the delay is reached'),
});

const schema = z.strictObject({
  kind: z.literal('adjustable-breaker'),
  rating_A: rating_A.describe('pickup of the long-time element'),
  long_delay_s: z.number().gt(0).max(60).default(10).describe('at six times the rating'),
  short: delayed.optional().describe('short-time element; absent: off'),
  instantaneous_A: rating_A.optional().describe('absent: off'),
  ground: delayed
    .optional()
    .describe('ground-fault element, on the phasor sum of the poles and the neutral; absent: off'),
  poles: z.literal([1, 2, 3, 4]).default(3).describe('one: line, load; more: a.line, a.load, b.line, b.load, …'),
  neutral: z
    .boolean()
    .default(false)
    .describe('true: the neutral passes through the sensor, unopened: neutral.line, neutral.load'),
  resistance_ohm: resistance_ohm.optional().describe('of one pole; absent: by rating'),
});

type AdjustableBreaker = z.output<typeof schema>;

function ends(part: AdjustableBreaker): readonly string[] {
  return [...poleEnds(part.poles), ...(part.neutral ? ['neutral.line', 'neutral.load'] : [])];
}

/** A breaker with an electronic release: long-time, short-time, instantaneous and ground-fault elements, each set by itself. */
export const adjustableBreaker = {
  kind: 'adjustable-breaker',
  schema,
  ends: 'a.line, a.load, b.line, b.load, c.line, c.load, or line, load of one pole; neutral.line, neutral.load if it has a neutral',
  terminals: ends,
  mustJoin: ends,
  plan(name, part) {
    const resistance_ohm = part.resistance_ohm ?? poleResistance_ohm(part.rating_A);
    const poles = poleNames(name, part.poles);
    const residual = part.neutral ? [...poles, `${name}.neutral`] : poles;
    const { rating_A, long_delay_s: longDelay_s, short, instantaneous_A, ground } = part;
    const settings = {
      family: 'adjustable',
      rating_A,
      longDelay_s,
      ...(short === undefined ? {} : { short }),
      ...(instantaneous_A === undefined ? {} : { instantaneous_A }),
      ...(ground === undefined ? {} : { ground }),
    } as const;
    return {
      branches: residual.map((pole) => poleBranch(pole, 'line', resistance_ohm)),
      device: { kind: 'adjustable-breaker', poles, ...(ground === undefined ? {} : { residual }), settings },
    };
  },
} satisfies PartKind<AdjustableBreaker>;
