import { abs, complex, createSolver, sub, type Complex, type Phasors, type Solver } from '../../electrics/index.ts';
import type { Build, Conditions } from '../../installation/index.ts';

/** An installation under voltage, all loads off, nothing failed, nobody touching anything: what short circuits are worked
 *  out on. */
export interface Standing {
  readonly build: Build;
  readonly conditions: Conditions;
  readonly solver: Solver;
  readonly volts: Phasors;
  /** Ohms of every branch as it stands. */
  readonly impedance: Phasors;
}

/** What stands in for a load that is off, Ω. */
const OFF_OHM = 1e9;

const solvers = new WeakMap<Build, Solver>();

/** The solver of a build: ordering and fill are found once. */
export function solverOf(build: Build): Solver {
  let solver = solvers.get(build);
  if (solver === undefined) solvers.set(build, (solver = createSolver(build.network)));
  return solver;
}

/** Solves the installation with its loads off and without faults. */
export function standing(build: Build, given: Conditions): Standing {
  const sound = Object.entries(build.installation.conditions).flatMap(([name, { group, options }]) =>
    group === 'fault' || group === 'person' ? [[name, options[0] ?? ''] as const] : [],
  );
  const conditions = { ...given, ...Object.fromEntries(sound) };
  const values = build.values(conditions, new Set());
  // A winding that takes its current from another supply feeds what is behind it, and stays on.
  const wound = new Set(
    [...build.network.windings, ...(build.network.cores ?? [])].flatMap(({ branches }) => branches),
  );
  build.branches.forEach(({ role }, branch) => {
    if (role !== 'load' || wound.has(branch)) return;
    values.impedance.re[branch] = OFF_OHM;
    values.impedance.im[branch] = 0;
  });
  const solver = solverOf(build);
  const { volts } = solver.solve(values);
  return { build, conditions, solver, volts, impedance: values.impedance };
}

/** Volts from one node to another before anything is shorted, as a phasor. */
export function across(standing: Standing, one: number, other: number): Complex {
  return sub(at(standing.volts, one), at(standing.volts, other));
}

/** Volts r.m.s. from one node to another before anything is shorted. */
export function across_V(standing: Standing, one: number, other: number): number {
  return abs(across(standing, one, other));
}

/** One entry of a list of phasors. @throws RangeError for an index beyond it */
export function at({ re, im }: Phasors, index: number): Complex {
  const [a, b] = [re[index], im[index]];
  if (a === undefined || b === undefined) throw new RangeError(`at: there is no entry ${index}`);
  return complex(a, b);
}
