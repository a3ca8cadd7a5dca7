import { compile, printDiagnostics, readInstallation, setConditions } from '../installation/index.ts';
import type { Build, Conditions } from '../installation/index.ts';
import { readNamed, WrongUse, type World } from './world.ts';

/** An installation somebody named, with the conditions they set; undefined, and told, if what is written in it is wrong.
 *  @throws WrongUse if it cannot be read or has no such condition */
export function openNamed(
  world: World,
  file: string,
  set: readonly string[],
): { readonly build: Build; readonly conditions: Conditions } | undefined {
  const text = readNamed(world, file);
  const reading = readInstallation(text, file);
  if (!reading.ok) {
    world.complain(printDiagnostics(reading.diagnostics, text));
    return undefined;
  }
  const chosen = setConditions(reading.installation, set);
  if (!chosen.ok)
    throw new WrongUse(
      chosen.problems
        .map(({ message, instead }) =>
          instead === undefined ? message : `${message}\n  write instead: --set "${instead}"`,
        )
        .join('\n'),
    );
  return { build: compile(reading.installation), conditions: chosen.conditions };
}
