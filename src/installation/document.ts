import { LineCounter, parseDocument, type Document } from 'yaml';
import type { Diagnostic, DiagnosticCode } from './diagnostic.ts';
import { firstExcess, MOST_ALIASES, tooManyAliases, type Span } from './documentBounds.ts';
import { danglingAliases, duplicates, placeFinder, type DocumentPath } from './documentPlaces.ts';
import { syntaxWords, type SyntaxWords } from './syntaxWords.ts';

/** A YAML text that was read: its value and where each piece of it stands. */
export interface WrittenDocument {
  /** Plain maps, lists and scalars; of a name written twice the last. */
  readonly value: unknown;
  /** A diagnostic at the key (for a pair in a map) or the value at this path; at the nearest place that exists if there is none. */
  diagnostic(
    code: DiagnosticCode,
    path: DocumentPath,
    message: string,
    options?: { readonly of?: 'key' | 'value'; readonly instead?: string | undefined },
  ): Diagnostic;
  /** What is wrong with the text as YAML, and names written twice. */
  readonly diagnostics: readonly Diagnostic[];
  /** How much can be believed: after its first fault of syntax a text cannot. */
  readonly sound: 'whole' | 'up to the first fault' | 'nothing';
  /** Whether a diagnostic stands before the first fault of syntax. */
  believes(diagnostic: Diagnostic): boolean;
}

/** Reads a YAML text whatever it holds: never throws, answers within seconds, and knows where everything stands.
 *  @param file the name to print before line and column */
export function readDocument(written: string, file: string): WrittenDocument {
  const text = written.replaceAll(LONE_RETURN, '\n');
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', end + 1)) lines.addNewLine(end + 1);
  const write = (
    span: Span,
    code: DiagnosticCode,
    path: DocumentPath,
    message: string,
    instead?: string,
  ): Diagnostic => {
    const start = Math.min(span.start, text.length);
    const { line, col: column } = lines.linePos(start);
    const end = Math.min(span.end, (lines.lineStarts[line] ?? text.length + 1) - 1);
    const place = { code, file, line, column, length: Math.max(1, end - start), path: path.map(String).join('.') };
    return instead === undefined ? { ...place, message } : { ...place, message, instead };
  };

  const excess = firstExcess(text);
  if (excess !== undefined) {
    const diagnostic = write(excess.span, excess.code, [], excess.message, excess.instead);
    return {
      value: undefined,
      diagnostic: () => diagnostic,
      diagnostics: [diagnostic],
      sound: 'nothing',
      believes: () => false,
    };
  }

  // Duplicates are found afterwards, in linear time and with the place of the first.
  const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false, logLevel: 'error', version: '1.2' });
  const place = placeFinder(document);
  const firstFault = document.errors.reduce((first, error) => Math.min(first, error.pos[0]), Infinity);
  const { value, faults } = valueOf(document);
  return {
    value,
    diagnostic: (code, path, message, { of = 'value', instead } = {}) =>
      write(place(path, of), code, path, message, instead),
    diagnostics: [
      ...syntaxFaults(document, text, lines).map(({ span, message, instead }) =>
        write(span, 'yaml-syntax', [], message, instead),
      ),
      ...faults.map(({ span, code, message, instead }) => write(span, code, [], message, instead)),
      ...duplicates(document).map(({ path, name, span, first }) =>
        write(
          span,
          'duplicate-name',
          path,
          `two things are called "${name.slice(0, 60)}"; the first is in line ${lines.linePos(first.start).line}`,
          'another name',
        ),
      ),
    ],
    sound: faults.length > 0 ? 'nothing' : firstFault === Infinity ? 'whole' : 'up to the first fault',
    believes({ line, column }) {
      if (firstFault === Infinity) return true;
      const fault = lines.linePos(firstFault);
      return line < fault.line || (line === fault.line && column < fault.col);
    },
  };
}

// Some editors end lines so; the YAML library does not.
const LONE_RETURN = /\r(?!\n)/g;

/** Faults of syntax in the order of the text. The library tells one fault once for each thing it leaves open
 *  and each mark it meets; once in a line is enough. */
function syntaxFaults(
  { errors }: Document,
  text: string,
  lines: LineCounter,
): readonly (SyntaxWords & { readonly span: Span })[] {
  const told = new Set<string>();
  return errors.flatMap((error) => {
    const [start, end] = error.pos;
    const { message, instead } =
      error.code === 'MULTIPLE_DOCS' ? SECOND_DOCUMENT : syntaxWords(error, text.slice(start, start + 2));
    const key = `${lines.linePos(start).line} ${message}`;
    if (told.has(key)) return [];
    told.add(key);
    return [{ span: { start, end }, message, instead }];
  });
}

const SECOND_DOCUMENT: SyntaxWords = {
  message: 'a second document begins here',
  instead: 'one document in each file',
};

function valueOf(document: Document) {
  const dangling = danglingAliases(document).map(({ name, span }) => ({
    span,
    code: 'unknown-name' as const,
    message: `the alias *${name.slice(0, 60)} stands for nothing written before it`,
    instead: 'the value itself',
  }));
  if (dangling.length > 0) return { value: undefined, faults: dangling };
  try {
    return { value: document.toJS({ maxAliasCount: MOST_ALIASES }) as unknown, faults: [] };
  } catch (error) {
    // All aliases stand for something, so this is the library's limit on how far they expand.
    if (error instanceof ReferenceError) return { value: undefined, faults: [tooManyAliases({ start: 0, end: 1 })] };
    throw error;
  }
}
