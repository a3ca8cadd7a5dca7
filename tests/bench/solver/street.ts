/** A made-up street: homes of ten nodes each, twenty to a transformer, neutral and water pipe going all the way. */
import type { Branch, Network, Values } from '../../../src/electrics/index.ts';

const NODES = [
  'pole line',
  'pole neutral',
  'board line',
  'board neutral',
  'earth bar',
  'outlet line',
  'load line',
  'load neutral',
  'case',
  'pipe',
] as const;

/** How many nodes a home has. */
export const NODES_A_HOME = NODES.length;
const HOMES_A_TRANSFORMER = 20;

/** A street of this many homes, 230 V, each with one load running; the first has a fault from line to case. */
export function street(homes: number): { readonly network: Network; readonly values: Values } {
  const branches: Branch[] = [];
  const ohms: (readonly [re: number, im: number])[] = [];
  const volts: number[] = [];
  const put = (name: string, from: number, to: number, re: number, im = 0, emf_V = 0): void => {
    branches.push({ name, from, to });
    ohms.push([re, im]);
    volts.push(emf_V);
  };
  for (let home = 0; home < homes; home++) {
    const at = (node: (typeof NODES)[number], other = home): number => 1 + NODES.indexOf(node) + other * NODES_A_HOME;
    // Lengths and loads differ from home to home, and every run makes the same street.
    const vary = (by: number): number => 1 + ((home * by) % 17) / 17;
    const last = home + 1 === homes;
    if (home % HOMES_A_TRANSFORMER === 0) {
      put('transformer', at('pole neutral'), at('pole line'), 0.01, 0.02, 230);
      put('transformer electrode', at('pole neutral'), 0, 5);
    } else {
      put('line span', at('pole line', home - 1), at('pole line'), 0.012 * vary(3), 0.003);
    }
    if (!last) {
      put('neutral span', at('pole neutral'), at('pole neutral', home + 1), 0.012 * vary(5), 0.003);
      put('street pipe', at('pipe'), at('pipe', home + 1), 0.05 * vary(7));
    }
    put('drop line', at('pole line'), at('board line'), 0.03 * vary(11), 0.004);
    put('drop neutral', at('board neutral'), at('pole neutral'), 0.03 * vary(11), 0.004);
    put('bond', at('board neutral'), at('earth bar'), 0.001);
    put('rod', at('earth bar'), 0, 25 * vary(2));
    put('pipe bond', at('earth bar'), at('pipe'), 0.01);
    put('pipe in soil', at('pipe'), 0, 8 * vary(13));
    put('breaker', at('board line'), at('outlet line'), 0.01);
    put('cord line', at('outlet line'), at('load line'), 0.15 * vary(4), 0.003);
    put('load', at('load line'), at('load neutral'), 25 * vary(6), 2);
    put('cord neutral', at('load neutral'), at('board neutral'), 0.15 * vary(4), 0.003);
    put('protective', at('case'), at('earth bar'), 0.2 * vary(4), 0.003);
    put('insulation', at('load line'), at('case'), home === 0 ? 0.05 : 1e8);
    put('case to floor', at('case'), 0, 1e7);
    put('outlet insulation', at('outlet line'), at('earth bar'), 1e8);
  }
  return {
    network: {
      nodes: ['earth', ...Array.from({ length: homes }, (_, home) => NODES.map((node) => `${home} ${node}`)).flat()],
      branches,
      windings: [],
    },
    values: {
      impedance: { re: Float64Array.from(ohms, ([re]) => re), im: Float64Array.from(ohms, ([, im]) => im) },
      emf: { re: Float64Array.from(volts), im: new Float64Array(volts.length) },
      coupling: [],
    },
  };
}
