import { readFileSync } from 'node:fs';
import { built, solved, type Solved } from '../installation/places.ts';
import { measured, type Circuit, type Measured } from './bench.ts';
import type { Published } from './published.ts';

type Part = Circuit['parts'][string];

/** A textbook circuit, written as a file as it stands in the book. */
const circuit = (name: string): Solved =>
  solved(built(readFileSync(new URL(`./loops/${name}.yaml`, import.meta.url), 'utf8')));

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

/** A fault at the end of one loop: a source, then impedances in series back to it. */
const loop = (emf_V: number, ...ohms: readonly (readonly [number, number])[]): number => {
  const ends = ['source.plus', ...ohms.slice(1).map((_, at) => `n${at}`), 'source.minus'];
  const parts = Object.fromEntries([
    ['source', source(emf_V)],
    ...ohms.slice(1).map((_, at): [string, Part] => [`n${at}`, { kind: 'fitting' }]),
    ...ohms.map(([r, x], at): [string, Part] => [`z${at}`, ohm(ends[at] ?? '', ends[at + 1] ?? '', r, x)]),
  ]);
  return measured({ parts }).amperes('z0');
};

const ONE_ANGLE = 'the method adds ohms as if of one angle, so all are given as resistance; rounded at each step';
const POINT_TO_POINT = 'point-to-point method of fuse-maker handbooks';
const WHOLE = 'printed to three or four figures';
const FACTOR = 'printed with the simplified factor 1.2 for 70 °C; ours is 1 + 0.00393·50 = 1.1965';
const ENA = 'ENA P23/1:1991 external loop and IEC 60228 conductors';

// Ohms of one conductor of this many feet: 1 / C of the handbooks' table.
const feet = (length: number, c: number, parallel = 1): number => length / (c * parallel);
/** Amperes of the three-phase fault: one phase to the star. */
const threePhase = (line_V: number, ...ohms: readonly number[]): number =>
  loop(line_V / Math.sqrt(3), ...ohms.map((r) => [r, 0] as const));

const P1_OHM = (0.018 * 208 ** 2) / 300_000;
const P3_OHM = (0.027 * 240 ** 2) / 300_000;
const P7_OHM = (0.0315 * 480 ** 2) / 1_500_000;
const P8_OHM = (0.014 * 240 ** 2) / 75_000;
const lineToLine = (length: number, c: number): number => 2 * feet(length, c);

const pointToPoint: readonly (readonly [string, number, number, () => number])[] = [
  ['300 kVA, 208Y/120, 2 %: at the terminals', 46_273, 0.001, () => threePhase(208, P1_OHM)],
  ['… and after 20 ft of two 500 kcmil', 39_426, 0.001, () => threePhase(208, P1_OHM, feet(20, 22_185, 2))],
  ['… and after 20 ft of 2 AWG', 18_671, 0.001, () => threePhase(208, P1_OHM, feet(20, 22_185, 2), feet(20, 5_907))],
  [
    '300 kVA, 240 V single phase, 3 %, after 150 ft of 3/0',
    8_978,
    0.001,
    () => loop(240, [P3_OHM + lineToLine(150, 13_923), 0]),
  ],
  [
    '… and after 40 ft of 6 AWG',
    4_024,
    0.001,
    () => loop(240, [P3_OHM + lineToLine(150, 13_923), 0], [lineToLine(40, 2_430), 0]),
  ],
  [
    '… and after 30 ft of 12 AWG',
    1_530,
    0.001,
    () => loop(240, [P3_OHM + lineToLine(150, 13_923) + lineToLine(40, 2_430), 0], [lineToLine(30, 617), 0]),
  ],
  [
    '1500 kVA, 480 V, 3.5 %, after 25 ft of six 500 kcmil',
    55_138,
    0.001,
    () => threePhase(480, P7_OHM, feet(25, 22_185, 6)),
  ],
  ['… and after 50 ft of one', 38_068, 0.001, () => threePhase(480, P7_OHM, feet(25, 22_185, 6), feet(50, 22_185))],
  [
    '75 kVA, 240 V, 1.4 %, line to line after 25 ft of 500 kcmil',
    18_453,
    0.001,
    () => loop(240, [P8_OHM + lineToLine(25, 22_185), 0]),
  ],
  [
    'a source of 200 A at 240 V, three-phase, after 125 ft',
    198,
    0.003,
    () => threePhase(240, 240 / Math.sqrt(3) / 200, feet(125, 20_408)),
  ],
];

/** A published loop of several lengths; the last figure is the magnitude of the sum. */
const W1 = [0.021, 0.022] as const;
const W2 = [W1, [0.04, 0.004]] as const;
const W3 = [...W2, [0.03, 0.008]] as const;

