import { solved, type Solved } from '../installation/places.ts';
import { within } from './asPrinted.ts';
import { measured, type Circuit, type Measured } from './bench.ts';
import { circuit as written } from './circuit.ts';
import type { Published } from './published.ts';

type Part = Circuit['parts'][string];

/** A textbook circuit, written as a file as it stands in the book. */
const circuit = (name: string): Solved => solved(written(name));

const ohm = (a: string, b: string, resistance_ohm: number, reactance_ohm = 0): Part => ({
  kind: 'impedance',
  between: [a, b],
  resistance_ohm,
  reactance_ohm,
});
const source = (emf_V: number, resistance_ohm = 0, reactance_ohm = 0): Part => ({
  kind: 'source',
  emf_V,
  resistance_ohm,
  reactance_ohm,
});

const WHOLE = 'printed to three or four figures';
/** Volts between three single-phase loads and the star point they have left. */
const lostNeutral = (neutral_ohm: number): Measured => {
  const of = (power_W: number): number => 230 ** 2 / power_W;
  return measured({
    parts: {
      supply: {
        kind: 'three-phase-transformer',
        rating_VA: 1e8,
        secondary_V: 230 * Math.sqrt(3),
        impedance_percent: 1,
        x_over_r: 1,
      },
      star: { kind: 'fitting' },
      one: ohm('supply.a', 'star', of(100)),
      two: ohm('supply.b', 'star', of(1000)),
      three: ohm('supply.c', 'star', of(2000)),
      neutral: ohm('star', 'supply.neutral', neutral_ohm),
    },
  });
};

/** Published open neutrals and double bonds. */
export const rows: readonly Published[] = [
  // Open neutrals.
  within(
    'lamps of 100 and 200 W in series on 240 V pass 1.111 A',
    'common example, outputs computed',
    'A',
    1.111,
    0.001,
    WHOLE,
    () => circuit('open-neutral-lamps').amperes('small lamp'),
  ),
  within('… the small one at 160 V', 'common example, outputs computed', 'V', 160, 0.001, WHOLE, () =>
    circuit('open-neutral-lamps').between('small lamp.line', 'small lamp.neutral'),
  ),
  within('… the large one at 80 V', 'common example, outputs computed', 'V', 80, 0.001, WHOLE, () =>
    circuit('open-neutral-lamps').between('large lamp.line', 'large lamp.neutral'),
  ),
  // The page itself prints 0.29 A, 96.67 V and 145 V, which add up to more than there is: it rounds the current first.
  within(
    'two and three loads of 1000 Ω on 240 V without a neutral: 144 V across the two',
    'a teaching page, output computed; printed there 145 V, after rounding the current',
    'V',
    144,
    1e-4,
    WHOLE,
    () => {
      const parts = {
        source: source(240),
        middle: { kind: 'fitting' } as const,
        two: ohm('source.plus', 'middle', 500),
        three: ohm('middle', 'source.minus', 1000 / 3),
      };
      return measured({ parts }).between('source.plus', 'middle');
    },
  ),
  ...(
    [
      ['a', 340],
      ['b', 263.7],
      ['c', 135.4],
    ] as const
  ).map(([line, printed]) =>
    within(
      `230/400 V, neutral lost, 100 W, 1 kW and 2 kW: ${printed} V on line ${line}’s load`,
      'computed for fixed resistances',
      'V',
      printed,
      0.001,
      WHOLE,
      () => lostNeutral(1e9).between(`supply.${line}`, 'star'),
    ),
  ),
  within(
    '… and with the neutral whole it carries 7.16 A',
    'computed for fixed resistances',
    'A',
    7.16,
    0.001,
    WHOLE,
    () => lostNeutral(0.001).amperes('neutral'),
  ),
  within(
    '415 V, 24, 18 and 12 kW of resistance leave 43.4 A in the neutral',
    'textbook problem',
    'A',
    43.4,
    0.002,
    WHOLE,
    () => {
      const U0 = 415 / Math.sqrt(3);
      const of = (kW: number): number => U0 ** 2 / (kW * 1000);
      const supply = {
        kind: 'three-phase-transformer',
        rating_VA: 1e8,
        secondary_V: 415,
        impedance_percent: 1,
        x_over_r: 1,
      } as const;
      const parts = {
        supply,
        a: ohm('supply.a', 'star', of(24)),
        b: ohm('supply.b', 'star', of(18)),
        c: ohm('supply.c', 'star', of(12)),
        star: { kind: 'fitting' } as const,
        neutral: ohm('star', 'supply.neutral', 1e-4),
      };
      return measured({ parts }).amperes('neutral');
    },
  ),

  // Double bond: I·Z_N / (Z_N + Z_PE), NEC chapter 9 table 8.
  within(
    'neutral and earth joined again: of 30 A, 18.26 A stay in the 6 AWG neutral',
    'current divider by NEC chapter 9 table 8, computed',
    'A',
    18.26,
    0.003,
    'the feeder’s joints count too',
    () => circuit('double-bond').amperes('feeder.neutral'),
  ),
  within(
    '… and 11.74 A come home on the 8 AWG protective conductor',
    'current divider by NEC chapter 9 table 8, computed',
    'A',
    11.74,
    0.003,
    'the feeder’s joints count too',
    () => circuit('double-bond').amperes('feeder.protective'),
  ),
];
