import { createSolver } from '../../src/electrics/index.ts';
import type { Solution } from '../../src/electrics/index.ts';
import { compile, installationSchema, printDiagnostics, readInstallation } from '../../src/installation/index.ts';
import type { Build, Installation } from '../../src/installation/index.ts';
import { steadyState } from '../../src/scenario/index.ts';
import { chance } from '../scenario/anyCase.ts';
import { anyConditions, anyInstallation } from './anyInstallation.ts';
import type { Question } from './ngspice.ts';

/** An installation by chance under conditions by chance, with its people as the resistances they were found to have. */
export interface Solved {
  readonly seed: number;
  readonly build: Build;
  readonly told: readonly string[];
  /** At its own frequency, then at each harmonic. */
  readonly questions: readonly (Question & { readonly order: number; readonly ours: Solution })[];
}

/** Every tenth is read from its text; the others go through the schema alone, which is what takes part in an answer. */
export function installationOf(
  seed: number,
  wild = false,
): { readonly installation: Installation; readonly told: readonly string[] } {
  const { file, told } = anyInstallation(seed, { wild });
  if (seed % 10 !== 0) return { installation: installationSchema.parse(file), told };
  const text = JSON.stringify(file, null, 1);
  const reading = readInstallation(text, `${seed}.yaml`);
  if (!reading.ok) throw new Error(printDiagnostics(reading.diagnostics, text));
  return { installation: reading.installation, told };
}

/** Compiled and solved with some devices open; undefined where a source that folds back cannot, which is refused by name. */
export function solvedInstallation(seed: number): Solved | undefined {
  const { installation, told } = installationOf(seed);
  const build = compile(installation);
  const { network } = build;
  const next = chance(seed ^ 0x2545f491);
  const conditions = anyConditions(installation, seed);
  const open = new Set(build.devices.flatMap(({ name, poles }) => (poles.length > 0 && next() < 0.1 ? [name] : [])));
  const touching = new Set(build.people.map(({ name }) => name));
  const solver = createSolver(network);
  try {
    const { values, solution, limb_ohm } = steadyState(build, solver, conditions, open, touching);
    return {
      seed,
      build,
      told,
      questions: [
        { network, values, order: 1, ours: solution },
        ...build.harmonics.map((order) => {
          const atOrder = build.values(conditions, open, limb_ohm, order);
          return { network, values: atOrder, order, ours: createSolver(network).solve(atOrder) };
        }),
      ],
    };
  } catch (refused) {
    if (refused instanceof RangeError && /cannot keep to its limit/.test(refused.message)) return undefined;
    throw refused;
  }
}
