/** ngspice as a second opinion: one batch process for as many networks as are asked for, answers with full digits. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onPath } from '../../.ci/tools.mjs';
import { spiceNetlist } from '../../src/electrics/index.ts';
import type { Network, Solution, Values } from '../../src/electrics/index.ts';

/** One thing to solve. */
export interface Question {
  readonly network: Network;
  readonly values: Values;
}

/** Solves each of these at this frequency with ngspice.
 *  @throws Error with what ngspice said, if it is missing or leaves one unsolved */
export function solveWithNgspice(questions: readonly Question[], frequency_Hz: number): Solution[] {
  const decks = questions.map(({ network, values }) => spiceNetlist(network, values, frequency_Hz));
  return runDecks(decks, frequency_Hz).map((answer, q) => {
    const { network } = questions[q]!;
    const volts = network.nodes.map((_, node) => (node === 0 ? ([0, 0] as const) : answer(`v(n${node})`)));
    const amperes = network.branches.map((_, b) => answer(`i(vm${b})`));
    return { volts: paired(volts), amperes: paired(amperes) };
  });
}

/** Phasor of a node voltage `v(name)` or of the current through a voltage source `i(name)`.
 *  @throws Error if ngspice gave none */
export type Answer = (name: string) => readonly [re: number, im: number];

/** Runs netlists (elements only) at this frequency, all in one process.
 *  @throws Error with what ngspice said, if it is missing or leaves one unsolved */
export function runDecks(decks: readonly string[], frequency_Hz: number): Answer[] {
  const ngspice = onPath('ngspice');
  if (ngspice === undefined) throw new Error('No ngspice: install it, on Debian or Ubuntu by apt-get install ngspice.');
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-spice-'));
  try {
    const script = ['* questions', '.control', 'set filetype=ascii', 'set appendwrite'];
    decks.forEach((deck, q) => {
      // noopac: a d.c. operating point means nothing here, and loops of coils would have none. pivrel: the largest
      // pivot instead of the sparsest, which keeps microamperes that the usual choice loses beside 20 A.
      writeFileSync(join(folder, `${q}.cir`), `${deck.trimEnd()}\n.options noopac pivrel=0.99\n.end\n`);
      script.push(`source ${q}.cir`, `ac lin 1 ${frequency_Hz} ${frequency_Hz}`, 'write out.raw');
      script.push('destroy all', 'remcirc');
    });
    script.push('quit', '.endc', '.end', '');
    writeFileSync(join(folder, 'script.cir'), script.join('\n'));
    const { stdout, stderr, error } = spawnSync(ngspice, ['-b', 'script.cir'], {
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
    });
    if (error) throw new Error(`ngspice did not start: ${error.message}`);
    const said = `${stdout}\n${stderr}`.slice(-4000);
    if (!existsSync(join(folder, 'out.raw'))) throw new Error(`ngspice solved nothing:\n${said}`);
    const plots = readPlots(readFileSync(join(folder, 'out.raw'), 'latin1'));
    if (plots.length !== decks.length) {
      throw new Error(`ngspice solved ${plots.length} of ${decks.length} networks:\n${said}`);
    }
    return plots.map((plot, q) => (name) => {
      const value = plot.get(name.toLowerCase());
      if (value === undefined) throw new Error(`ngspice gave no ${name} for network ${q}`);
      return value;
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function paired(values: readonly (readonly [number, number])[]): { re: Float64Array; im: Float64Array } {
  return { re: Float64Array.from(values, ([re]) => re), im: Float64Array.from(values, ([, im]) => im) };
}

/** Every plot of an ASCII raw file: `Variables:` names in order, then `Values:` "re,im" in the same order. */
function readPlots(text: string): Map<string, readonly [number, number]>[] {
  return text
    .split(/^Title:/m)
    .slice(1)
    .map((plot) => {
      const [head = '', body = ''] = plot.split(/^Values:\s*$/m);
      const names = [...head.slice(head.indexOf('Variables:')).matchAll(/^\s+\d+\s+(\S+)\s+\S+/gm)].map((m) => m[1]!);
      const values = [...body.matchAll(/(\S+),(\S+)/g)].map((m) => [Number(m[1]), Number(m[2])] as const);
      return new Map(names.map((name, k) => [name, values[k] ?? [NaN, NaN]]));
    });
}
