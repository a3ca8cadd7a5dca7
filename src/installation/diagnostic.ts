/** What can be wrong with a file somebody wrote. */
export type DiagnosticCode =
  | 'too-large'
  | 'yaml-syntax'
  | 'too-many-aliases'
  | 'too-deep'
  | 'duplicate-name'
  | 'bad-name'
  | 'unknown-key'
  | 'unit-missing'
  | 'wrong-unit'
  | 'missing-key'
  | 'wrong-type'
  | 'not-finite'
  | 'out-of-range'
  | 'unknown-kind'
  | 'unknown-choice'
  | 'unknown-conductor'
  | 'unknown-name'
  | 'dangling-terminal'
  | 'joined-to-itself'
  | 'joined-twice'
  | 'wrong-target'
  | 'no-source';

/** One thing wrong with a file, where it is, and what to write instead. Lines and columns count from 1. */
export interface Diagnostic {
  readonly code: DiagnosticCode;
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** How many characters the carets underline, at least 1. */
  readonly length: number;
  /** Where in the document, e.g. `parts.mixer run.length_m`. */
  readonly path: string;
  readonly message: string;
  readonly instead?: string;
}

const SHOWN = 100;

/** Each diagnostic as its place, code and message, the line of text, carets under the fault and what to write instead.
 *  @param text the text the diagnostics were found in */
export function printEach(diagnostics: readonly Diagnostic[], text: string): readonly string[] {
  const lines = text.split(/\r\n|\r|\n/);
  return diagnostics.map((diagnostic) => printed(diagnostic, lines[diagnostic.line - 1] ?? ''));
}

/** All of them with a blank line between, for a terminal. */
export function printDiagnostics(diagnostics: readonly Diagnostic[], text: string): string {
  return printEach(diagnostics, text).join('\n\n');
}

function printed(diagnostic: Diagnostic, line: string): string {
  const { file, line: number, column, code, message, length, instead } = diagnostic;
  const start = column - 1 <= SHOWN - 20 ? 0 : column - 20;
  const shown = printable(line.slice(start, start + SHOWN));
  const before = column - 1 - start;
  const carets = '^'.repeat(Math.max(1, Math.min(length, shown.length - before)));
  const gutter = String(number).padStart(5);
  return [
    `${printable(file)}:${number}:${column}  ${code}  ${printable(message)}`,
    `${gutter} | ${shown}`,
    `${' '.repeat(gutter.length)} | ${' '.repeat(before)}${carets}`,
    ...(instead === undefined ? [] : [`   write instead: ${printable(instead)}`]),
  ].join('\n');
}

/** Control characters would move the cursor of a terminal; each becomes one blank so that carets stay in place. */
function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, ' ');
}
