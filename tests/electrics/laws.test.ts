import fc from 'fast-check';
import { expect, test } from 'vitest';
import { balance, createSolver, phasors } from '../../src/electrics/index.ts';
import type { Network, Phasors, Solution, Values } from '../../src/electrics/index.ts';
import { anyNetwork } from './anyNetwork.ts';
import type { Case } from './anyNetwork.ts';

/** Relative: what rounding leaves over a few dozen branches, with three digits to spare. */
const ROUNDING = 1e-12;
const RUNS = { numRuns: 500 };

const solve = ({ network, values }: Case): Solution => createSolver(network).solve(values);

const largest = ({ re, im }: Phasors): number => re.reduce((most, r, k) => Math.max(most, Math.hypot(r, im[k]!)), 0);

/** Largest difference between two rows of phasors. */
function apart(a: Phasors, b: Phasors): number {
  return a.re.reduce((most, r, k) => Math.max(most, Math.hypot(r - b.re[k]!, a.im[k]! - b.im[k]!)), 0);
}

/** A row of phasors times a complex number. */
function times({ re, im }: Phasors, by: { re: number; im: number }): Phasors {
  return {
    re: re.map((r, k) => r * by.re - im[k]! * by.im),
    im: im.map((i, k) => re[k]! * by.im + i * by.re),
  };
}

/** The same network with one EMF of 1 V, or one injection of 1 A, and no other source. */
function driven({ network, values }: Case, branch: number, source: 'emf' | 'injection' = 'emf'): Case {
  const { impedance, coupling } = values;
  const one = phasors(network.branches.length);
  one.re[branch] = 1;
  return { network, values: { impedance, coupling, emf: phasors(one.re.length), [source]: one } };
}

test('at every node, earth included, as much current leaves as arrives (Kirchhoff)', () => {
  fc.assert(
    fc.property(anyNetwork({ nodes: 20, links: 20 }), (given) => {
      const { kirchhoff } = balance(given.network, given.values, solve(given));
      // The currents of nodes sum by construction; the ampere-turns of a core only as far as volts are worth correcting.
      expect(kirchhoff).toBeLessThanOrEqual(given.network.cores ? 100 * ROUNDING : ROUNDING);
    }),
    RUNS,
  );
});

test('round every branch the voltages and the EMF add up to impedance times current (Ohm)', () => {
  fc.assert(
    fc.property(anyNetwork({ nodes: 20, links: 20 }), (given) => {
      expect(balance(given.network, given.values, solve(given)).ohm).toBeLessThanOrEqual(ROUNDING);
    }),
    RUNS,
  );
});

test('the sources give what the impedances take, in watts and in vars (conservation of power)', () => {
  fc.assert(
    fc.property(anyNetwork({ nodes: 20, links: 20 }), (given) => {
      expect(balance(given.network, given.values, solve(given)).power).toBeLessThanOrEqual(ROUNDING);
    }),
    RUNS,
  );
});

test('the voltages of one network times the currents of another of the same shape sum to nothing (Tellegen)', () => {
  fc.assert(
    fc.property(anyNetwork({ exponents: [-2, 3] }), fc.integer({ min: 1, max: 99 }), (given, factor) => {
      const { network, values } = given;
      const { volts } = solve(given);
      const other: Values = {
        ...values,
        impedance: { re: values.impedance.re.map((ohms, b) => ohms * (1 + (b % factor))), im: values.impedance.im },
      };
      const { amperes } = solve({ network, values: other });
      let re = 0;
      let im = 0;
      network.branches.forEach(({ from, to }, b) => {
        const vr = volts.re[from]! - volts.re[to]!;
        const vi = volts.im[from]! - volts.im[to]!;
        re += vr * amperes.re[b]! - vi * amperes.im[b]!;
        im += vr * amperes.im[b]! + vi * amperes.re[b]!;
      });
      const whole = largest(volts) * largest(amperes) * network.branches.length;
      expect(Math.hypot(re, im)).toBeLessThanOrEqual(ROUNDING * whole);
    }),
    RUNS,
  );
});

test('a volt here drives there what a volt there drives here (reciprocity)', () => {
  fc.assert(
    fc.property(anyNetwork({ exponents: [-2, 3] }), fc.nat(), fc.nat(), (given, one, other) => {
      const count = given.network.branches.length;
      const a = one % count;
      const b = other % count;
      const there = solve(driven(given, a)).amperes;
      const here = solve(driven(given, b)).amperes;
      const off = Math.hypot(there.re[b]! - here.re[a]!, there.im[b]! - here.im[a]!);
      expect(off).toBeLessThanOrEqual(ROUNDING * (largest(there) + largest(here)));
    }),
    RUNS,
  );
});

