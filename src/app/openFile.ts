import { compile, printEach, readInstallation } from '../installation/index.ts';
import type { Place } from './desk.ts';

/** What comes of a file that somebody opens: a place, or everything that is wrong with it, printed with carets. */
export type Opened =
  | { readonly ok: true; readonly place: Place }
  | { readonly ok: false; readonly file: string; readonly faults: readonly string[] };

/** Reads an installation's text. It is never stored or sent anywhere. */
export function openFile(text: string, file: string): Opened {
  const read = readInstallation(text, file);
  if (!read.ok) return { ok: false, file, faults: printEach(read.diagnostics, text) };
  return { ok: true, place: { id: null, title: read.installation.place, build: compile(read.installation) } };
}
