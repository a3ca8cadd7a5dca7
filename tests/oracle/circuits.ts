/** Two whole circuits as raw networks, the same as the netlists beside this file. */
import type { Network, Values } from '../../src/electrics/index.ts';
import type { Question } from './ngspice.ts';

type Ohms = readonly [re: number, im: number];

/** One branch as it is written here: name, minus end, plus end, ohm, volt. */
type Line = readonly [name: string, from: string, to: string, impedance: Ohms, emf_V?: number];

/** `splitPhase.cir`: what goes in the places marked there, ohm. */
export interface SplitPhase {
  readonly regc: number;
  readonly rload: number;
  readonly rperson: number;
  readonly rrod: number;
}

/** A 120/240 V service with a fault from line to case on a 15 A branch; the windings as their 2×2 impedance. */
export function splitPhase({ regc, rload, rperson, rrod }: SplitPhase): Question {
  const base = 0.576; // 120² / 25000
  const r = 0.01345346 * base;
  const x = 0.01479881 * base;
  const own: Ohms = [0.5 * r + r, 0.8 * x + 0.4 * x];
  const shared: Ohms = [0.5 * r, 0.8 * x];
  const drop: Ohms = [1.047e-3 * 30, 0.148e-3 * 30];
  const run: Ohms = [10.07e-3 * 15, 0.19e-3 * 15];
  return question(
    [
      ['upper', 'x0', 'x1', own, 120],
      ['lower', 'x3', 'x0', own, 120],
      ['drop a', 'x1', 'panel a', drop],
      ['drop b', 'x3', 'panel b', drop],
      ['drop neutral', 'x0', 'neutral bar', drop],
      ['pole electrode', 'x0', 'earth', [10, 0]],
      ['service rod', 'neutral bar', 'earth', [25, 0]],
      ['line', 'panel a', 'device', run],
      ['load', 'device', 'load neutral', [rload, 0]],
      ['neutral', 'load neutral', 'neutral bar', run],
      ['fault', 'device', 'case', [1e-6, 0]],
      ['protective', 'case', 'neutral bar', [regc, run[1]]],
      ['person', 'case', 'floor', [rperson, 0]],
      ['floor', 'floor', 'earth', [30, 0]],
      ['rod at the case', 'case', 'earth', [rrod, 0]],
    ],
    [own, shared],
  );
}

/** `earthing.cir`: what goes in the places marked there, ohm. */
export interface Earthing {
  readonly rpemain: number;
  readonly rlink: number;
  readonly rcons: number;
}

/** A 230 V loop with a fault from line to case, earthed as TN-S, TN-C-S or TT. */
export function earthing({ rpemain, rlink, rcons }: Earthing): Question {
  return question([
    ['source', 'star', 'a', [0.0046, 0.015324], 230],
    ['source electrode', 'star', 'earth', [2, 0]],
    ['main line', 'a', 'board', [0.032, 0.0075]],
    ['main neutral', 'star', 'neutral', [0.032, 0.0075]],
    ['main protective', 'star', 'terminal', [rpemain, 0.0075]],
    ['link', 'neutral', 'terminal', [rlink, 0]],
    ['electrode', 'terminal', 'earth', [rcons, 0]],
    ['line', 'board', 'core', [7.41 * 0.02, 0]],
    ['fault', 'core', 'case', [1e-6, 0]],
    ['protective', 'case', 'terminal', [12.1 * 0.02, 0]],
    ['person', 'case', 'earth', [1000, 0]],
  ]);
}

function question(lines: readonly Line[], winding?: readonly [own: Ohms, shared: Ohms]): Question {
  const nodes = [...new Set(['earth', ...lines.flatMap(([, from, to]) => [from, to])])];
  const network: Network = {
    nodes,
    branches: lines.map(([name, from, to]) => ({ name, from: nodes.indexOf(from), to: nodes.indexOf(to) })),
    windings: winding ? [{ branches: [0, 1] }] : [],
  };
  const values: Values = {
    impedance: {
      re: Float64Array.from(lines, ([, , , impedance]) => impedance[0]),
      im: Float64Array.from(lines, ([, , , impedance]) => impedance[1]),
    },
    emf: { re: Float64Array.from(lines, (line) => line[4] ?? 0), im: new Float64Array(lines.length) },
    coupling: winding
      ? [
          {
            re: Float64Array.of(winding[0][0], winding[1][0], winding[1][0], winding[0][0]),
            im: Float64Array.of(winding[0][1], winding[1][1], winding[1][1], winding[0][1]),
          },
        ]
      : [],
  };
  return { network, values };
}
