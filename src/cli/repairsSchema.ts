import { z } from 'zod';
import { amperes, about, seconds, volts } from './measures.ts';

const texts = z.array(z.string()).readonly();

const repair = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('condition'), condition: z.string(), option: z.string() }),
  z.strictObject({ kind: z.literal('conductor'), cable: z.string(), size: z.string() }),
]);

const repairs = z.array(repair).readonly();

const tempting = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('rod'),
    part: z.string(),
    ohm: z.number().min(0),
    amperes,
    volts,
    rating_A: amperes.describe('of the breaker that would have to open'),
  }),
  z.strictObject({
    kind: z.literal('bigger-breaker'),
    device: z.string(),
    rating_A: amperes,
    larger_A: amperes,
    opens_s: seconds,
    larger_opens_s: seconds,
  }),
  z.strictObject({
    kind: z.literal('residual-device'),
    device: z.string(),
    residual_A: amperes,
    comesBack: z.boolean().describe('what goes out through it comes back through it'),
    untilTouched: z.boolean().describe('nothing is missing until somebody touches the live metal'),
  }),
]);

/** What `ohmward repairs --json` prints. */
export const repairsSchema = z.strictObject({
  ...about,
  broken: z
    .array(z.enum(['ended', 'no-lethal-touch', 'ordinary-work', 'even-halves', 'protected', 'withstand', 'polarity']))
    .readonly()
    .describe('rules that do not hold as it stands'),
  offered: repairs.describe('what could be done'),
  sets: z.array(repairs).readonly().describe('every set that makes all rules hold and of which no part does'),
  mostAtOnce: z.number().int().min(0).describe('sets of more repairs than this were not tried'),
  tried: z.number().int().min(0),
  tempting: z.array(tempting).readonly().describe('repairs that were tried and are not enough'),
  words: z.strictObject({
    heading: z.string(),
    brokenHeading: z.string(),
    broken: texts,
    verdict: z.string(),
    sets: texts,
    temptingHeading: z.string(),
    tempting: texts,
    caution: z.string(),
  }),
});
