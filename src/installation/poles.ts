import { z } from 'zod';
import type { PlannedBranch } from './plan.ts';
import { nameSchema } from './quantity.ts';

/** A rating in amperes. */
export const rating_A = z
  .number()
  .gt(0)
  .max(1e5)
  .meta({ examples: [20] });

/** How many poles open together; one has no name, more are called a, b, c, d. */
export const poleCount = z
  .literal([1, 2, 3, 4])
  .default(1)
  .describe('one: terminals line and load; more: a.line, a.load, b.line, b.load, …');

/** What passes through a device that compares: each conductor by name. */
const conductorNames = z
  .array(nameSchema)
  .min(1)
  .max(6)
  .refine((names) => new Set(names).size === names.length, { error: 'names one conductor twice' })
  .meta({ examples: [['line', 'neutral']] });

/** The conductors of a device that compares: all that run through its case, those through its core, those it opens. */
export const through = {
  poles: conductorNames.default(['line', 'neutral']).describe('each has the terminals <pole>.supply and <pole>.load'),
  senses: conductorNames.optional().describe('of these the ones through its core; absent: all but protective'),
  opens: conductorNames.optional().describe('of these the ones it opens; absent: all but protective'),
};

/** Complains of conductors that are not there. */
export function knownConductors(
  part: {
    readonly poles: readonly string[];
    readonly senses?: readonly string[] | undefined;
    readonly opens?: readonly string[] | undefined;
  },
  context: z.RefinementCtx,
): void {
  for (const key of ['senses', 'opens'] as const)
    for (const name of part[key] ?? [])
      if (!part.poles.includes(name))
        context.addIssue({
          code: 'custom',
          path: [key],
          message: `names ${name}, which is none of its poles`,
          params: { code: 'unknown-name', instead: `${key}: [${part.poles.join(', ')}]` },
        });
}

/** The conductors of a device that compares, as branches `<part>.<pole>` from supply to load. */
export function comparing(
  name: string,
  part: {
    readonly poles: readonly string[];
    readonly senses?: readonly string[] | undefined;
    readonly opens?: readonly string[] | undefined;
  },
  resistance_ohm: number,
): {
  readonly branches: readonly PlannedBranch[];
  readonly poles: readonly string[];
  readonly residual: readonly string[];
} {
  const working = part.poles.filter((pole) => pole !== 'protective');
  return {
    branches: part.poles.map((pole) => poleBranch(`${name}.${pole}`, 'supply', resistance_ohm)),
    poles: (part.opens ?? working).map((pole) => `${name}.${pole}`),
    residual: (part.senses ?? working).map((pole) => `${name}.${pole}`),
  };
}

/** Terminals of a device that compares. */
export function comparingEnds({ poles }: { readonly poles: readonly string[] }): readonly string[] {
  return poles.flatMap((pole) => [`${pole}.supply`, `${pole}.load`]);
}

/** Terminals of a device with this many poles. */
export function poleEnds(count: number): readonly string[] {
  return poleNames('', count).flatMap((pole) => (pole === '' ? ['line', 'load'] : [`${pole}.line`, `${pole}.load`]));
}

/** The poles of a device: its own name if there is one, else `<part>.a`, `<part>.b` … */
export function poleNames(name: string, count: number): readonly string[] {
  return count === 1
    ? [name]
    : ['a', 'b', 'c', 'd'].slice(0, count).map((pole) => (name === '' ? pole : `${name}.${pole}`));
}

/** One pole from its line (or supply) side to its load side. */
export function poleBranch(pole: string, side: 'line' | 'supply', resistance_ohm: number): PlannedBranch {
  return {
    name: pole,
    from: `${pole}.${side}`,
    to: `${pole}.load`,
    role: 'device',
    medium: 'metal',
    resistance_ohm,
    reactance_ohm: 0,
  };
}

/** A pole loses about 2 W at its rating (common practice, no source): R = 2 W / I². */
export function poleResistance_ohm(rating_A: number): number {
  return 2 / rating_A ** 2;
}
