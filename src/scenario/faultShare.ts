import type { Solver } from '../electrics/index.ts';
import type { Build, Conditions } from '../installation/index.ts';
import { insulationFaults } from './scenarioMachine.ts';
import type { SteadyState } from './steadyState.ts';
import type { FaultShare } from './timeline.ts';

/** What closing the fault changes, everything else and everybody staying as they are; undefined without a fault.
 *
 *  With the fault away its branch is Z₀ and carries I₀; closed it is Z₁. Subtracting the two states leaves the closed
 *  network with every source at rest and one of (Z₀ − Z₁)·I₀ in the branch (compensation theorem), so one solve gives
 *  the difference itself, exact even where it is tiny beside the load. Of several faults the first in the file counts,
 *  the others staying closed. */
export function faultShare(
  build: Build,
  solver: Solver,
  conditions: Conditions,
  open: ReadonlySet<string>,
  { values, solution, limb_ohm }: SteadyState,
): FaultShare | undefined {
  const condition = insulationFaults(build.installation).find((name) => isClosed(build, conditions, name));
  if (condition === undefined) return undefined;
  const branch = build.branch(condition);
  const usual = build.installation.conditions[condition]?.options[0] ?? '';
  const away = build.values({ ...conditions, [condition]: usual }, open, limb_ohm);
  const { amperes } = solver.solve(away);
  const re = (away.impedance.re[branch] ?? 0) - (values.impedance.re[branch] ?? 0);
  const im = (away.impedance.im[branch] ?? 0) - (values.impedance.im[branch] ?? 0);
  const before = { re: amperes.re[branch] ?? 0, im: amperes.im[branch] ?? 0 };
  const emf = {
    re: new Float64Array(values.emf.re.length),
    im: new Float64Array(values.emf.im.length),
  };
  emf.re[branch] = re * before.re - im * before.im;
  emf.im[branch] = re * before.im + im * before.re;
  return {
    condition,
    branch,
    amperes: { re: solution.amperes.re[branch] ?? 0, im: solution.amperes.im[branch] ?? 0 },
    change: solver.solve({ ...values, emf }),
  };
}

function isClosed(build: Build, conditions: Conditions, name: string): boolean {
  const usual = build.installation.conditions[name]?.options[0];
  return (conditions[name] ?? usual) !== usual;
}
