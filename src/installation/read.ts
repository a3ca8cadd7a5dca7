import type { Diagnostic } from './diagnostic.ts';
import { readDocument } from './document.ts';
import { installationSchema, type Installation } from './installation.ts';
import { referenceDiagnostics } from './references.ts';
import { shapeDiagnostics } from './shape.ts';

/** What came of reading a file: an installation, or everything that is wrong with the text. */
export type Reading =
  | { readonly ok: true; readonly installation: Installation }
  | { readonly ok: false; readonly diagnostics: readonly Diagnostic[] };

/** Reads an installation from YAML. Whatever the text holds it answers, with all faults at once in the order of the text.
 *  @param file the name to print before line and column */
export function readInstallation(text: string, file: string): Reading {
  const document = readDocument(text, file);
  if (document.sound === 'nothing') return { ok: false, diagnostics: document.diagnostics };
  const result = installationSchema.safeParse(document.value);
  const shape = result.success ? [] : shapeDiagnostics(installationSchema, document);
  const references = document.sound === 'whole' ? referenceDiagnostics(document) : [];
  // After a fault of syntax only what stands before it can be believed.
  const sound = [...shape, ...references].filter(document.believes);
  const diagnostics = [...document.diagnostics, ...sound];
  if (result.success && diagnostics.length === 0) return { ok: true, installation: result.data };
  const ordered = diagnostics.toSorted((one, two) => one.line - two.line || one.column - two.column);
  return { ok: false, diagnostics: ordered };
}
