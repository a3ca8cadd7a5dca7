import { z } from 'zod';
import { zones } from '../body/index.ts';
import type { Assertion, Claim } from './lesson.ts';

const sentence = z.string().min(1).max(2000);
const nameOf = z.string().min(1).max(200);
const conditions = z
  .array(nameOf)
  .max(30)
  .default([])
  .describe('conditions, such as "loose joint" or "loose joint=no"');
const amperes = z.number().min(0).max(1e6).optional();
const volts = z.number().min(0).max(1e6).optional();
const zone = z.enum(zones).optional();
const prose = nameOf.regex(/^[^/\\]+\.md$/, 'is the name of a Markdown file in the lesson’s folder');

const SUBJECTS = ['device', 'through', 'touching', 'person'] as const;
const MEASURES: Readonly<Record<(typeof SUBJECTS)[number], readonly string[]>> = {
  device: ['operates'],
  through: ['above_A', 'below_A'],
  touching: ['above_V', 'below_V'],
  person: ['above_A', 'below_A', 'reaches', 'stays_below'],
};

/** A claim in the file: one subject and at least one measure that fits it. */
const assertionSchema = z
  .strictObject({
    device: nameOf.optional().describe('a device, with operates'),
    operates: z
      .union([z.literal('never'), z.strictObject({ within_s: z.number().gt(0).max(1e6) })])
      .optional()
      .describe('never, or { within_s: 1 }'),
    through: nameOf.optional().describe('a branch or a part, with above_A or below_A'),
    touching: nameOf.optional().describe('a terminal, with above_V or below_V'),
    person: nameOf.optional().describe('a person, with above_A, below_A, reaches or stays_below'),
    above_A: amperes,
    below_A: amperes,
    above_V: volts,
    below_V: volts,
    reaches: zone,
    stays_below: zone,
    with: conditions,
  })
  .superRefine((file, context) => {
    const subjects = SUBJECTS.filter((key) => file[key] !== undefined);
    const [subject] = subjects;
    const say = (message: string, instead: string) =>
      context.addIssue({ code: 'custom', path: [], message, params: { code: 'missing-key', instead } });
    if (subject === undefined || subjects.length > 1)
      return say(
        'needs exactly one of device, through, touching, person',
        '{ device: mixer breaker, operates: never }',
      );
    const written = Object.keys(file).filter((key) => !['with', ...SUBJECTS].includes(key));
    const foreign = written.find((key) => !MEASURES[subject].includes(key));
    if (foreign !== undefined || written.length === 0)
      say(`speaks of ${subject}, so it needs ${MEASURES[subject].join(' or ')} and nothing else`, EXAMPLES[subject]);
  })
  .transform(({ with: changes, ...file }): Assertion => ({ claim: claimOf(file), with: changes }));

const EXAMPLES = {
  device: '{ device: mixer breaker, operates: { within_s: 1 } }',
  through: '{ through: own rod, below_A: 5 }',
  touching: '{ touching: mixer.case, above_V: 50 }',
  person: '{ person: baker, stays_below: AC-4.1 }',
} as const;

interface WrittenClaim {
  readonly device?: string | undefined;
  readonly operates?: 'never' | { readonly within_s: number } | undefined;
  readonly through?: string | undefined;
  readonly touching?: string | undefined;
  readonly person?: string | undefined;
}

function claimOf({ device, operates, through, touching, person, ...measures }: WrittenClaim): Claim {
  const written = Object.fromEntries(Object.entries(measures).filter(([, value]) => value !== undefined));
  if (device !== undefined) return { kind: 'device', device, operates: operates ?? 'never' };
  if (through !== undefined) return { kind: 'through', through, ...written };
  if (touching !== undefined) return { kind: 'touching', touching, ...written };
  return { kind: 'person', person: person ?? '', ...written };
}

const told = {
  title: z.string().min(1).max(120),
  given: conditions,
  look: nameOf.optional().describe('the part the picture turns to'),
};
const asked = { ask: sentence, hints: z.array(sentence).max(5).default([]), text: prose.optional() };

const stepSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('show'), ...told, text: prose }),
  z.strictObject({
    kind: z.literal('predict'),
    ...told,
    ...asked,
    answers: z
      .array(
        z.strictObject({
          say: sentence,
          right: z.boolean().default(false),
          because: sentence.describe('said after the run to whoever chose it'),
          claim: assertionSchema,
        }),
      )
      .min(2)
      .max(6),
  }),
  z.strictObject({
    kind: z.literal('run'),
    ...told,
    text: prose.optional(),
    until_s: z.number().gt(0).max(1e6),
    watch: nameOf.describe('a device or a part'),
  }),
  z.strictObject({ kind: z.literal('explain'), ...told, text: prose }),
  z.strictObject({
    kind: z.literal('make-safe'),
    ...told,
    ...asked,
    repairs: z
      .array(z.strictObject({ change: nameOf, right: z.boolean().default(false), because: sentence }))
      .min(2)
      .max(8),
    goal: z.array(assertionSchema).min(1).max(8),
  }),
]);

/** The file of a lesson, `lessons/<name>/lesson.yaml`. */
export const lessonSchema = z.strictObject({
  lesson: z.string().min(1).max(120).describe('its title'),
  removes: sentence.describe('the misconception it removes'),
  afterwards: sentence.describe('goes on from "Afterwards you can …"'),
  minutes: z.number().int().min(1).max(60),
  place: nameOf.describe('a file in lessons/places, without .yaml'),
  given: conditions,
  steps: z.array(stepSchema).min(1).max(40),
  proves: z.array(assertionSchema).min(1).max(40),
});

/** A lesson as its file says it, names not looked up yet. */
export type LessonFile = z.output<typeof lessonSchema>;

/** The JSON Schema of a lesson's file, for editors. */
export function lessonJsonSchema(): object {
  return z.toJSONSchema(lessonSchema, { io: 'input' });
}
