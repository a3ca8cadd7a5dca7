import fc from 'fast-check';
import { balance, createSolver } from '../../src/electrics/index.ts';
import { anyNetwork } from '../electrics/anyNetwork.ts';
import { hostile, wrongWith } from '../electrics/hostile.ts';
import { farFromExact } from '../oracle/farFromExact.ts';

/** Relative to the largest: the laws of circuits, a thousand times looser than rounding. */
const LAWS = 1e-9;

/** Random networks without end, each checked by the laws of circuits and by a solver that does not round. */
export function networks(): { readonly cases: number; readonly wrong: (number: number) => readonly string[] } {
  const any = anyNetwork({ nodes: 14, links: 14 });
  return {
    cases: Infinity,
    wrong(number) {
      const [given] = fc.sample(any, { numRuns: 1, seed: number });
      const { network, values } = given!;
      const told = `of the network drawn with seed ${number}`;
      try {
        const solution = createSolver(network).solve(values);
        const { kirchhoff, ohm, power } = balance(network, values, solution);
        const wrong: string[] = [];
        if (!(kirchhoff <= LAWS)) wrong.push(`currents at a node ${told} sum to ${kirchhoff} of the largest`);
        if (!(ohm <= LAWS)) wrong.push(`voltages ${told} miss by ${ohm} of the largest`);
        if (!(power <= LAWS)) wrong.push(`power ${told} misses by ${power} of what is given`);
        const off = farFromExact({ network, values }, solution, 1e-9);
        if (!(off <= 1)) wrong.push(`a current or voltage ${told} is ${off} times as far off as rounding explains`);
        return wrong;
      } catch (error) {
        return [`throws ${String(error)} ${told}`];
      }
    },
  };
}

/** Networks of hostile values without end, a thousand to a case: each must be answered by the laws or refused by name. */
export function hostileNetworks(): { readonly cases: number; readonly wrong: (number: number) => readonly string[] } {
  return {
    cases: Infinity,
    wrong(number) {
      return fc.sample(hostile, { numRuns: 1000, seed: number }).flatMap((given, k) => {
        const wrong = wrongWith(given);
        return wrong === undefined ? [] : [`number ${k} of the networks drawn with seed ${number}: ${wrong}`];
      });
    },
  };
}
