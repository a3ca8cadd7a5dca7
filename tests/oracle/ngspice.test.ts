import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { createSolver } from '../../src/electrics/index.ts';
import type { Solution } from '../../src/electrics/index.ts';
import { anyNetwork } from '../electrics/anyNetwork.ts';
import { earthing, splitPhase } from './circuits.ts';
import { runDecks, solveWithNgspice } from './ngspice.ts';
import type { Answer, Question } from './ngspice.ts';

const deck = (file: string, values: object): string =>
  Object.entries(values).reduce(
    (text, [name, value]) => text.replace(`@${name}@`, String(value)),
    readFileSync(new URL(file, import.meta.url), 'utf8'),
  );

/** Magnitude of a branch current by name, A. */
const current = ({ network }: Question, solution: Solution, name: string): number => {
  const b = network.branches.findIndex((branch) => branch.name === name);
  return Math.hypot(solution.amperes.re[b]!, solution.amperes.im[b]!);
};

/** Magnitude of a node voltage by name, V. */
const volts = ({ network }: Question, solution: Solution, name: string): number => {
  const node = network.nodes.indexOf(name);
  return Math.hypot(solution.volts.re[node]!, solution.volts.im[node]!);
};

const size = ([re, im]: readonly [number, number]): number => Math.hypot(re, im);

/** Magnitudes as ngspice 39.3 printed them for `splitPhase.cir` (each rounded to the digits shown). */
const SERVICE = [
  {
    name: 'A: a bolted fault with the protective conductor whole',
    values: { regc: 0.15105, rload: 1e12, rperson: 1e12, rrod: 1e12 },
    printed: { case: 55.1991, line: 318.021, protective: 318.021, person: 0, rod: 0, x0: 2.8798, bar: 7.1995 },
  },
  {
    name: 'A2: the same with a person on the case',
    values: { regc: 0.15105, rload: 1e12, rperson: 1000, rrod: 1e12 },
    printed: { case: 54.8143, line: 318.046, protective: 317.993, person: 0.053218, rod: 0, x0: 3.2579, bar: 6.8213 },
  },
  {
    name: 'B: no protective conductor, a person on the case',
    values: { regc: 1e12, rload: 1e12, rperson: 1000, rrod: 1e12 },
    printed: { case: 119.151, line: 0.115681, protective: 0, person: 0.115681, rod: 0, x0: 0.8266, bar: 0.8255 },
  },
  {
    name: 'C: a 25 ohm rod instead of the protective conductor',
    values: { regc: 1e12, rload: 1e12, rperson: 1000, rrod: 25 },
    printed: { case: 92.2576, line: 3.77987, protective: 0, person: 0.08957, rod: 3.6903, x0: 27.0088, bar: 26.9749 },
  },
  {
    name: 'D: no protective conductor, a 10 ohm load running',
    values: { regc: 1e12, rload: 10, rperson: 1000, rrod: 1e12 },
    printed: { case: 116.8195, line: 11.67574, protective: 0, person: 0.113417, rod: 0, x0: 0.9142, bar: 0.5514 },
  },
] as const;

/** Magnitudes as ngspice 39.3 printed them for `earthing.cir`. */
const LOOPS = [
  {
    name: 'TN-S',
    values: { rpemain: 0.032, rlink: 1e12, rcons: 1e9 },
    printed: { case: 136.8215, line: 500.2968, protective: 500.1601, terminal: 16.1709, star: 0.2736 },
  },
  {
    name: 'TN-C-S',
    values: { rpemain: 1e12, rlink: 1e-6, rcons: 20 },
    printed: { case: 135.3792, line: 500.3433, protective: 500.2079, terminal: 14.684, star: 1.7342 },
  },
  {
    name: 'TT',
    values: { rpemain: 1e12, rlink: 1e12, rcons: 100 },
    printed: { case: 224.6137, line: 2.465329, protective: 2.240715, terminal: 224.0715, star: 4.9307 },
  },
] as const;

