import type { z } from 'zod';
import { margin, tellVerdicts, verdicts, type VerdictTable, type Vocabulary } from '../explain/index.ts';
import { openNamed } from './open.ts';
import { table, wrapped } from './table.ts';
import type { verdictsSchema } from './verdictsSchema.ts';
import type { ExitCode, World } from './world.ts';

/** What `ohmward verdicts` was asked. */
export interface VerdictsRequest {
  readonly file: string;
  readonly set: readonly string[];
  readonly json: boolean;
  readonly vocabulary: Vocabulary | undefined;
}

/** Judges an installation as it stands and prints a table, or everything as JSON (a limit that is not there is absent,
 *  what never happens is null). */
export function verdictsFile(world: World, { file, set, json, vocabulary }: VerdictsRequest): ExitCode {
  const opened = openNamed(world, file, set);
  if (opened === undefined) return 1;
  const { build, conditions } = opened;
  const words = vocabulary ?? build.installation.region;
  const found = verdicts(build, conditions);
  const told = tellVerdicts(build, found, words);
  if (json) {
    const rows = told.rows.map(({ verdict, where, what, judged }) => ({
      ...verdict,
      margin: margin(verdict),
      words: { where, what, judged },
    }));
    const { place, region } = build.installation;
    const all: z.input<typeof verdictsSchema> = {
      ohmward: 1,
      file,
      place,
      region,
      conditions,
      verdicts: rows,
      words: { sum: told.sum },
    };
    world.print(JSON.stringify(all, null, 2));
  } else world.print([build.installation.place, ...printedTable(told, world.columns)].join('\n'));
  return 0;
}

function printedTable(told: VerdictTable, columns: number): readonly string[] {
  const { heads, rows } = told;
  const cells = rows.map(({ what, value, limit, margin: left, judged }) => [what, value, limit, left, judged]);
  const lines = table([[heads.what, heads.value, heads.limit, heads.margin, heads.judged], ...cells], columns);
  const [head = '', ...body] = lines;
  return [
    ...wrapped(told.note, columns, '  '),
    '',
    head,
    ...body.flatMap((line, index) => {
      const where = rows[index]?.where;
      return where === rows[index - 1]?.where ? [line] : ['', where ?? '', line];
    }),
    '',
    ...wrapped(told.sum, columns, ''),
    '',
    told.clausesHeading,
    ...told.clauses.flatMap((clause) => wrapped(clause, columns, '  ')),
    '',
    ...wrapped(told.caution, columns, ''),
  ];
}
