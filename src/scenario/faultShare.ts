import { add, complex, div, mul, phasors, sub } from '../electrics/index.ts';
import type { Complex, Phasors, Solver } from '../electrics/index.ts';
import type { Build, Conditions } from '../installation/index.ts';
import { insulationFaults } from './scenarioMachine.ts';
import type { SteadyState } from './steadyState.ts';
import type { FaultShare } from './timeline.ts';

/** What closing the fault changes, everything else and everybody staying as they are; undefined without a fault.
 *
 *  With the fault away its branch is Z₀ and carries I₀; closed it is Z₁ and carries I₁. Subtracting the two states leaves
 *  the closed network with every source at rest but one of E = (Z₀ − Z₁)·I₀ in the branch (compensation theorem). If 1 V
 *  there drives y through the branch, I₁ − I₀ = E·y, hence E = (Z₀ − Z₁)·I₁ / (1 + (Z₀ − Z₁)·y): one solve gives the
 *  difference itself, exact even where it is tiny beside the load. Of several faults the first in the file counts, the
 *  others staying closed. */
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
  const gap = sub(at(away.impedance, branch), at(values.impedance, branch));
  const amperes = at(solution.amperes, branch);

  const emf = phasors(values.emf.re.length);
  emf.re[branch] = 1;
  const driven = solver.solve({ impedance: values.impedance, coupling: values.coupling, emf });
  const volts = div(mul(gap, amperes), add(complex(1), mul(gap, at(driven.amperes, branch))));
  return {
    condition,
    branch,
    amperes,
    change: { volts: times(driven.volts, volts), amperes: times(driven.amperes, volts) },
  };
}

function isClosed(build: Build, conditions: Conditions, name: string): boolean {
  const usual = build.installation.conditions[name]?.options[0];
  return (conditions[name] ?? usual) !== usual;
}

function at({ re, im }: Phasors, index: number): Complex {
  return complex(re[index] ?? NaN, im[index] ?? NaN);
}

function times({ re, im }: Phasors, by: Complex): Phasors {
  return {
    re: re.map((value, index) => value * by.re - (im[index] ?? NaN) * by.im),
    im: im.map((value, index) => value * by.re + (re[index] ?? NaN) * by.im),
  };
}
