import { describe, expect, test } from 'vitest';
import { disagreements } from './disagreements.ts';
import { departure } from './published.ts';
import type { Published } from './published.ts';
import { subjects } from './subjects.ts';

const all = subjects.flatMap(({ rows }) => rows);

/** Four figures, as a table shows them. */
function figures(value: number): string {
  return value === 0 ? '0' : String(Number(value.toPrecision(4)));
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}

function percent(within: number): string {
  return within === 0 ? 'exact' : `${Number((100 * within).toPrecision(2))} %`;
}

function line(cells: readonly string[]): string {
  return `| ${cells.map(cell).join(' | ')} |`;
}

function tableOf(heads: readonly string[], lines: readonly (readonly string[])[]): string {
  return [line(heads), line(heads.map(() => '---')), ...lines.map(line)].join('\n');
}

function rowOf({ what, unit, printed, computed, within, because, source }: Published): readonly string[] {
  const allowed = printed === 0 ? `±${within} ${unit}` : percent(within);
  return [what, `${printed} ${unit}`.trim(), figures(computed()), `${allowed}: ${because}`, source];
}

function takenBy(claim: string): Published {
  const row = all.find(({ what }) => what === claim);
  if (row === undefined) throw new Error(`no row claims "${claim}"`);
  return row;
}

/** The whole table; whoever changes a row writes it anew by `npx vitest run tests/reference/table.test.ts -u`. */
function published(): string {
  return [
    '# Published figures, and what Ohmward makes of them',
    `${all.length} figures that somebody else has printed. This table is written by \`tests/reference/table.test.ts\` from the rows ` +
      'that the tests check, and never by hand. A tolerance is relative; why it is enough stands beside it. "From memory" and ' +
      '"seen second-hand" say how sure we are of what is printed.',
    ...subjects.flatMap(({ subject, rows }) => [
      `## ${subject} (${rows.length})`,
      tableOf(['claim', 'printed', 'computed', 'tolerance', 'source'], rows.map(rowOf)),
    ]),
    `## Where sources disagree (${disagreements.length})`,
    tableOf(
      ['claim', 'taken', 'from', 'the other', 'from', 'computed', 'why'],
      disagreements.map(({ taken, other, otherSource, because }) => {
        const row = takenBy(taken);
        const { what, unit, printed, source } = row;
        return [what, `${printed} ${unit}`, source, `${other} ${unit}`, otherSource, figures(row.computed()), because];
      }),
    ),
    '',
  ].join('\n\n');
}

test('the table of all published figures is as the rows are', async () => {
  await expect(published()).toMatchFileSnapshot('./PUBLISHED.md');
});

describe('where two sources disagree the figure that is taken is the one computed', () => {
  test.each(disagreements)('$taken, not $other', ({ taken, other }) => {
    const row = takenBy(taken);
    const off = Math.abs(row.computed() / other - 1);
    expect(Math.abs(other / row.printed - 1), 'they disagree').toBeGreaterThan(0.003);
    expect(departure(row)).toBeLessThan(off);
  });
});
