/** `npm run bench`: every figure measured in this one run, as a table, or with `-- --json` as data.
 *  Exits 1 if a figure misses its budget, 2 if one could not be measured. */
import { browser } from './browser.ts';
import { repair } from './repair.ts';
import { resultOf } from './row.ts';
import type { Result, Row } from './row.ts';
import { solver } from './solver.ts';

/** One entry a subject; each measures and hands back its rows. Add yours here. */
const SUBJECTS: readonly (() => Promise<readonly Row[]>)[] = [solver, repair, browser];

const rows: Row[] = [];
let broken = false;
for (const subject of SUBJECTS) {
  try {
    rows.push(...(await subject()));
  } catch (error) {
    broken = true;
    console.error(error);
  }
}
const results = rows.map(resultOf);
if (process.argv.includes('--json')) console.log(JSON.stringify(results, null, 2));
else console.log(table(rows, results));
process.exitCode = broken ? 2 : results.some(({ within }) => within === false) ? 1 : 0;

function table(measured: readonly Row[], judged: readonly Result[]): string {
  const cells = measured.map(({ name, value, unit, budget, bound, peer }, k) => [
    judged[k]!.within === null ? ' ' : judged[k]!.within ? '✓' : '✗',
    name,
    `${short(value)} ${unit}`,
    budget === null ? '' : `${bound} ${short(budget)}`,
    peer,
  ]);
  const all = [['', 'what', 'measured', 'budget', 'against'], ...cells];
  const widths = all[0]!.map((_, column) => Math.max(...all.map((row) => row[column]!.length)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, c) => cell.padEnd(widths[c]!))
      .join('  ')
      .trimEnd();
  const [head, ...body] = all.map(line);
  return [head, widths.map((width) => '─'.repeat(width)).join('  '), ...body].join('\n');
}

function short(value: number): string {
  return value.toLocaleString('en', { maximumSignificantDigits: 3 });
}