/** Three circuits of an IT system by way of two faults: line volts round both loops. */
const secondFault = (): number => {
  const star = 230 * Math.sqrt(3);
  return loop(star, [0.0643, 0], [0.0643, 0]);
};

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

/** How far a cable may run before its fault current falls to this many amperes, m. */
const longestRun = (external_ohm: number, amperes: number): number => {
  const ohmsAt = (length_m: number): number => {
    const { amperes: through } = measured({
      parts: {
        source: source(240, external_ohm),
        run: { kind: 'cable', length_m, temperature_C: 70, cores: { line: '10 mm² Cu', protective: '4 mm² Cu' } },
      },
      joins: [
        ['source.plus', 'run.line.supply'],
        ['source.minus', 'run.protective.supply'],
        ['run.line.load', 'run.protective.load'],
      ],
    });
    return 240 / through('run.line');
  };
  return ((240 / amperes - ohmsAt(1e-3)) / (ohmsAt(100) - ohmsAt(1e-3))) * 100;
};

/** One phase of 400 kVA and 100 m of 95 mm² Al to a 2.5/1.5 mm² final circuit: the circuit of the general-purpose oracles. */
const oracle = (system: 'TN-S' | 'TN-C-S' | 'TT'): Measured =>
  measured({
    parts: {
      source: source(230, 0.0046, 0.015324),
      star: ohm('source.minus', 'earth', 2),
      terminal: { kind: 'fitting' },
      machine: { kind: 'fitting' },
      line: ohm('source.plus', 'board', 0.032, 0.0075),
      board: { kind: 'fitting' },
      neutral: ohm('source.minus', 'neutral bar', 0.032, 0.0075),
      'neutral bar': { kind: 'fitting' },
      protective: ohm('source.minus', 'terminal', system === 'TN-S' ? 0.032 : 1e9, system === 'TN-S' ? 0.0075 : 0),
      link: ohm('neutral bar', 'terminal', system === 'TN-C-S' ? 0 : 1e9),
      electrode: ohm('terminal', 'earth', { 'TN-S': 1e9, 'TN-C-S': 20, TT: 100 }[system]),
      final: ohm('board', 'machine', 7.41 * 0.02),
      return: ohm('machine', 'terminal', 12.1 * 0.02),
      person: ohm('machine', 'earth', 1000),
    },
  });
const NGSPICE = 'ngspice 39.3 and a nodal solution by numpy, computed';
const JOINS = 'a solid fault and a link are 10 µΩ there';

const row = (
  what: string,
  source_: string,
  unit: string,
  printed: number,
  within: number,
  because: string,
  computed: () => number,
): Published => ({ what, source: source_, unit, printed, within, because, computed });

