import { z } from 'zod';
import { about } from './measures.ts';

const kind = z.enum([
  'fault-to-metal',
  'fault-to-neutral',
  'fault-between-lines',
  'second-fault',
  'loop',
  'disconnection',
  'case-volts',
  'longest-run',
  'protective-size',
  'overload',
  'monitor',
  'grounding-current',
]);

const clause = z.enum([
  'loop.iec',
  'loop.tt',
  'loop.it',
  'loop.north-america',
  'time.tn',
  'time.tt',
  'time.it',
  'time.it.apart',
  'time.north-america',
  'touch',
  'touch.first',
  'run',
  'protective.adiabatic',
  'protective.table',
  'protective.north-america',
  'overload.iec',
  'overload.north-america',
  'monitor',
  'grounding',
  'none',
]);

const verdict = z.strictObject({
  kind,
  part: z.string().describe('the appliance, outlet, panel or winding; for what a cable must be, the cable'),
  line: z.string().optional().describe('terminal of the line'),
  other: z.string().optional().describe('where the other one of two faults is, on a supply that nothing earths'),
  device: z.string().optional().describe('who is to open, or to warn'),
  value: z.number().nullable().describe('null: never, or without end'),
  unit: z.enum(['A', 'V', 'Ω', 's', 'W', 'VA', 'Hz', 'm', 'mm²']),
  limit: z.number().nullable().optional().describe('absent: nothing limits it; null: without end'),
  sense: z.enum(['at most', 'at least']),
  holds: z
    .enum(['yes', 'maybe', 'no', 'told'])
    .describe('maybe: it depends on where in its band the device lies; told: there is no limit'),
  clause: clause.describe('where the limit comes from'),
  size: z.string().optional().describe('as written on a drum, where the limit is one'),
  margin: z.number().nullable().optional().describe('share of the limit that is left; below zero it is exceeded'),
  words: z.strictObject({ where: z.string(), what: z.string(), judged: z.string() }),
});

/** What `ohmward verdicts --json` prints. */
export const verdictsSchema = z.strictObject({
  ...about,
  verdicts: z.array(verdict).readonly(),
  words: z.strictObject({ sum: z.string() }),
});
