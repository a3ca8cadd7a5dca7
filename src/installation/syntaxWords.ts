import type { YAMLParseError } from 'yaml';

/** A fault of syntax in words of our own: what is wrong, and what to write instead. */
export interface SyntaxWords {
  readonly message: string;
  readonly instead: string;
}

const OUTLINE = 'name: value, indented by blanks, with every [ { and quote closed';

/** Words for a fault that the YAML library found; its own are about its tokens.
 *  @param found the text at which it was found */
export function syntaxWords({ code, message }: YAMLParseError, found: string): SyntaxWords {
  const mark = /^[^\s\p{L}\p{N}]/u.exec(found)?.[0];
  switch (code) {
    case 'TAB_AS_INDENT':
      return { message: 'a tab stands where only blanks may indent a line', instead: 'two blanks for each tab' };
    case 'BAD_INDENT':
    case 'MISSING_CHAR':
      return unfinished(message);
    case 'BLOCK_AS_IMPLICIT_KEY':
      return {
        message: 'a second "name:" begins within a value',
        instead: 'it on a line of its own, indented like the other names; or the whole value in quotes',
      };
    case 'MULTILINE_IMPLICIT_KEY':
      return { message: 'this line is no "name: value"; a colon is missing', instead: 'name: value' };
    case 'BLOCK_IN_FLOW':
      return { message: 'within [ ] or { } a comma is missing', instead: 'a comma between two entries' };
    case 'BAD_SCALAR_START':
      return { message: `a value cannot begin with ${mark ?? 'this mark'}`, instead: 'the value in quotes: "…"' };
    case 'BAD_DQ_ESCAPE':
      return { message: 'a backslash in "…" means nothing before this letter', instead: "single quotes: '…'" };
    case 'BAD_ALIAS':
    case 'ALIAS_PROPS':
    case 'MULTIPLE_ANCHORS':
    case 'BAD_PROP_ORDER':
      return { message: 'a mark & or * stands where it names nothing', instead: 'the value itself' };
    case 'MULTIPLE_TAGS':
    case 'TAG_RESOLVE_FAILED':
    case 'BAD_COLLECTION_TYPE':
      return { message: 'no type written with ! is known here', instead: 'the value without it' };
    case 'BAD_DIRECTIVE':
      return { message: 'a line that begins with % has no meaning here', instead: 'nothing: leave it out' };
    case 'KEY_OVER_1024_CHARS':
      return { message: 'this name is longer than 1024 characters', instead: 'a short name' };
    case 'UNEXPECTED_TOKEN':
      return mark !== undefined && ']}'.includes(mark)
        ? { message: `this ${mark} closes nothing`, instead: 'nothing, or the bracket that opens before it' }
        : { message: 'this is left over after the value before it', instead: OUTLINE };
    default:
      return { message: 'this cannot be read', instead: OUTLINE };
  }
}

function unfinished(message: string): SyntaxWords {
  const closing = /(?:end with an? |closing )(["'\]}])/.exec(message)?.[1];
  if (closing === '"' || closing === "'")
    return { message: 'a quote that was opened is not closed', instead: `${closing} after the value` };
  if (closing !== undefined) {
    const opened = closing === ']' ? '[' : '{';
    return {
      message: `a ${opened} that was opened is not closed before here`,
      instead: `${closing} after its last entry`,
    };
  }
  if (message.startsWith('Missing ,')) return { message: 'a comma is missing', instead: 'a comma between two entries' };
  if (message.startsWith('Missing space after')) return { message: 'a blank is missing', instead: 'name: value' };
  if (message.startsWith('Comments'))
    return { message: 'a # stands right behind a value', instead: 'a blank before #' };
  if (message.startsWith('Implicit map keys')) return { message: 'a name without a value', instead: 'name: value' };
  if (message.startsWith('Sequence item'))
    return { message: 'an entry of a list begins with a dash', instead: '- entry' };
  if (message.includes('column') || message.includes('indent'))
    return { message: 'this line is not indented like those it belongs to', instead: 'as many blanks as they have' };
  return { message: 'a mark is missing here', instead: OUTLINE };
}
