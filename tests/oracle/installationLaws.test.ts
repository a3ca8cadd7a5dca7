import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createSolver, dividePaths, phasors, project } from '../../src/electrics/index.ts';
import type { Solution } from '../../src/electrics/index.ts';
import { compile, installationSchema } from '../../src/installation/index.ts';
import type { Build, Conditions } from '../../src/installation/index.ts';
import { anyConditions, anyInstallation } from './anyInstallation.ts';
import { largest } from './apart.ts';

/** Relative; a thousand times what rounding leaves in the networks drawn here. */
const ROUNDING = 1e-9;

const RUNS = { numRuns: 300 };

interface Drawn {
  readonly build: Build;
  readonly conditions: Conditions;
}

/** An installation by chance, compiled, under conditions by chance. */
function drawn(seed: number, options: { readonly direct?: boolean } = {}): Drawn {
  const build = compile(installationSchema.parse(anyInstallation(seed, options).file));
  return { build, conditions: anyConditions(build.installation, seed) };
}

/** With one volt in this branch and no other source. */
function driven({ build, conditions }: Drawn, branch: number): Solution {
  const { injection: _, ...values } = build.values(conditions, new Set());
  const emf = phasors(build.network.branches.length);
  emf.re[branch] = 1;
  return createSolver(build.network).solve({ ...values, emf });
}

test('a volt in any conductor drives in any other what a volt there drives here (reciprocity)', () => {
  fc.assert(
    fc.property(fc.nat(), fc.nat(), fc.nat(), (seed, one, other) => {
      const given = drawn(seed);
      const count = given.build.branches.length;
      const [a, b] = [one % count, other % count];
      const [there, here] = [driven(given, a).amperes, driven(given, b).amperes];
      const off = Math.hypot(there.re[b]! - here.re[a]!, there.im[b]! - here.im[a]!);
      const { re, im } = given.build.values(given.conditions, new Set()).impedance;
      // What the last bits of the volt drive through either alone.
      const rounding_A = [a, b].reduce((sum, at) => sum + 2 ** -48 / Math.hypot(re[at]!, im[at]!), 0);
      expect(off).toBeLessThanOrEqual(ROUNDING * Math.min(largest(there), largest(here)) + rounding_A);
    }),
    RUNS,
  );
});

test('whatever is built, nothing but a source gives power', () => {
  fc.assert(
    fc.property(fc.nat(), fc.nat(), (seed, at) => {
      const given = drawn(seed);
      const branch = at % given.build.branches.length;
      const { amperes } = driven(given, branch);
      expect(amperes.re[branch]).toBeGreaterThanOrEqual(-ROUNDING * largest(amperes));
    }),
    RUNS,
  );
});

test('the ways home sum to the whole that the sources deliver', () => {
  let told = 0;
  fc.assert(
    fc.property(fc.nat(), (seed) => {
      const { build, conditions } = drawn(seed);
      const { network, sources } = build;
      const { injection: _, ...values } = build.values(conditions, new Set());
      const { amperes } = createSolver(network).solve(values);
      const largestSource = sources.reduce(
        (most, b) => (size(amperes, b) > size(amperes, most) ? b : most),
        sources[0]!,
      );
      if (size(amperes, largestSource) < 1e-3) return;
      const flow = project(amperes, { re: amperes.re[largestSource]!, im: amperes.im[largestSource]! });
      const { paths, total_A } = dividePaths(network, flow, sources);
      const sum = paths.reduce((all, path) => all + path.amperes, 0);
      expect(Math.abs(sum - total_A)).toBeLessThanOrEqual(ROUNDING * largest(amperes));
      told += 1;
    }),
    RUNS,
  );
  expect(told).toBeGreaterThan(RUNS.numRuns / 2);
});

