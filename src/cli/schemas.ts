import { z } from 'zod';
import { installationJsonSchema } from '../installation/index.ts';
import { lessonJsonSchema } from '../lesson/index.ts';
import { populationSchema } from './populationSchema.ts';
import { repairsSchema } from './repairsSchema.ts';
import { resultSchema } from './resultSchema.ts';
import { sweepSchema } from './sweepSchema.ts';
import { verdictsSchema } from './verdictsSchema.ts';

/** The published JSON Schemas by name: two kinds of file, and what each command prints with `--json`. */
const SCHEMAS = {
  installation: installationJsonSchema,
  lesson: lessonJsonSchema,
  result: () => z.toJSONSchema(resultSchema),
  verdicts: () => z.toJSONSchema(verdictsSchema),
  repairs: () => z.toJSONSchema(repairsSchema),
  sweep: () => z.toJSONSchema(sweepSchema),
  population: () => z.toJSONSchema(populationSchema),
} as const;

/** What has a published schema. */
export type Described = keyof typeof SCHEMAS;

/** Every name a schema can be asked for by. */
export const DESCRIBED = Object.keys(SCHEMAS) as readonly Described[];

/** The published JSON Schema of a kind of file, or of what a command prints with `--json`. */
export function schemaOf(what: Described): object {
  return SCHEMAS[what]();
}
