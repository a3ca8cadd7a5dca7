/** Rows of cells as lines: every column as wide as its widest cell, the first cut short where the terminal is narrow. */
export function table(rows: readonly (readonly string[])[], columns: number): readonly string[] {
  const count = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: count }, (_, column) =>
    Math.max(0, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const others = widths.slice(1).reduce((sum, width) => sum + width + GAP.length, INDENT.length);
  const first = Math.max(LEAST, Math.min(widths[0] ?? 0, columns - others));
  return rows.map((row) =>
    `${INDENT}${row
      .map((cell, column) => (column === 0 ? short(cell, first).padEnd(first) : cell.padEnd(widths[column] ?? 0)))
      .join(GAP)}`.trimEnd(),
  );
}

const INDENT = '  ';
const GAP = '  ';
/** A first column narrower than this says nothing. */
const LEAST = 20;

function short(cell: string, width: number): string {
  return cell.length <= width ? cell : `${cell.slice(0, width - 1)}…`;
}

/** A text in lines no longer than this, each indented. */
export function wrapped(text: string, width: number, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(' ')) {
    if (line.length > indent.length && line.length + word.length + 1 > width) {
      lines.push(line);
      line = indent;
    }
    line += line.length > indent.length ? ` ${word}` : word;
  }
  return [...lines, line];
}
