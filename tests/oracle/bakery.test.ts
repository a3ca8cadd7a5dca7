import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { solveBody } from '../../src/body/index.ts';
import { balance, createSolver } from '../../src/electrics/index.ts';
import type { Solution, Solver } from '../../src/electrics/index.ts';
import { compile, initialConditions, readInstallation } from '../../src/installation/index.ts';
import type { Build, Conditions } from '../../src/installation/index.ts';
import { apart, largest } from './apart.ts';
import { solveWithMathjs } from './mathjs.ts';
import { solveWithNgspice } from './ngspice.ts';
import type { Question } from './ngspice.ts';

/** The ten main conditions; every combination of them is solved. */
const MAIN: readonly (readonly [condition: string, option: string])[] = [
  ['line touches the case', 'solid'],
  ['protective conductor open', 'yes'],
  ['bonding jumper missing', 'yes'],
  ['service neutral open', 'yes'],
  ['line and neutral reversed', 'yes'],
  ['neutral linked to the case', 'yes'],
  ['protective conductor to its own rod', 'yes'],
  ['loose joint', 'yes'],
  ['mixer running', 'yes'],
  ['baker touches', 'the case'],
];

interface Combination extends Question {
  readonly name: string;
  readonly solution: Solution;
}

function bakery(): Build {
  const file = new URL('../../lessons/places/bakery.yaml', import.meta.url);
  const reading = readInstallation(readFileSync(file, 'utf8'), 'bakery.yaml');
  if (!reading.ok) throw new Error(reading.diagnostics.map(({ message }) => message).join('\n'));
  return compile(reading.installation);
}

/** The network with the people in it at the resistance their bodies have there. */
function combination(build: Build, solver: Solver, chosen: number): Combination {
  const usual = initialConditions(build.installation);
  const conditions: Conditions = {
    ...usual,
    'mixer running': 'no',
    ...Object.fromEntries(MAIN.filter((_, k) => (chosen >> k) & 1)),
  };
  const limbs = new Map<number, number>();
  for (const person of build.people) {
    const { body, contacts } = person.contacts(conditions);
    const touched = contacts.map(({ limb }) => person.limbs.find((one) => one.limb === limb)!);
    if (touched.length === 0) continue;
    const { volts } = solver.solve(build.values(conditions, new Set()));
    const nodes = touched.map(({ node }) => node);
    const open = {
      re: Float64Array.from(nodes, (node) => volts.re[node]!),
      im: Float64Array.from(nodes, (node) => volts.im[node]!),
    };
    const { limb_ohm } = solveBody(body, contacts, open, solver.impedanceSeenFrom(nodes));
    touched.forEach(({ branch }, k) => limbs.set(branch, limb_ohm[k]!));
  }
  const values = build.values(conditions, new Set(), limbs);
  const name = MAIN.filter((_, k) => (chosen >> k) & 1).map(([condition]) => condition);
  return {
    name: name.join(', ') || 'all as it should be',
    network: build.network,
    values,
    solution: solver.solve(values),
  };
}

describe('the bakery in every combination of its ten main conditions', () => {
  let combinations: readonly Combination[] = [];
  beforeAll(() => {
    const build = bakery();
    const solver = createSolver(build.network);
    combinations = Array.from({ length: 2 ** MAIN.length }, (_, chosen) => combination(build, solver, chosen));
  });

  test('obeys Kirchhoff, Ohm and the conservation of power', () => {
    for (const { name, network, values, solution } of combinations) {
      const { kirchhoff, ohm, power } = balance(network, values, solution);
      expect(Math.max(kirchhoff, ohm, power), name).toBeLessThanOrEqual(1e-12);
    }
  });

  test('each condition changes a current, alone or with a fault', () => {
    const currents = (chosen: number): string => combinations[chosen]!.solution.amperes.re.join();
    MAIN.forEach(([condition], k) => {
      const alone = currents(1 << k) !== currents(0);
      const faulted = currents(1 | (1 << k)) !== currents(k === 0 ? 0 : 1);
      expect({ condition, alone, faulted }).toEqual({ condition, alone: true, faulted: true });
    });
  });

  test('ngspice finds the same current to a millionth in every branch that carries more than 1 µA', () => {
    const theirs = solveWithNgspice(combinations, 60);
    let compared = 0;
    combinations.forEach(({ name, network, solution }, k) => {
      const want = theirs[k]!.amperes;
      network.branches.forEach((branch, b) => {
        const amperes = Math.hypot(want.re[b]!, want.im[b]!);
        if (amperes <= 1e-6) return;
        compared++;
        const off = Math.hypot(want.re[b]! - solution.amperes.re[b]!, want.im[b]! - solution.amperes.im[b]!);
        if (!(off <= 1e-6 * amperes)) expect.fail(`${name}: ${branch.name} carries ${amperes} A, off by ${off} A`);
      });
    });
    expect(compared).toBeGreaterThan(50 * combinations.length);
  }, 120_000);

  test('LU by mathjs finds the same volts and currents to a thousand-millionth', () => {
    for (const { name, network, values, solution } of combinations) {
      const theirs = solveWithMathjs(network, values);
      expect(apart(theirs.volts, solution.volts) / largest(solution.volts), name).toBeLessThanOrEqual(1e-9);
      expect(apart(theirs.amperes, solution.amperes) / largest(solution.amperes), name).toBeLessThanOrEqual(1e-9);
    }
  }, 120_000);
});
