import { phasors } from '../../src/electrics/index.ts';
import { largest } from './apart.ts';
import { solveExactly } from './exact.ts';
import { solveWithMathjs } from './mathjs.ts';
import { solveWithNgspice } from './ngspice.ts';
import type { Question } from './ngspice.ts';
import { solvedInstallation } from './solvedInstallation.ts';
import type { Solved } from './solvedInstallation.ts';

/** Below this nobody feels anything, A. */
const LEAST_A = 1e-6;
const BY_NGSPICE = 1e-6;
const BY_MATHJS = 1e-9;

/** Volts are kept in sixteen digits: of the highest there are, the last four bits mean nothing. Round a delta of milliohms with
 *  nothing on it they drive microamperes. */
const ROUNDING = 2 ** -48;

/** So many installations from this seed on, each with one number; without those that are refused by name. */
export function drawn(seed: number, count: number): readonly Solved[] {
  return Array.from({ length: count }, (_, k) => solvedInstallation(seed + k)).filter((one) => one !== undefined);
}

/** Solves these installations by ngspice too, all in one process: every current above 1 µA to a millionth. Where the two differ
 *  by more a solver that does not round says whether it is ngspice's rounding or ours. */
export function installationsByNgspice(solved: readonly Solved[]): {
  readonly compared: number;
  /** Currents on which only rounding of volts differs, by the exact solution. */
  readonly rounded: number;
  readonly wrong: readonly string[];
} {
  const asked = solved.flatMap(({ questions, seed }) => questions.map((question) => ({ ...question, seed })));
  const theirs = solveWithNgspice(asked, 60);
  const wrong: string[] = [];
  let [compared, rounded] = [0, 0];
  asked.forEach(({ network, values, order, ours: { amperes: ours }, seed }, k) => {
    const want = theirs[k]!.amperes;
    const off: number[] = [];
    network.branches.forEach((_, b) => {
      const amperes = Math.hypot(want.re[b]!, want.im[b]!);
      if (amperes <= LEAST_A) return;
      compared++;
      if (!(Math.hypot(ours.re[b]! - want.re[b]!, ours.im[b]! - want.im[b]!) <= BY_NGSPICE * amperes)) off.push(b);
    });
    if (off.length === 0) return;
    const exact = solveExactly(network, values);
    const rounding_A = roundingOf({ network, values }, largest(exact.volts));
    for (const b of off) {
      const { re, im } = exact.amperes;
      const amperes = Math.hypot(re[b]!, im[b]!);
      const error = Math.hypot(ours.re[b]! - re[b]!, ours.im[b]! - im[b]!);
      if (error <= BY_NGSPICE * amperes + rounding_A(b)) rounded++;
      else wrong.push(`${network.branches[b]!.name} of ${seed} at order ${order}: ${amperes} A, off by ${error} A`);
    }
  });
  return { compared, rounded, wrong };
}

/** Where LU by mathjs differs by more than a thousand-millionth of the highest voltage or the largest current. */
export function wrongByMathjs({ questions, seed }: Solved): readonly string[] {
  return questions.flatMap(({ network, values, order, ours }) => {
    const theirs = solveWithMathjs(network, values);
    const most_A = Math.max(largest(ours.amperes), largest(values.injection ?? phasors(0)));
    const highest_V = Math.max(largest(ours.volts), largest(values.emf));
    const rounding_A = roundingOf({ network, values }, highest_V);
    const { volts, amperes } = theirs;
    const told = `of ${seed} at order ${order} is off by`;
    return [
      ...network.nodes.flatMap((node, n) => {
        const off = Math.hypot(volts.re[n]! - ours.volts.re[n]!, volts.im[n]! - ours.volts.im[n]!);
        return off <= BY_MATHJS * highest_V ? [] : [`${node} ${told} ${off} V`];
      }),
      ...network.branches.flatMap(({ name }, b) => {
        const off = Math.hypot(amperes.re[b]! - ours.amperes.re[b]!, amperes.im[b]! - ours.amperes.im[b]!);
        return off <= BY_MATHJS * most_A + rounding_A(b) ? [] : [`${name} ${told} ${off} A`];
      }),
    ];
  });
}

/** What rounding of volts drives through the own impedance of a branch, A. */
function roundingOf({ values: { impedance, emf } }: Question, highest_V: number): (branch: number) => number {
  const rounding_V = ROUNDING * Math.max(highest_V, largest(emf));
  return (b) => rounding_V / Math.hypot(impedance.re[b]!, impedance.im[b]!);
}