test('all sources together drive the sum of what each drives alone (superposition)', () => {
  fc.assert(
    fc.property(anyNetwork({ exponents: [-2, 3] }), (given) => {
      const { network, values } = given;
      const sum = { volts: phasors(network.nodes.length), amperes: phasors(network.branches.length) };
      let whole = 0;
      let volts = largest(values.emf) * network.branches.length;
      for (const source of ['emf', 'injection'] as const) {
        network.branches.forEach((_, b) => {
          const by = { re: values[source]?.re[b] ?? 0, im: values[source]?.im[b] ?? 0 };
          if (by.re === 0 && by.im === 0) return;
          const part = solve(driven(given, b, source));
          for (const key of ['volts', 'amperes'] as const) {
            const scaled = times(part[key], by);
            scaled.re.forEach((re, k) => (sum[key].re[k]! += re));
            scaled.im.forEach((im, k) => (sum[key].im[k]! += im));
            if (key === 'amperes') whole += largest(scaled);
            else volts += largest(scaled);
          }
        });
      }
      const together = solve(given);
      expect(apart(sum.amperes, together.amperes)).toBeLessThanOrEqual(ROUNDING * whole);
      expect(apart(sum.volts, together.volts)).toBeLessThanOrEqual(ROUNDING * volts);
    }),
    RUNS,
  );
});

test('more resistance anywhere never eases the way between two points (Rayleigh)', () => {
  const bounds = { exponents: [-3, 4], reactive: false, windings: false } as const;
  fc.assert(
    fc.property(anyNetwork(bounds), fc.nat(), fc.nat(), fc.integer({ min: 2, max: 1000 }), (given, pick, at, by) => {
      const { network, values } = given;
      const node = 1 + (at % (network.nodes.length - 1));
      const seen = (impedance: Phasors): number => {
        const solver = createSolver(network);
        solver.solve({ ...values, impedance });
        return solver.impedanceSeenFrom([node]).re[0]!;
      };
      const re = values.impedance.re.slice();
      re[pick % re.length]! *= by;
      expect(seen({ re, im: values.impedance.im })).toBeGreaterThanOrEqual(seen(values.impedance) * (1 - ROUNDING));
    }),
    RUNS,
  );
});

test('a way taken away never raises what one source delivers through resistances (Rayleigh)', () => {
  // True of the current of a lone source in a network of resistances; not of any current in any network: reactances may
  // cancel, and a current beside the one taken away may well rise.
  const bounds = { exponents: [-3, 4], reactive: false, windings: false } as const;
  fc.assert(
    fc.property(anyNetwork(bounds), fc.nat(), fc.nat(), (given, at, pick) => {
      const { network } = given;
      const tree = network.nodes.length - 1; // the links come after, and each is a way beside others
      fc.pre(network.branches.length > tree);
      const gone = tree + (pick % (network.branches.length - tree));
      const source = at % network.branches.length;
      fc.pre(gone !== source);
      const whole = solve(driven(given, source)).amperes.re[source]!;
      const impedance = { ...given.values.impedance, re: given.values.impedance.re.slice() };
      impedance.re[gone] = 1e12;
      const less = solve(driven({ network, values: { ...given.values, impedance } }, source)).amperes.re[source]!;
      expect(less).toBeLessThanOrEqual(whole * (1 + ROUNDING));
    }),
    RUNS,
  );
});

test('equal loads on three phases leave nothing to the neutral', () => {
  const ohms = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
  fc.assert(
    fc.property(fc.tuple(ohms, ohms, ohms, ohms), fc.double({ min: 1, max: 1e3, noNaN: true }), (z, volt) => {
      const [line, load, reactance, neutral] = z;
      const network: Network = {
        nodes: ['star point', 'a', 'b', 'c', 'load star'],
        branches: [
          ...[1, 2, 3].map((to) => ({ name: `phase ${to}`, from: 0, to })),
          ...[1, 2, 3].map((from) => ({ name: `load ${from}`, from, to: 4 })),
          { name: 'neutral', from: 4, to: 0 },
        ],
        windings: [],
      };
      const angles = [0, 1, 2, 3, 4, 5, 6].map((k) => (k < 3 ? (-2 * Math.PI * k) / 3 : undefined));
      const emf = {
        re: Float64Array.from(angles, (angle) => (angle === undefined ? 0 : volt * Math.cos(angle))),
        im: Float64Array.from(angles, (angle) => (angle === undefined ? 0 : volt * Math.sin(angle))),
      };
      const impedance = {
        re: Float64Array.of(line, line, line, load, load, load, neutral),
        im: Float64Array.of(0, 0, 0, reactance, reactance, reactance, 0),
      };
      const { amperes } = solve({ network, values: { impedance, emf, coupling: [] } });
      const rest = Math.hypot(amperes.re[6]!, amperes.im[6]!);
      // The three EMFs themselves sum to their rounding, which drives the neutral.
      expect(rest).toBeLessThanOrEqual(ROUNDING * (largest(amperes) + volt / neutral));
    }),
    RUNS,
  );
});