/** Published loops, open neutrals and double bonds. */
export const rows: readonly Published[] = [
  ...pointToPoint.map(([what, printed, within, computed]) =>
    row(`${what}: ${printed} A`, POINT_TO_POINT, 'A', printed, within, ONE_ANGLE, computed),
  ),

  // The sums are printed to the milliohm, the amperes computed from them at 230 V.
  row(
    'a 500 kVA winding and 100 m of CNE main: 0.030 Ω',
    'worked loop, seen second-hand',
    'Ω',
    0.03,
    0.02,
    'printed to the milliohm',
    () => 230 / loop(230, W1),
  ),
  row('… and 7 562 A at 230 V', 'the same loop, amperes computed', 'A', 7_562, 0.001, WHOLE, () => loop(230, W1)),
  row('… and after 50 m of SWA 3 469 A', 'the same loop, amperes computed', 'A', 3_469, 0.001, WHOLE, () =>
    loop(230, ...W2),
  ),
  row('… and after 5 m in conduit 2 368 A', 'the same loop, amperes computed', 'A', 2_368, 0.001, WHOLE, () =>
    loop(230, ...W3),
  ),
  row(
    '0.35 Ω outside and 1.446 Ω of circuit pass 128 A',
    'worked example, seen second-hand',
    'A',
    128,
    0.002,
    WHOLE,
    () => circuit('tncs-measured').amperes('fault'),
  ),
  row('TN-C-S, 20 m of 2.5/1.5 mm² pass 281 A', ENA, 'A', 281, 0.003, FACTOR, () =>
    circuit('tncs-ring').amperes('fault'),
  ),
  row('TN-S, 20 m of 2.5/1.5 mm² pass 181 A', ENA, 'A', 181, 0.003, FACTOR, () => circuit('tns-ring').amperes('fault')),
  row('TN-S, 20 m of 6/2.5 mm² pass 219 A', ENA, 'A', 219, 0.003, FACTOR, () => circuit('tns-cooker').amperes('fault')),
  row(
    'the IEC reference impedance 0.4 + j0.25 Ω passes 488 A',
    'IEC TR 60725, amperes computed',
    'A',
    488,
    0.002,
    WHOLE,
    () => loop(230, [0.4, 0.25]),
  ),
  row(
    'TT, 10 Ω at the source and 20 Ω at the case pass 7.67 A',
    'French IEC installation handbook, from memory',
    'A',
    7.667,
    0.001,
    WHOLE,
    () => circuit('tt-handbook').amperes('fault'),
  ),
  // The handbook rounds the current first and prints 154 V.
  row('… and put 153.3 V on the case', 'French IEC installation handbook, from memory', 'V', 153.3, 0.001, WHOLE, () =>
    circuit('tt-handbook').volts('machine'),
  ),
  row('TT, 21 Ω outside and a 100 Ω electrode pass 1.893 A', 'ENA P23/1:1991, computed', 'A', 1.893, 0.001, WHOLE, () =>
    circuit('tt-network').amperes('fault'),
  ),
  row('… and put 189.4 V on the case', 'ENA P23/1:1991, computed', 'V', 189.4, 0.001, WHOLE, () =>
    circuit('tt-network').volts('machine'),
  ),
  row(
    '50 m of 35 mm² out and back pass 3 577 A',
    'French IEC installation handbook, from memory; printed there 3 576',
    'A',
    3_577,
    0.001,
    WHOLE,
    () => circuit('tn-equal-conductors').amperes('fault'),
  ),
  row(
    '120 V into a 25 Ω rod pass 4.8 A',
    'standard example of the trade; “4 A” is also said and is wrong',
    'A',
    4.8,
    0.001,
    WHOLE,
    () => circuit('rod-25').amperes('rod'),
  ),
  row('120 V into 25 Ω and 10 Ω pass 3.43 A', 'computed', 'A', 3.43, 0.001, WHOLE, () =>
    circuit('rod-25-source-10').amperes('rod'),
  ),
  row('… and leave 85.7 V on the case', 'computed', 'V', 85.7, 0.001, WHOLE, () =>
    circuit('rod-25-source-10').volts('machine'),
  ),
  row(
    'IT, neutral through 1500 Ω: the first fault passes 153 mA',
    'IEC 60364-4-41 practice in a maker’s guide to earthing systems',
    'mA',
    153,
    0.003,
    WHOLE,
    () =>
      1000 *
      measured({
        parts: {
          source: source(230),
          resistor: ohm('source.minus', 'earth', 1500),
          fault: ohm('source.plus', 'earth', 0),
        },
      }).amperes('fault'),
  ),
  ...(
    [
      [
        '1 µF/km',
        1000,
        217,
        'maker’s guide to earthing systems, capacitance as printed, amperes computed',
        0.002,
        WHOLE,
      ],
      [
        '3 500 Ω a phase',
        909.457,
        198,
        'the same guide in an older printing, from memory',
        0.006,
        'printed as three times a rounded 66 mA',
      ],
    ] as const
  ).map(([how, capacitance_nF, printed, from, within, because]) =>
    row(
      `IT, 1 km of ${how}: the first fault passes ${printed} mA of charging current`,
      from,
      'mA',
      printed,
      within,
      because,
      () => {
        const winding = {
          kind: 'three-phase-transformer',
          rating_VA: 1e5,
          secondary_V: 230 * Math.sqrt(3),
          impedance_percent: 4,
          x_over_r: 3,
          capacitance_nF,
        } as const;
        return 1000 * measured({ parts: { winding, fault: ohm('winding.a', 'earth', 0) } }).amperes('fault');
      },
    ),
  ),
  // 400 V over 0.1286 Ω; √3·230 V is 0.4 % less.
  row(
    'IT, two faults on circuits of 64.3 mΩ each are a short circuit of 3 111 A',
    'French IEC installation handbook, from memory',
    'A',
    3_111,
    0.005,
    'computed there with 400 V for √3·230 V',
    secondFault,
  ),
  row(
    'a line on the soil of 7.2 Ω lifts a star point of 2 Ω to 50 V',
    'IEC 60364-4-41, 411.4: R_B/R_E ≤ 50/(U0 − 50), seen second-hand',
    'V',
    50,
    0.002,
    'the ratio is rounded',
    () =>
      measured({
        parts: { source: source(230), star: ohm('source.minus', 'earth', 2), fault: ohm('source.plus', 'earth', 7.2) },
      }).volts('source.minus'),
  ),
  row('a broken PEN puts 107.9 V on every case', '3 kW, 20 Ω and 5 Ω, computed', 'V', 107.9, 0.001, WHOLE, () =>
    circuit('broken-pen').volts('main earth'),
  ),
  row('… by 5.39 A through the soil', '3 kW, 20 Ω and 5 Ω, computed', 'A', 5.39, 0.001, WHOLE, () =>
    circuit('broken-pen').amperes('rod'),
  ),
  row(
    'TN-S, 0.8 Ω and a B45: 10/4 mm² may run 35 m',
    'worked example at 240 V, seen second-hand',
    'm',
    35,
    0.02,
    `printed to the metre; ${FACTOR}`,
    () => longestRun(0.8, 225),
  ),
  row(
    'TN-C-S, 0.35 Ω and a C45: 10/4 mm² may run 23 m',
    'worked example at 240 V, seen second-hand',
    'm',
    23,
    0.04,
    `printed rounded down to the metre; ${FACTOR}`,
    () => longestRun(0.35, 450),
  ),

  // Open neutrals.
  row(
    'lamps of 100 and 200 W in series on 240 V pass 1.111 A',
    'common example, outputs computed',
    'A',
    1.111,
    0.001,
    WHOLE,
    () => circuit('open-neutral-lamps').amperes('small lamp'),
  ),
  row('… the small one at 160 V', 'common example, outputs computed', 'V', 160, 0.001, WHOLE, () =>
    circuit('open-neutral-lamps').between('small lamp.line', 'small lamp.neutral'),
  ),
  row('… the large one at 80 V', 'common example, outputs computed', 'V', 80, 0.001, WHOLE, () =>
    circuit('open-neutral-lamps').between('large lamp.line', 'large lamp.neutral'),
  ),
  // The page itself prints 0.29 A, 96.67 V and 145 V, which add up to more than there is: it rounds the current first.
  row(
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
  row('1 and 2 kW with 25 + 10 Ω of soil for a neutral: 155.2 V', 'computed', 'V', 155.2, 0.001, WHOLE, () =>
    circuit('open-neutral-rods').between('light load.line', 'light load.neutral'),
  ),
  row('… 84.8 V on the other leg', 'computed', 'V', 84.8, 0.001, WHOLE, () =>
    circuit('open-neutral-rods').between('heavy load.line', 'heavy load.neutral'),
  ),
  row('… and 1.005 A in the soil', 'computed', 'A', 1.005, 0.001, WHOLE, () =>
    circuit('open-neutral-rods').amperes('service rod'),
  ),
  ...(
    [
      ['a', 340],
      ['b', 263.7],
      ['c', 135.4],
    ] as const
  ).map(([line, printed]) =>
    row(
      `230/400 V, neutral lost, 100 W, 1 kW and 2 kW: ${printed} V on line ${line}’s load`,
      'computed for fixed resistances',
      'V',
      printed,
      0.001,
      WHOLE,
      () => lostNeutral(1e9).between(`supply.${line}`, 'star'),
    ),
  ),
  row('… and with the neutral whole it carries 7.16 A', 'computed for fixed resistances', 'A', 7.16, 0.001, WHOLE, () =>
    lostNeutral(0.001).amperes('neutral'),
  ),
  row(
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
  row(
    'neutral and earth joined again: of 30 A, 18.26 A stay in the 6 AWG neutral',
    'current divider by NEC chapter 9 table 8, computed',
    'A',
    18.26,
    0.003,
    'the feeder’s joints count too',
    () => circuit('double-bond').amperes('feeder.neutral'),
  ),
  row(
    '… and 11.74 A come home on the 8 AWG protective conductor',
    'current divider by NEC chapter 9 table 8, computed',
    'A',
    11.74,
    0.003,
    'the feeder’s joints count too',
    () => circuit('double-bond').amperes('feeder.protective'),
  ),

  // One loop in three systems, solved by two general-purpose tools.
  ...(
    [
      ['TN-S', 500.2968, 136.8215],
      ['TN-C-S', 500.3433, 135.3792],
      ['TT', 2.465329, 224.6137],
    ] as const
  ).flatMap(([system, amperes, volts]) => [
    row(`${system}: a fault at the end of 2.5/1.5 mm² passes ${amperes} A`, NGSPICE, 'A', amperes, 1e-4, JOINS, () =>
      oracle(system).amperes('final'),
    ),
    row(`${system}: … and puts ${volts} V on the case`, NGSPICE, 'V', volts, 1e-4, JOINS, () =>
      oracle(system).volts('machine'),
    ),
  ]),
];
