import { readFileSync } from 'node:fs';
import { createSolver, type Solution } from '../../src/electrics/index.ts';
import {
  compile,
  initialConditions,
  printDiagnostics,
  readInstallation,
  type Build,
  type Conditions,
  type Installation,
} from '../../src/installation/index.ts';

/** The text of the bakery's file. */
export const bakeryText = readFileSync(new URL('../../lessons/places/bakery.yaml', import.meta.url), 'utf8');

/** Reads an installation that must be right; prints what is wrong with it if it is not. */
export function installationFrom(text: string): Installation {
  const reading = readInstallation(text, 'test.yaml');
  if (!reading.ok) throw new Error(printDiagnostics(reading.diagnostics, text));
  return reading.installation;
}

/** An installation that was solved: amperes of branches, volts of terminals. */
export interface Solved {
  readonly solution: Solution;
  amperes(branch: string): number;
  volts(terminal: string): number;
  between(a: string, b: string): number;
}

/** Solves under conditions that are added to the initial ones.
 *  @param limb_ohm by branch name */
export function solved(
  build: Build,
  conditions: Conditions = {},
  open: readonly string[] = [],
  limb_ohm: Readonly<Record<string, number>> = {},
): Solved {
  const limbs = new Map(Object.entries(limb_ohm).map(([name, ohm]) => [build.branch(name), ohm]));
  const chosen = { ...initialConditions(build.installation), ...conditions };
  const solution = createSolver(build.network).solve(build.values(chosen, new Set(open), limbs));
  const { volts, amperes } = solution;
  return {
    solution,
    amperes: (name) => {
      const at = build.branch(name);
      return Math.hypot(amperes.re[at] ?? NaN, amperes.im[at] ?? NaN);
    },
    volts: (name) => {
      const at = build.node(name);
      return Math.hypot(volts.re[at] ?? NaN, volts.im[at] ?? NaN);
    },
    between: (a, b) => {
      const [one, two] = [build.node(a), build.node(b)];
      return Math.hypot(
        (volts.re[one] ?? NaN) - (volts.re[two] ?? NaN),
        (volts.im[one] ?? NaN) - (volts.im[two] ?? NaN),
      );
    },
  };
}

/** Compiles a text that must be right. */
export function built(text: string): Build {
  return compile(installationFrom(text));
}
