import {
  CST,
  Lexer,
  LineCounter,
  isAlias,
  isCollection,
  isMap,
  isPair,
  isScalar,
  isSeq,
  parseDocument,
  visit,
  type Pair,
  type YAMLMap,
} from 'yaml';
import type { Diagnostic, DiagnosticCode } from './diagnostic.ts';

/** A path in a document: names in maps, positions in lists. */
export type DocumentPath = readonly PropertyKey[];

/** Where in the text a thing stands. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A YAML text that was read: its value and where each piece of it stands. */
export interface WrittenDocument {
  readonly file: string;
  /** Plain objects, lists and scalars; maps without duplicate names. */
  readonly value: unknown;
  /** The key (for a pair in a map) or the value at this path; the nearest that exists if there is none. */
  span(path: DocumentPath, of: 'key' | 'value'): Span;
  diagnostic(
    code: DiagnosticCode,
    path: DocumentPath,
    message: string,
    options?: { readonly of?: 'key' | 'value'; readonly instead?: string | undefined },
  ): Diagnostic;
  /** What is wrong with the text as YAML, and names written twice. */
  readonly diagnostics: readonly Diagnostic[];
  /** Whether the text can be believed: after its first fault of syntax it cannot. */
  readonly sound: 'whole' | 'up to the first fault' | 'nothing';
  /** Whether a diagnostic stands before the first fault of syntax. */
  believes(diagnostic: Diagnostic): boolean;
}

// An installation or a lesson is far below these; beyond them a file is a mistake or an attack.
const LONGEST_TEXT = 100_000;
const DEEPEST_FLOW = 16;
const FURTHEST_INDICATOR = 100;
const MOST_ALIASES = 100;
const MOST_SYNTAX_FAULTS = 50;
const MOST_DIAGNOSTICS = 100;

/** Reads a YAML text whatever it holds: never throws, answers within a second, and keeps where everything stands. */
export function readDocument(text: string, file: string): WrittenDocument {
  const lines = new LineCounter();
  const at = (span: Span, code: DiagnosticCode, path: DocumentPath, message: string, instead?: string): Diagnostic => {
    const { line, col } = lines.linePos(Math.min(span.start, text.length));
    const newline = text.indexOf('\n', span.start);
    const end = Math.min(span.end, newline < 0 ? text.length : newline);
    return {
      code,
      file,
      line: Math.max(1, line),
      column: Math.max(1, col),
      length: Math.max(1, end - span.start),
      path: path.map(String).join('.'),
      message,
      ...(instead === undefined ? {} : { instead }),
    };
  };
  const refused = (diagnostic: Diagnostic): WrittenDocument => ({
    file,
    value: undefined,
    span: () => ({ start: 0, end: 0 }),
    diagnostic: (code, path, message) => at({ start: 0, end: 0 }, code, path, message),
    diagnostics: [diagnostic],
    sound: 'nothing',
    believes: () => false,
  });

  lines.addNewLine(0);
  if (text.length > LONGEST_TEXT)
    return refused(
      at(
        { start: 0, end: 1 },
        'too-large',
        [],
        `the file has ${text.length} characters; ${LONGEST_TEXT} is the most`,
        'a shorter file',
      ),
    );
  const excess = firstExcess(text);
  if (excess !== undefined) {
    for (let newline = text.indexOf('\n'); newline >= 0; newline = text.indexOf('\n', newline + 1))
      lines.addNewLine(newline + 1);
    return refused(at(excess.span, excess.code, [], excess.message, excess.instead));
  }

  const counter = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: counter,
    // Duplicates are found below, in linear time and with the place of the first.
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'silent',
    version: '1.2',
  });
  lines.lineStarts = counter.lineStarts.length > 0 ? counter.lineStarts : [0];

  const diagnostics: Diagnostic[] = document.errors
    .slice(0, MOST_SYNTAX_FAULTS)
    .map((error) =>
      at(
        { start: error.pos[0], end: error.pos[1] },
        'yaml-syntax',
        [],
        `this is not YAML: ${error.message}`,
        SYNTAX_HELP,
      ),
    );
  const firstFault = document.errors.reduce((first, error) => Math.min(first, error.pos[0]), Infinity);

  visit(document, {
    Map(_, map, ancestors) {
      const seen = new Map<string, number>();
      for (const { key } of map.items) {
        if (!isScalar(key) || !key.range) continue;
        const name = String(key.value);
        const span = { start: key.range[0], end: key.range[1] };
        const first = seen.get(name);
        if (first === undefined) seen.set(name, lines.linePos(span.start).line);
        else {
          const path = [...pathOf(ancestors, map), name];
          if (diagnostics.length < MOST_DIAGNOSTICS)
            diagnostics.push(
              at(
                span,
                'duplicate-name',
                path,
                `two things are called "${name}"; the first is in line ${first}`,
                'another name',
              ),
            );
        }
      }
    },
  });

  const indexed = new WeakMap<YAMLMap, ReadonlyMap<string, Pair>>();
  const pairsOf = (map: YAMLMap): ReadonlyMap<string, Pair> => {
    const known = indexed.get(map);
    if (known !== undefined) return known;
    const pairs = new Map(
      map.items.map((pair) => [isScalar(pair.key) ? String(pair.key.value) : String(pair.key), pair]),
    );
    indexed.set(map, pairs);
    return pairs;
  };
  const spanOf = (path: DocumentPath, of: 'key' | 'value'): Span => {
    let node: unknown = document.contents;
    let found: Span = { start: 0, end: 1 };
    const note = (candidate: unknown): void => {
      const range = isScalar(candidate) || isCollection(candidate) || isAlias(candidate) ? candidate.range : undefined;
      if (range) found = { start: range[0], end: Math.max(range[1], range[0] + 1) };
    };
    note(node);
    path.forEach((step, depth) => {
      if (isAlias(node)) node = node.resolve(document);
      const last = depth === path.length - 1;
      if (isMap(node)) {
        const pair = pairsOf(node).get(String(step));
        node = pair?.value;
        if (pair === undefined) return;
        note(pair.key);
        if (!last || of === 'value') if (node !== null && node !== undefined) note(node);
        // What is said about a whole map is said at its name.
        if (last && isMap(pair.value)) note(pair.key);
      } else if (isSeq(node)) {
        node = node.items[Number(step)];
        note(node);
      } else node = undefined;
    });
    return found;
  };

  return {
    file,
    value: valueOf(document),
    span: spanOf,
    diagnostic: (code, path, message, { of = 'value', instead } = {}) =>
      at(spanOf(path, of), code, path, message, instead),
    diagnostics,
    sound: firstFault === Infinity ? 'whole' : 'up to the first fault',
    believes({ line, column }) {
      if (firstFault === Infinity) return true;
      const fault = lines.linePos(firstFault);
      return line < fault.line || (line === fault.line && column < fault.col);
    },
  };
}

