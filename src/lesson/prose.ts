/** A run of letters in prose. */
export interface Span {
  readonly kind: 'plain' | 'strong' | 'emphasis';
  readonly text: string;
}

/** A block of prose: a small part of Markdown (headings, paragraphs, lists; *emphasis*, **strong**), as data. */
export type Block =
  | { readonly kind: 'heading' | 'paragraph'; readonly spans: readonly Span[] }
  | { readonly kind: 'list'; readonly items: readonly (readonly Span[])[] };

/** Prose as blocks: a blank line ends one, a line that begins with `#` is a heading, lines that begin with `- ` a list.
 *  @example readProse('It **stays** shut.') // one paragraph of three spans */
export function readProse(text: string): readonly Block[] {
  return text
    .split(/\r?\n[ \t]*(?:\r?\n[ \t]*)+/)
    .map((block) => block.trim())
    .filter((block) => block !== '')
    .flatMap(readBlock);
}

function readBlock(block: string): readonly Block[] {
  const heading = /^#{1,6}\s+(.*)(?:\r?\n([\s\S]*))?$/.exec(block);
  if (heading?.[1] !== undefined) {
    const rest = heading[2] ?? '';
    return [{ kind: 'heading', spans: readSpans(heading[1]) }, ...(rest.trim() === '' ? [] : readBlock(rest.trim()))];
  }
  if (!block.startsWith('- ')) return [{ kind: 'paragraph', spans: readSpans(inOneLine(block)) }];
  return [
    {
      kind: 'list',
      items: block
        .slice(2)
        .split(/\r?\n- /)
        .map((item) => readSpans(inOneLine(item))),
    },
  ];
}

function inOneLine(text: string): string {
  return text.replace(/\s*\r?\n\s*/g, ' ');
}

function readSpans(text: string): readonly Span[] {
  return [...text.matchAll(/\*\*(.+?)\*\*|\*(.+?)\*|[^*]+|\*/g)].map(([whole, strong, emphasis]) =>
    strong !== undefined
      ? { kind: 'strong', text: strong }
      : emphasis !== undefined
        ? { kind: 'emphasis', text: emphasis }
        : { kind: 'plain', text: whole },
  );
}
