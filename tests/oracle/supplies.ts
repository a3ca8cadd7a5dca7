import fc from 'fast-check';
import { createSolver } from '../../src/electrics/index.ts';
import { compile } from '../../src/installation/index.ts';
import { anySupply } from '../installation/anySupply.ts';
import { solveWithNgspice } from './ngspice.ts';

// Below this nobody feels anything, and the rounding of 480 V in a winding of a milliohm begins to show.
const LEAST_A = 1e-4;

/** Solves random installations over all supplies by ngspice too: how many currents were compared, and where they differ by
 *  more than a millionth. */
export function supplies(
  count: number,
  seed: number,
): { readonly compared: number; readonly wrong: readonly string[] } {
  const builds = fc.sample(anySupply, { numRuns: count, seed }).map(compile);
  const questions = builds.map((build) => ({ network: build.network, values: build.values({}, new Set()) }));
  const theirs = solveWithNgspice(questions, 60);
  const wrong: string[] = [];
  let compared = 0;
  questions.forEach(({ network, values }, k) => {
    const ours = createSolver(network).solve(values).amperes;
    const want = theirs[k]!.amperes;
    network.branches.forEach(({ name }, b) => {
      const amperes = Math.hypot(want.re[b]!, want.im[b]!);
      if (amperes <= LEAST_A) return;
      compared++;
      const error = Math.hypot(ours.re[b]! - want.re[b]!, ours.im[b]! - want.im[b]!) / amperes;
      if (!(error <= 1e-6)) wrong.push(`${name} of installation ${k} drawn with seed ${seed} is off by ${error}`);
    });
  });
  return { compared, wrong };
}