const SYNTAX_HELP = 'name: value, indented by blanks, with every [ { and quote closed';

interface Excess {
  readonly span: Span;
  readonly code: DiagnosticCode;
  readonly message: string;
  readonly instead: string;
}

/** Nesting and aliases are bounded on the tokens, before anything is built that recurses. */
function firstExcess(text: string): Excess | undefined {
  let offset = 0;
  let lineStart = 0;
  let flow = 0;
  let aliases = 0;
  let scalarNext = false;
  for (const token of new Lexer().lex(text)) {
    // Some tokens only announce what comes and stand for no text.
    if (token === CST.DOCUMENT || token === CST.FLOW_END || token === CST.SCALAR) {
      scalarNext = token === CST.SCALAR;
      continue;
    }
    const type = scalarNext ? 'scalar' : CST.tokenType(token);
    scalarNext = false;
    const span = { start: offset, end: offset + token.length };
    if (type === 'flow-map-start' || type === 'flow-seq-start') flow++;
    if (type === 'flow-map-end' || type === 'flow-seq-end') flow = Math.max(0, flow - 1);
    if (type === 'alias') aliases++;
    const indicator = type === 'seq-item-ind' || type === 'explicit-key-ind' || type === 'map-value-ind';
    const tooFar = indicator && flow === 0 && offset - lineStart > FURTHEST_INDICATOR;
    if (flow > DEEPEST_FLOW || tooFar)
      return {
        span,
        code: 'too-deep',
        message: 'is nested too deeply',
        instead: 'at most a few levels, as in the examples',
      };
    if (aliases > MOST_ALIASES)
      return {
        span,
        code: 'too-many-aliases',
        message: `there are more than ${MOST_ALIASES} aliases`,
        instead: 'the values themselves',
      };
    const newline = token.lastIndexOf('\n');
    if (newline >= 0) lineStart = offset + newline + 1;
    offset += token.length;
  }
  return undefined;
}

function valueOf(document: ReturnType<typeof parseDocument>): unknown {
  try {
    return document.toJS({ maxAliasCount: MOST_ALIASES });
  } catch (error) {
    // The library throws this one error for an alias that is unknown, circular or expands too far.
    if (error instanceof ReferenceError) return undefined;
    throw error;
  }
}

function pathOf(ancestors: readonly unknown[], map: unknown): readonly string[] {
  const steps: string[] = [];
  [...ancestors, map].forEach((ancestor, depth, all) => {
    const next = all[depth + 1];
    if (isPair(ancestor) && isScalar(ancestor.key)) steps.push(String(ancestor.key.value));
    else if (isSeq(ancestor) && next !== undefined) steps.push(String(ancestor.items.indexOf(next)));
  });
  return steps;
}
