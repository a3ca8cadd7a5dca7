import { createSolver } from '../../src/electrics/index.ts';
import { compile, initialConditions, installationSchema, type Conditions } from '../../src/installation/index.ts';
import type { z } from 'zod';

type Written = z.input<typeof installationSchema>;

/** A circuit on the bench, written as in a file; a join without a resistance has none here. */
export interface Circuit {
  readonly parts: Written['parts'];
  readonly joins?: readonly (readonly [string, string])[];
  readonly conditions?: NonNullable<Written['conditions']>;
  readonly region?: Written['region'];
}

/** A circuit solved: magnitudes and phasors, A and V. */
export interface Measured {
  amperes(branch: string): number;
  volts(terminal: string): number;
  between(a: string, b: string): number;
  phasor(branch: string): { readonly re: number; readonly im: number };
}

/** Solves a circuit. Its joins are the least resistance there is, 10 µΩ. */
export function measured(
  { parts, joins = [], conditions = {}, region = 'iec' }: Circuit,
  chosen: Conditions = {},
): Measured {
  const build = compile(
    installationSchema.parse({
      place: 'The bench',
      region,
      parts,
      joins: joins.map((between) => ({ between: [...between], resistance_ohm: 0 })),
      conditions,
    }),
  );
  const given = { ...initialConditions(build.installation), ...chosen };
  const { volts, amperes } = createSolver(build.network).solve(build.values(given, new Set()));
  const current = (branch: string) => {
    const at = build.branch(branch);
    return { re: amperes.re[at] ?? NaN, im: amperes.im[at] ?? NaN };
  };
  const potential = (terminal: string) => {
    const at = build.node(terminal);
    return { re: volts.re[at] ?? NaN, im: volts.im[at] ?? NaN };
  };
  return {
    phasor: current,
    amperes: (branch) => Math.hypot(current(branch).re, current(branch).im),
    volts: (terminal) => Math.hypot(potential(terminal).re, potential(terminal).im),
    between: (a, b) => Math.hypot(potential(a).re - potential(b).re, potential(a).im - potential(b).im),
  };
}
