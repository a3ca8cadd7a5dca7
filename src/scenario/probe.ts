import { phasors } from '../electrics/index.ts';
import type { Phasors, Solver, Values } from '../electrics/index.ts';

/** Asks the network a question of its own, all sources at rest. */
export interface Probe {
  /** Branch currents, A, with 1 V in these branches. */
  driven(branches: readonly number[]): Phasors;
  /** Of one branch itself. */
  resistance_ohm(branch: number): number;
}

/** A probe of this network at these values. */
export function probeOf(solver: Solver, { impedance, coupling }: Values): Probe {
  return {
    driven(branches) {
      const emf = phasors(impedance.re.length);
      for (const branch of branches) emf.re[branch] = 1;
      return solver.solve({ impedance, coupling, emf }).amperes;
    },
    resistance_ohm: (branch) => impedance.re[branch] ?? NaN,
  };
}

/** Round what loop the conductors through a core are closed outside it, Ω: with the same volts in all of them nothing
 *  flows round through the load, only round a second way home, such as a link of neutral and ground downstream. */
export function loop_ohm(
  probe: Probe,
  residual: readonly { readonly branch: number; readonly sign: 1 | -1 }[],
): number {
  const { re, im } = probe.driven(residual.map(({ branch }) => branch));
  const sum = (part: Float64Array): number =>
    residual.reduce((whole, { branch, sign }) => whole + sign * (part[branch] ?? 0), 0);
  return 1 / Math.hypot(sum(re), sum(im));
}

/** The insulation of everything beyond a monitor's own resistance to earth, Ω: the part of the current in phase, so that
 *  capacitance beside it does not count. */
export function insulation_ohm(probe: Probe, branch: number): number {
  const { re, im } = probe.driven([branch]);
  const [conductance, susceptance] = [re[branch] ?? 0, im[branch] ?? 0];
  const square = conductance ** 2 + susceptance ** 2;
  // Z of the whole circle less the monitor's own resistance; then the parallel resistance of what is left.
  const [resistance, reactance] = [conductance / square - probe.resistance_ohm(branch), -susceptance / square];
  return resistance > 0 ? (resistance ** 2 + reactance ** 2) / resistance : 0;
}
