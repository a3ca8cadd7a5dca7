import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createSolver, phasors } from '../../src/electrics/index.ts';
import { anyNetwork } from '../electrics/anyNetwork.ts';
import { apart, largest } from './apart.ts';
import { earthing, splitPhase } from './circuits.ts';
import { solveWithMathjs } from './mathjs.ts';
import type { Question } from './ngspice.ts';

/** Compares V and A with the largest of each. */
function expectTheSame({ network, values }: Question): void {
  const ours = createSolver(network).solve(values);
  const theirs = solveWithMathjs(network, values);
  const volts = Math.max(largest(ours.volts), largest(values.emf));
  const amperes = Math.max(largest(ours.amperes), largest(values.injection ?? phasors(0)));
  expect(apart(ours.volts, theirs.volts)).toBeLessThanOrEqual(1e-9 * volts);
  expect(apart(ours.amperes, theirs.amperes)).toBeLessThanOrEqual(1e-9 * amperes);
}

test('LU by mathjs finds the same volts and currents in random networks', () => {
  fc.assert(fc.property(anyNetwork({ nodes: 12, links: 12 }), expectTheSame), { numRuns: 300 });
});

test('LU by mathjs finds the same in a split-phase service and in a TT loop', () => {
  expectTheSame(splitPhase({ regc: 0.15105, rload: 10, rperson: 1000, rrod: 25 }));
  expectTheSame(earthing({ rpemain: 1e12, rlink: 1e12, rcons: 100 }));
});
