/** Other people's solvers on the same network: KLU and ngspice, each in a process of its own. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spiceNetlist } from '../../../src/electrics/index.ts';
import type { Complex, Network, Phasors, Values } from '../../../src/electrics/index.ts';

/** A matrix in compressed columns and the right-hand side, as `klu.c` reads them. */
export function kluInput(rows: readonly ReadonlyMap<number, Complex>[], injection: Phasors, repeats: number): string {
  const columns = rows.map((row) => [...row].sort(([a], [b]) => a - b)); // symmetric: rows are columns
  const starts = [0];
  for (const column of columns) starts.push(starts.at(-1)! + column.length);
  return [
    [rows.length, starts.at(-1), repeats],
    starts,
    columns.flatMap((column) => column.map(([row]) => row)),
    columns.flatMap((column) => column.flatMap(([, { re, im }]) => [re, im])),
    rows.flatMap((_, n) => [injection.re[n + 1], injection.im[n + 1]]),
  ]
    .map((line) => line.join(' '))
    .join('\n');
}

/** KLU's processor time for one refactor and solve, µs, and the volts it finds. @throws Error with what it complained of */
export function kluTurn(klu: string, input: string): { readonly time_us: number; readonly volts: Phasors } {
  const { stdout, stderr, status } = spawnSync(klu, { input, encoding: 'utf8', maxBuffer: 2 ** 28 });
  if (status !== 0) throw new Error(`KLU ended with ${status}: ${stderr}`);
  const [time = '', ...lines] = stdout.trim().split('\n');
  const pairs = lines.map((line) => line.split(' ').map(Number));
  return { time_us: Number(time) / 1000, volts: unknowns(pairs) };
}

/** Volts of every node from those that were unknown. */
export function unknowns(pairs: readonly (readonly number[])[]): Phasors {
  return {
    re: Float64Array.from([0, ...pairs.map(([re = NaN]) => re)]),
    im: Float64Array.from([0, ...pairs.map(([, im = NaN]) => im)]),
  };
}

const SPICE_TURNS = 10;

/** Processor time that ngspice takes from start to end for one network, µs; the shell that starts it keeps the time.
 *  @throws Error with what it complained of */
export function ngspiceTurn(ngspice: string, network: Network, values: Values): number {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-bench-'));
  try {
    const control = '.control\nac lin 1 50 50\nprint all\nquit\n.endc';
    writeFileSync(join(folder, 'deck.cir'), `${spiceNetlist(network, values, 50)}.options noopac\n${control}\n.end\n`);
    const once = `"${ngspice}" -b deck.cir >said 2>&1`;
    const script = `for k in $(seq ${SPICE_TURNS}); do ${once}; done; grep -c 'v(n1)\\|n1 =' said; times`;
    const { stdout, stderr } = spawnSync('bash', ['-c', script], { cwd: folder, encoding: 'utf8' });
    const [found = '', , children = ''] = stdout.trim().split('\n');
    if (!(Number(found) > 0)) throw new Error(`ngspice printed no voltage: ${stdout}${stderr}`);
    const seconds = [...children.matchAll(/(\d+)m([\d.]+)s/g)].map(([, m, s]) => 60 * Number(m) + Number(s));
    return (1e6 * seconds.reduce((sum, one) => sum + one, 0)) / SPICE_TURNS;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
