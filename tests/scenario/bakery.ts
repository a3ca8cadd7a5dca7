import { readFileSync } from 'node:fs';
import { compile, initialConditions, printDiagnostics, readInstallation } from '../../src/installation/index.ts';
import type { Build, Conditions } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import type { Timeline } from '../../src/scenario/index.ts';

/** A place of Kestrel Yard as it stands in the lessons. */
function placeOf(name: string): Build {
  const file = new URL(`../../lessons/places/${name}.yaml`, import.meta.url);
  const text = readFileSync(file, 'utf8');
  const reading = readInstallation(text, file.pathname);
  if (!reading.ok) throw new Error(printDiagnostics(reading.diagnostics, text));
  return compile(reading.installation);
}

/** The bakery. */
export const bakery: Build = placeOf('bakery');

/** The bakery as it opens: everything that is usually switched on. */
export const usual: Conditions = initialConditions(bakery.installation);

/** A run of the bakery with its loads on unless the conditions say otherwise. */
export function runBakery(conditions: Conditions = {}, options?: Parameters<typeof run>[2]): Timeline {
  return run(bakery, { ...usual, ...conditions }, options);
}