/** Half of the last digit printed. */
const printed = (value: number): number => 0.5000001 * 10 ** -(String(value).split('.')[1] ?? '').length;

describe('whole circuits', () => {
  let services: Answer[] = [];
  let loops: Answer[] = [];
  beforeAll(() => {
    services = runDecks(
      SERVICE.map(({ values }) => deck('splitPhase.cir', values)),
      60,
    );
    loops = runDecks(
      LOOPS.map(({ values }) => deck('earthing.cir', values)),
      50,
    );
  });

  test.each(SERVICE.map((service, k) => ({ ...service, k })))(
    'split phase $name',
    ({ values, printed: figures, k }) => {
      const answer = services[k]!;
      const question = splitPhase(values);
      const solution = createSolver(question.network).solve(question.values);
      const ours = {
        case: volts(question, solution, 'case'),
        line: current(question, solution, 'line'),
        protective: current(question, solution, 'protective'),
        person: current(question, solution, 'person'),
        rod: current(question, solution, 'rod at the case'),
        x0: volts(question, solution, 'x0'),
        bar: volts(question, solution, 'neutral bar'),
      };
      for (const key of Object.keys(figures) as (keyof typeof figures)[]) {
        const about = figures[key] === 0 ? 2e-10 : printed(figures[key]);
        expect(Math.abs(ours[key] - figures[key]), key).toBeLessThanOrEqual(about);
      }
      // The same circuit as a T model with an ideal transformer, solved by ngspice to full digits.
      const theirs = { case: 'v(case)', line: 'i(vbr)', protective: 'i(vegc)', person: 'i(vp)', rod: 'i(vrod)' };
      for (const key of Object.keys(theirs) as (keyof typeof theirs)[]) {
        const want = size(answer(theirs[key]));
        if (want > 1e-6) expect(Math.abs(ours[key] / want - 1), key).toBeLessThanOrEqual(1e-6);
      }
    },
  );

  test.each(LOOPS.map((loop, k) => ({ ...loop, k })))('a fault in $name', ({ values, printed: figures, k }) => {
    const answer = loops[k]!;
    const question = earthing(values);
    const solution = createSolver(question.network).solve(question.values);
    const ours = {
      case: volts(question, solution, 'case'),
      line: current(question, solution, 'line'),
      protective: current(question, solution, 'protective'),
      terminal: volts(question, solution, 'terminal'),
      star: volts(question, solution, 'star'),
    };
    const theirs = { case: 'v(case)', line: 'i(vbr)', protective: 'i(vpe)', terminal: 'v(met)', star: 'v(st)' };
    for (const key of Object.keys(figures) as (keyof typeof figures)[]) {
      expect(Math.abs(ours[key] - figures[key]), key).toBeLessThanOrEqual(printed(figures[key]));
      expect(Math.abs(ours[key] / size(answer(theirs[key])) - 1), key).toBeLessThanOrEqual(1e-6);
    }
  });
});

test('ngspice finds the same currents in 300 random networks, coupled windings included', () => {
  const cases = fc.sample(anyNetwork({ exponents: [-3, 6] }), { numRuns: 300, seed: 60 });
  const theirs = solveWithNgspice(cases, 60);
  let compared = 0;
  cases.forEach(({ network, values }, k) => {
    const ours = createSolver(network).solve(values).amperes;
    const want = theirs[k]!.amperes;
    network.branches.forEach((_, b) => {
      const amperes = Math.hypot(want.re[b]!, want.im[b]!);
      if (amperes <= 1e-6) return;
      compared++;
      const error = Math.hypot(ours.re[b]! - want.re[b]!, ours.im[b]! - want.im[b]!);
      expect(error / amperes, `case ${k} branch ${b}`).toBeLessThanOrEqual(1e-6);
    });
  });
  expect(compared).toBeGreaterThan(1000);
});

test('a network that ngspice cannot read is reported with what it said', () => {
  expect(() => runDecks(['* nothing\nr1 a b nonsense\nq9 x y z nomodel'], 60)[0]!('v(a)')).toThrow(/ngspice gave no/);
});