test('on direct current no conductor taken away raises what the source delivers (Rayleigh)', () => {
  fc.assert(
    fc.property(fc.nat(), fc.nat(), (seed, at) => {
      const { build } = drawn(seed, { direct: true });
      const { impedance, emf: all, coupling } = build.values({}, new Set());
      // To direct current a capacitor is a gap: a resistance as large.
      const ohms = impedance.re.map((re, b) => Math.hypot(re, impedance.im[b]!));
      const source = build.branch('supply');
      // A lone source: of two one may well drive the other.
      const emf = phasors(ohms.length);
      emf.re[source] = Math.hypot(all.re[source]!, all.im[source]!);
      const others = build.branches.flatMap((_, b) => (b === source ? [] : [b]));
      const delivered = (more_ohm: number): number => {
        const re = ohms.slice();
        re[others[at % others.length]!]! += more_ohm;
        const values = { impedance: { re, im: phasors(re.length).im }, emf, coupling };
        const { amperes } = createSolver(build.network).solve(values);
        return amperes.re[source]!;
      };
      // What the last bits of its EMF drive through it alone.
      const rounding_A = (2 ** -48 * largest(emf)) / ohms[source]!;
      expect(delivered(1e9)).toBeLessThanOrEqual(delivered(0) * (1 + ROUNDING) + rounding_A);
    }),
    RUNS,
  );
});

const ohms = fc.double({ min: 0.5, max: 500, noNaN: true });
const supply = fc.constantFrom<object>(
  { kind: 'three-phase-transformer', rating_VA: 1e5, secondary_V: 208, impedance_percent: 4, x_over_r: 3 },
  {
    kind: 'three-phase-transformer',
    connection: 'wye-wye',
    rating_VA: 5e5,
    secondary_V: 400,
    impedance_percent: 4,
    x_over_r: 3,
    primary_VA: 1e8,
    capacitance_nF: 50,
  },
  { kind: 'generator', connection: 'three-phase', rating_VA: 3e4, neutral: 'bonded' },
  { kind: 'inverter', connection: 'three-phase', rating_VA: 3e6, neutral: 'floating' },
);

/** Three like loads, between three lines and the neutral of this supply, over a cable. */
function likeLoads(source: object, load: object): Build {
  const names = ['a', 'b', 'c'];
  const cores = Object.fromEntries([...names, 'neutral'].map((name) => [name, '10 mm² Cu']));
  return compile(
    installationSchema.parse({
      place: 'Three phases',
      region: 'iec',
      parts: {
        supply: source,
        run: { kind: 'cable', length_m: 50, cores, capacitance_nF_m: 0.3 },
        ...Object.fromEntries(names.map((name, at) => [`load ${name}`, { ...load, ...turned(load, at) }])),
      },
      joins: [
        ...[...names, 'neutral'].map((name) => [`supply.${name}`, `run.${name}.supply`]),
        ...names.flatMap((name) => [
          [`run.${name}.load`, `load ${name}.a`],
          [`load ${name}.b`, 'run.neutral.load'],
        ]),
      ],
    }),
  );
}

function turned(load: object, at: number): object {
  return 'currents' in load ? { shift_deg: -120 * at } : {};
}

test('three like loads on three lines leave nothing to the neutral, on whatever supply', () => {
  fc.assert(
    fc.property(supply, ohms, ohms, (source, resistance_ohm, reactance_ohm) => {
      const build = likeLoads(source, { kind: 'impedance', resistance_ohm, reactance_ohm });
      const { amperes } = createSolver(build.network).solve(build.values({}, new Set()));
      expect(size(amperes, build.branch('run.neutral'))).toBeLessThanOrEqual(
        ROUNDING * size(amperes, build.branch('run.a')),
      );
    }),
    { numRuns: 100 },
  );
});

test('of three like electronic loads the neutral carries three times every third harmonic and nothing of the others', () => {
  fc.assert(
    fc.property(supply, fc.integer({ min: 2, max: 25 }), ohms, (source, order, current_A) => {
      const build = likeLoads(source, { kind: 'harmonic-source', currents: [{ order, current_A }] });
      const { amperes } = createSolver(build.network).solve(build.values({}, new Set(), undefined, order));
      const neutral = size(amperes, build.branch('run.neutral'));
      // What leaks through the capacitance of the cable is missing from the third harmonics.
      if (order % 3 === 0) expect(Math.abs(neutral / (3 * current_A) - 1)).toBeLessThan(1e-2);
      else expect(neutral).toBeLessThanOrEqual(ROUNDING * current_A);
    }),
    { numRuns: 100 },
  );
});

function size({ re, im }: Solution['amperes'], b: number): number {
  return Math.hypot(re[b]!, im[b]!);
}
