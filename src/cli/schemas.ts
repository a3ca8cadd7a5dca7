import { z } from 'zod';
import { installationJsonSchema } from '../installation/index.ts';
import { lessonJsonSchema } from '../lesson/index.ts';
import { resultSchema } from './resultSchema.ts';

/** The published JSON Schema of a kind of file, or of what `ohmward run --json` prints. */
export function schemaOf(what: 'installation' | 'lesson' | 'result'): object {
  switch (what) {
    case 'installation':
      return installationJsonSchema();
    case 'lesson':
      return lessonJsonSchema();
    case 'result':
      return z.toJSONSchema(resultSchema);
    default:
      return what satisfies never;
  }
}
