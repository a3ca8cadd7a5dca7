import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { compile } from '../../src/installation/compile.ts';
import { installationSchema } from '../../src/installation/installation.ts';
import type { Build, Conditions } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import type { Timeline } from '../../src/scenario/index.ts';

/** The bakery as it stands in the lessons. */
export const bakery: Build = compile(
  installationSchema.parse(parse(readFileSync('lessons/places/bakery.yaml', 'utf8'))),
);

/** Everything that is usually switched on. */
export const usual: Conditions = { 'mixer running': 'yes', 'oven running': 'yes', 'lamps on': 'yes' };

/** A run of the bakery with its loads on unless the conditions say otherwise. */
export function runBakery(conditions: Conditions = {}, options?: Parameters<typeof run>[2]): Timeline {
  return run(bakery, { ...usual, ...conditions }, options);
}
