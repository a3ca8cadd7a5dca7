import { CST, Lexer } from 'yaml';
import type { DiagnosticCode } from './diagnostic.ts';

/** A part of a text by its offsets. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Why a text is not read at all. */
export interface Excess {
  readonly span: Span;
  readonly code: DiagnosticCode;
  readonly message: string;
  readonly instead: string;
}

// An installation or a lesson is far below these; beyond them a file is a mistake or an attack.
const LONGEST_TEXT = 1_000_000;
const MOST_TOKENS = 400_000; // a text of that length in ordinary words has fewer
const LONGEST_QUOTE = 20_000;
const DEEPEST_FLOW = 16;
const FURTHEST_INDICATOR = 100;

/** How often a text may repeat a value by an alias, all repetitions of repetitions counted. */
export const MOST_ALIASES = 100;

/** The first place where a text is longer, deeper or fuller of aliases than any real one. Looks at the tokens only, in
 *  linear time, before anything is built that recurses. */
export function firstExcess(text: string): Excess | undefined {
  if (text.length > LONGEST_TEXT)
    return {
      span: { start: 0, end: 1 },
      code: 'too-large',
      message: `the file has ${text.length} characters; ${LONGEST_TEXT} is the most`,
      instead: 'a shorter file',
    };
  let offset = 0;
  let lineStart = 0;
  let flow = 0;
  let aliases = 0;
  let scalarNext = false;
  let tokens = 0;
  for (const token of new Lexer().lex(text)) {
    // Some tokens only announce what comes and stand for no text.
    if (token === CST.DOCUMENT || token === CST.FLOW_END || token === CST.SCALAR) {
      scalarNext = token === CST.SCALAR;
      continue;
    }
    const type = scalarNext ? 'scalar' : CST.tokenType(token);
    scalarNext = false;
    const span = { start: offset, end: offset + token.length };
    if (++tokens > MOST_TOKENS)
      return { span, code: 'too-large', message: 'the file says too much up to here', instead: 'a shorter file' };
    if (type === 'flow-map-start' || type === 'flow-seq-start') flow++;
    if (type === 'flow-map-end' || type === 'flow-seq-end') flow = Math.max(0, flow - 1);
    if (type === 'alias') aliases++;
    const indicator = type === 'seq-item-ind' || type === 'explicit-key-ind' || type === 'map-value-ind';
    if (flow > DEEPEST_FLOW || (indicator && flow === 0 && offset - lineStart > FURTHEST_INDICATOR))
      return {
        span,
        code: 'too-deep',
        message: 'this is nested too deeply, or a name is too long',
        instead: 'a few levels, as in the examples',
      };
    if (type === 'double-quoted-scalar' && token.length > LONGEST_QUOTE)
      return { span, code: 'too-large', message: 'this value is too long', instead: 'a few words' };
    if (aliases > MOST_ALIASES) return tooManyAliases(span);
    const newline = token.lastIndexOf('\n');
    if (newline >= 0) lineStart = offset + newline + 1;
    offset += token.length;
  }
  return undefined;
}

/** Aliases that repeat more than any real file does. */
export function tooManyAliases(span: Span): Excess {
  const message = `aliases repeat values more than ${MOST_ALIASES} times`;
  return { span, code: 'too-many-aliases', message, instead: 'the values themselves' };
}