test('what is seen from any set of nodes is symmetric and takes power, never gives it', () => {
  fc.assert(
    fc.property(anyNetwork({ exponents: [-2, 3] }), fc.integer(), fc.integer(), (given, one, other) => {
      const solver = createSolver(given.network);
      solver.solve(given.values);
      const nodes = given.network.nodes.map((_, n) => n);
      const z = solver.impedanceSeenFrom(nodes);
      const size = nodes.length;
      const current = nodes.map((n) => Math.sin(one + n) + Math.cos(other * n));
      let watts = 0;
      let whole = 0;
      for (const n of nodes) {
        for (const m of nodes) {
          expect(z.re[n * size + m]).toBe(z.re[m * size + n]);
          watts += current[n]! * current[m]! * z.re[n * size + m]!;
          whole += Math.abs(current[n]! * current[m]! * z.re[n * size + m]!);
        }
      }
      expect(watts).toBeGreaterThanOrEqual(-ROUNDING * whole);
    }),
    RUNS,
  );
});

/** All EMFs and all injections times a factor each. */
function sources({ emf, injection }: Values, volts: number, amperes: number): Pick<Values, 'emf' | 'injection'> {
  const scaled = { emf: times(emf, { re: volts, im: 0 }) };
  return injection ? { ...scaled, injection: times(injection, { re: amperes, im: 0 }) } : scaled;
}

test('all impedances times k: the same volts, currents over k; all sources times k: volts and currents times k', () => {
  fc.assert(
    fc.property(anyNetwork({ exponents: [-2, 3] }), fc.integer({ min: -9, max: 9 }), (given, power) => {
      const { network, values } = given;
      const k = 2 ** power; // powers of two, so that not one bit may change
      const plain = solve(given);
      const stiff = solve({
        network,
        values: {
          ...values,
          ...sources(values, 1, 1 / k),
          impedance: times(values.impedance, { re: k, im: 0 }),
          coupling: values.coupling.map((z) => times(z, { re: k, im: 0 })),
        },
      });
      expect(stiff.volts).toEqual(plain.volts);
      expect(times(stiff.amperes, { re: k, im: 0 })).toEqual(times(plain.amperes, { re: 1, im: 0 }));
      const strong = solve({ network, values: { ...values, ...sources(values, k, k) } });
      expect(strong.volts).toEqual(times(plain.volts, { re: k, im: 0 }));
    }),
    RUNS,
  );
});

test('how nodes and branches are numbered does not matter', () => {
  fc.assert(
    fc.property(anyNetwork({ exponents: [-2, 3] }), (given) => {
      const { network, values } = given;
      const last = network.nodes.length - 1;
      const count = network.branches.length - 1;
      const turn = ({ re, im }: Phasors): Phasors => ({ re: re.slice().reverse(), im: im.slice().reverse() });
      const flip = (node: number): number => (node === 0 ? 0 : last + 1 - node);
      const turned: Network = {
        nodes: ['earth', ...network.nodes.slice(1).reverse()],
        branches: [...network.branches]
          .reverse()
          .map(({ name, from, to }) => ({ name, from: flip(from), to: flip(to) })),
        windings: network.windings.map(({ branches }) => ({ branches: branches.map((b) => count - b) })),
        cores: (network.cores ?? []).map(({ branches, turns }) => ({
          branches: branches.map((b) => count - b),
          turns,
        })),
      };
      const again = createSolver(turned).solve({
        impedance: turn(values.impedance),
        emf: turn(values.emf),
        ...(values.injection && { injection: turn(values.injection) }),
        coupling: values.coupling,
      });
      const plain = solve(given);
      const whole = largest(plain.amperes) + largest(values.injection ?? phasors(0));
      expect(apart(turn(again.amperes), plain.amperes)).toBeLessThanOrEqual(ROUNDING * whole);
    }),
    RUNS,
  );
});
