/** The solver against native KLU, mathjs and ngspice, in a Node of its own: bundled as users get it, without the loader that
 *  runs TypeScript here and slows typed arrays by a third. */
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { onPath } from '../../.ci/tools.mjs';
import type { Row } from './row.ts';

const OUT = fileURLToPath(new URL('../../dist/bench/', import.meta.url));

/** Refactor and solve, with and without a person, a whole checked solution, and how all that grows with the network. */
export async function solver(): Promise<readonly Row[]> {
  mkdirSync(OUT, { recursive: true });
  const klu = `${OUT}klu`;
  const source = fileURLToPath(new URL('./solver/klu.c', import.meta.url));
  const libraries = ['-lklu', '-lamd', '-lbtf', '-lcolamd', '-lsuitesparseconfig'];
  run('gcc', ['-O3', '-march=native', source, ...libraries, '-o', klu]);
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL('./solver/rounds.ts', import.meta.url)),
      outDir: OUT,
      emptyOutDir: false,
      target: 'node20',
    },
  });
  const ngspice = onPath('ngspice');
  return JSON.parse(run(process.execPath, [`${OUT}rounds.js`, klu, ...(ngspice ? [ngspice] : [])])) as readonly Row[];
}

/** What a program prints. @throws Error with what it complained of */
function run(program: string, args: readonly string[]): string {
  const { status, stdout, stderr, error } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 2 ** 26 });
  if (error || status !== 0) throw new Error(`${program} ${args.join(' ')}: ${error?.message ?? stderr}`);
  return stdout;
}
