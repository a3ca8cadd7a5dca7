import type { Diagnostic } from './diagnostic.ts';
import type { WrittenDocument } from './document.ts';

/** What a file says about things that are not there: terminals, joins, parts, sources, targets of conditions. */
export function referenceDiagnostics(_document: WrittenDocument): readonly Diagnostic[] {
  return [];
}
