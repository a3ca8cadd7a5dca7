import type { z } from 'zod';
import {
  smallestRepair,
  tellRepair,
  temptingRepairs,
  whatIsTheMatter,
  say,
  type Vocabulary,
} from '../explain/index.ts';
import { openNamed } from './open.ts';
import type { repairsSchema } from './repairsSchema.ts';
import { wrapped } from './table.ts';
import type { ExitCode, World } from './world.ts';

/** What `ohmward repairs` was asked. */
export interface RepairsRequest {
  readonly file: string;
  readonly set: readonly string[];
  readonly json: boolean;
  readonly vocabulary: Vocabulary | undefined;
}

/** Searches every smallest repair of an installation under the conditions set, and prints them, or JSON. */
export function repairsFile(world: World, { file, set, json, vocabulary }: RepairsRequest): ExitCode {
  const opened = openNamed(world, file, set);
  if (opened === undefined) return 1;
  const { installation } = opened.build;
  const words = vocabulary ?? installation.region;
  const found = smallestRepair(opened);
  const tempting = temptingRepairs(opened);
  const told = tellRepair(found, tempting, words, opened.build.installation);
  if (json) {
    const { place, region } = installation;
    const all: z.input<typeof repairsSchema> = {
      ohmward: 1,
      file,
      place,
      region,
      conditions: opened.conditions,
      ...found,
      tempting,
      words: told,
    };
    world.print(JSON.stringify(all, null, 2));
    return 0;
  }
  const lines = (texts: readonly string[]): readonly string[] =>
    texts.flatMap((text) => wrapped(text, world.columns, '  '));
  const matter = whatIsTheMatter(installation, opened.conditions, words);
  const blocks = [
    [installation.place, ...lines(matter.length === 0 ? [say('conditions.right', words)] : matter)],
    ...(told.broken.length === 0 ? [] : [[told.brokenHeading, ...lines(told.broken)]]),
    [told.heading, ...lines([told.verdict]), ...told.sets.flatMap((one) => wrapped(`– ${one}`, world.columns, '    '))],
    ...(told.tempting.length === 0 ? [] : [[told.temptingHeading, ...lines(told.tempting)]]),
    [...wrapped(told.caution, world.columns, '')],
  ];
  world.print(blocks.map((block) => block.join('\n')).join('\n\n'));
  return 0;
}
