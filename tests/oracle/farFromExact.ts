import type { Solution } from '../../src/electrics/index.ts';
import { apart, largest } from './apart.ts';
import { solveExactly } from './exact.ts';
import type { Question } from './ngspice.ts';

/** A voltage not worth correcting, relative to the largest EMF, or voltage where something injects or transforms. */
const MISFIT = 1e-13;

/** How far a solution is from the exact one, over what is allowed: `relative` of each current and of what is injected
 *  beside it, and besides what a voltage not worth correcting would drive through that branch. */
export function farFromExact({ network, values }: Question, solution: Solution, relative: number): number {
  const exact = solveExactly(network, values);
  const { re, im } = values.emf;
  let highest = re.reduce((most, e, b) => Math.max(most, Math.hypot(e, im[b]!)), 0);
  if (values.injection || network.cores) highest = Math.max(highest, largest(exact.volts));
  if (highest === 0) return apart(exact.amperes, solution.amperes) + largest(solution.volts);
  let worst = 0;
  exact.volts.re.forEach((v, n) => {
    const off = Math.hypot(v - solution.volts.re[n]!, exact.volts.im[n]! - solution.volts.im[n]!);
    worst = Math.max(worst, off / (relative * highest));
  });
  exact.amperes.re.forEach((a, b) => {
    const off = Math.hypot(a - solution.amperes.re[b]!, exact.amperes.im[b]! - solution.amperes.im[b]!);
    const beside = Math.hypot(values.injection?.re[b] ?? 0, values.injection?.im[b] ?? 0);
    const own = Math.hypot(a, exact.amperes.im[b]!) + beside;
    const z = Math.hypot(values.impedance.re[b]!, values.impedance.im[b]!);
    worst = Math.max(worst, off / (relative * own + (MISFIT * highest) / z));
  });
  return worst;
}
