/** Networks that are well-formed and otherwise as bad as can be: values of any size and sign, things that are no numbers,
 *  nodes that hang nowhere, cores of any turns. */
import fc from 'fast-check';
import { balance, createSolver, FloatingError } from '../../src/electrics/index.ts';
import type { Network, Phasors, Values } from '../../src/electrics/index.ts';

interface Hostile {
  readonly network: Network;
  readonly values: Values;
}

/** Any value that a file could hold, the odd ones often. */
const number = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(0, 1, -1, 1e-4, 1e-4, 1e9, 230, -230, 1e-49, 1e49) },
  { weight: 4, arbitrary: fc.double({ min: -1e3, max: 1e3, noNaN: true }) },
  { weight: 1, arbitrary: fc.double({ noNaN: true, min: -1e12, max: 1e12 }) },
);
const rare = fc.oneof(
  { weight: 60, arbitrary: number },
  { weight: 1, arbitrary: fc.constantFrom(NaN, Infinity, 5e-324, 1e-160, 1e160, 1e300) },
);
const pair = fc.tuple(rare, rare);
const place = fc.nat({ max: 7 });

/** A network of up to eight nodes and twelve branches. */
export const hostile: fc.Arbitrary<Hostile> = fc
  .record({
    size: fc.integer({ min: 1, max: 8 }),
    parts: fc.array(fc.record({ from: place, to: place, z: pair, e: pair, j: pair, quiet: fc.boolean() }), {
      maxLength: 12,
    }),
    /** Whether every node has a branch to the one before it, so that nothing floats. */
    tied: fc.boolean(),
    injecting: fc.boolean(),
    winding: fc.option(fc.tuple(place, place, fc.array(pair, { minLength: 3, maxLength: 3 }))),
    turns: fc.option(fc.array(rare, { minLength: 1, maxLength: 4 })),
  })
  .map(({ size, parts, tied, injecting, winding, turns }) => {
    const ends = parts.map(({ from, to }, b) =>
      tied && b + 1 < size ? ([b, b + 1] as const) : ([from % size, to % size] as const),
    );
    const count = tied ? Math.min(size, parts.length + 1) : size;
    const network: Network = {
      nodes: Array.from({ length: count }, (_, n) => `node ${n}`),
      branches: ends.map(([from, to], b) => ({ name: `branch ${b}`, from: from % count, to: to % count })),
      windings:
        winding && parts.length > 7 && winding[0] !== winding[1] ? [{ branches: [winding[0], winding[1]] }] : [],
      ...(turns && parts.length > 11 && { cores: [{ branches: turns.map((_, k) => 8 + k), turns }] }),
    };
    const rows = (pairs: readonly (readonly [number, number])[]): Phasors => ({
      re: Float64Array.from(pairs, ([re]) => re),
      im: Float64Array.from(pairs, ([, im]) => im),
    });
    const matrix = winding?.[2] ?? [];
    const values: Values = {
      impedance: rows(parts.map(({ z }) => z)),
      emf: rows(parts.map(({ e, quiet }) => (quiet ? [0, 0] : e))),
      ...(injecting && { injection: rows(parts.map(({ j, quiet }) => (quiet ? [0, 0] : j))) }),
      coupling: network.windings.map(() => rows([matrix[0]!, matrix[1]!, matrix[1]!, matrix[2]!])),
    };
    return { network, values };
  });

/** What is wrong with how such a network is dealt with: nothing if it gets an answer that keeps the laws, or a refusal
 *  that names a part. */
export function wrongWith({ network, values }: Hostile): string | undefined {
  try {
    const solver = createSolver(network);
    const solution = solver.solve(values);
    const { kirchhoff, ohm } = balance(network, values, solution);
    if (!(kirchhoff <= 1e-6 && ohm <= 1e-6)) return `answered with Kirchhoff off by ${kirchhoff} and Ohm by ${ohm}`;
    for (const { re, im } of [solution.volts, solution.amperes]) {
      if (![...re, ...im].every(Number.isFinite)) return 'answered with what is no number';
    }
    const seen = solver.impedanceSeenFrom(network.nodes.map((_, n) => n));
    if (![...seen.re, ...seen.im].every(Number.isFinite)) return 'saw an impedance that is no number';
    return undefined;
  } catch (error) {
    const refused = error instanceof RangeError || error instanceof FloatingError;
    if (!refused) return `threw ${String(error)}`;
    return /"(?:branch|node) \d+"/.test(error.message) ? undefined : `refused without a name: ${error.message}`;
  }
}
