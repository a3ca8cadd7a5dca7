/** Random networks for the laws: connected, passive, with values from welded copper to good insulation. */
import fc from 'fast-check';
import type { Network, Phasors, Values } from '../../src/electrics/index.ts';

/** A network with values for it. */
export interface Case {
  readonly network: Network;
  readonly values: Values;
}

/** What a random network may hold. */
export interface Bounds {
  readonly nodes?: number;
  /** Branches beyond those of a tree. */
  readonly links?: number;
  /** Powers of ten that impedances lie between. */
  readonly exponents?: readonly [number, number];
  readonly reactive?: boolean;
  readonly windings?: boolean;
  readonly injections?: boolean;
  readonly cores?: boolean;
}

/** Any connected passive network. */
export function anyNetwork(bounds: Bounds = {}): fc.Arbitrary<Case> {
  const { nodes = 10, links = 10, exponents = [-5, 10], reactive = true, windings = true } = bounds;
  const { injections = reactive, cores = windings } = bounds;
  const magnitude = fc
    .double({ min: exponents[0], max: exponents[1], noNaN: true })
    .map((power) => 10 ** power)
    .map(Math.fround);
  const branch = fc.record({
    size: magnitude,
    /** Radians; short of ±π/2, so that nothing resonates without loss. */
    angle: reactive ? fc.integer({ min: -12, max: 15 }).map((tenths) => tenths / 10) : fc.constant(0),
    emf: fc.option(fc.tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -400, max: 400 })), { freq: 2 }),
    /** A; into a branch that is no insulation, where amperes would be megavolts. */
    injection: fc.option(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 })), { freq: 2 }),
    turned: fc.boolean(),
    reach: fc.nat(),
  });
  return fc
    .record({
      tree: fc.array(branch, { minLength: 1, maxLength: nodes - 1 }),
      links: fc.array(fc.tuple(branch, fc.nat()), { maxLength: links }),
      wound: fc.boolean(),
      injecting: fc.boolean(),
      core: fc.option(fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 2, maxLength: 3 })),
      mutual: fc.integer({ min: 0, max: 9 }).map((tenths) => tenths / 10),
    })
    .map(({ tree, links: others, wound, injecting, core, mutual }) => {
      const size = tree.length + 1;
      const ends = [
        ...tree.map(({ reach }, k) => [reach % (k + 1), k + 1] as const),
        ...others.map(([{ reach }, other]) => [reach % size, other % size] as const),
      ];
      const parts = [...tree, ...others.map(([part]) => part)];
      const turns = core ?? [];
      const cored = cores && turns.length > 0 && parts.length > 2 + turns.length;
      if (cored) {
        // A load across two windings of the core, without which nothing might set its volts or nothing flow.
        ends.push(ends[2]!, ends[3]!);
        parts.push({ ...parts[0]!, emf: null }, { ...parts[1]!, emf: null });
      }
      const network: Network = {
        nodes: Array.from({ length: size }, (_, n) => (n === 0 ? 'earth' : `node ${n}`)),
        branches: parts.map(({ turned }, b) => {
          const [a, z] = ends[b]!;
          return { name: `branch ${b}`, from: turned ? z : a, to: turned ? a : z };
        }),
        windings: windings && wound && parts.length > 1 ? [{ branches: [0, 1] }] : [],
        ...(cored && { cores: [{ branches: turns.map((_, k) => 2 + k), turns }] }),
      };
      const impedance = rows(parts.map(({ size: z, angle }) => [z * Math.cos(angle), z * Math.sin(angle)]));
      const emf = rows(parts.map(({ emf: e }) => [e?.[0] ?? 0, reactive ? (e?.[1] ?? 0) : 0]));
      const injection = rows(parts.map(({ injection: j, size: z }) => (j && z < 1e4 ? j : [])));
      const coupling = network.windings.map(() => coupled(impedance, mutual));
      const values: Values = { impedance, emf, coupling };
      return { network, values: injections && injecting ? { ...values, injection } : values };
    });
}

/** Impedance of the first two branches with a core of their own: resistances stay each winding's, a part of the smaller
 *  reactance is shared. */
function coupled({ re, im }: Phasors, mutual: number): Phasors {
  const own0 = Math.abs(im[0]!);
  const own1 = Math.abs(im[1]!);
  const shared = mutual * Math.min(own0, own1);
  return rows([
    [re[0]!, own0],
    [0, shared],
    [0, shared],
    [re[1]!, own1],
  ]);
}

/** Phasors from pairs, in single precision: short fractions, so that an exact solver stays quick. */
export function rows(pairs: readonly (readonly number[])[]): Phasors {
  const short = (value = 0): number => (Math.abs(value) < 2 ** -60 ? 0 : Math.fround(value));
  return {
    re: Float64Array.from(pairs, (pair) => short(pair[0])),
    im: Float64Array.from(pairs, (pair) => short(pair[1])),
  };
}
