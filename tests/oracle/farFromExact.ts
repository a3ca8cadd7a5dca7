import type { Solution } from '../../src/electrics/index.ts';
import { solveExactly } from './exact.ts';
import type { Question } from './ngspice.ts';

/** A voltage not worth correcting, relative to the largest EMF. */
const MISFIT = 1e-13;

/** How far a solution is from the exact one, over what is allowed: `relative` of each current, and besides what a
 *  voltage not worth correcting would drive through that branch. */
export function farFromExact({ network, values }: Question, solution: Solution, relative: number): number {
  const exact = solveExactly(network, values);
  const { re, im } = values.emf;
  const highest = re.reduce((most, e, b) => Math.max(most, Math.hypot(e, im[b]!)), 0);
  if (highest === 0) return Math.max(...solution.amperes.re.map(Math.abs), ...solution.volts.re.map(Math.abs));
  let worst = 0;
  exact.volts.re.forEach((v, n) => {
    const off = Math.hypot(v - solution.volts.re[n]!, exact.volts.im[n]! - solution.volts.im[n]!);
    worst = Math.max(worst, off / (relative * highest));
  });
  exact.amperes.re.forEach((a, b) => {
    const off = Math.hypot(a - solution.amperes.re[b]!, exact.amperes.im[b]! - solution.amperes.im[b]!);
    const own = Math.hypot(a, exact.amperes.im[b]!);
    const z = Math.hypot(values.impedance.re[b]!, values.impedance.im[b]!);
    worst = Math.max(worst, off / (relative * own + (MISFIT * highest) / z));
  });
  return worst;
}
