import { solved, type Solved } from '../installation/places.ts';
import { within } from './asPrinted.ts';
import { measured, type Circuit } from './bench.ts';
import { circuit as written, loop_A } from './circuit.ts';
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

/** Amperes round a loop of impedances; half of the first is the source's own. */
const loop = (
  emf_V: number,
  [r, x]: readonly [number, number],
  ...more: readonly (readonly [number, number])[]
): number => loop_A(emf_V, { r: r / 2, x: x / 2 }, { r: r / 2, x: x / 2 }, ...more.map(([r, x]) => ({ r, x })));

const WHOLE = 'printed to three or four figures';
const FACTOR = 'printed with the simplified factor 1.2 for 70 °C; ours is 1 + 0.00393·50 = 1.1965';
const ENA = 'ENA P23/1:1991 external loop and IEC 60228 conductors';

/** A published loop of several lengths; the last figure is the magnitude of the sum. */
const W1 = [0.021, 0.022] as const;
const W2 = [W1, [0.04, 0.004]] as const;
const W3 = [...W2, [0.03, 0.008]] as const;

/** Three circuits of an IT system by way of two faults: line volts round both loops. */
const secondFault = (): number => {
  const star = 230 * Math.sqrt(3);
  return loop(star, [0.0643, 0], [0.0643, 0]);
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

/** Published loops in TN, TT and IT. */
export const rows: readonly Published[] = [
  // The sums are printed to the milliohm, the amperes computed from them at 230 V.
  within(
    'a 500 kVA winding and 100 m of CNE main: 0.030 Ω',
    'worked loop, seen second-hand',
    'Ω',
    0.03,
    0.02,
    'printed to the milliohm',
    () => 230 / loop(230, W1),
  ),
  within('… and 7 562 A at 230 V', 'the same loop, amperes computed', 'A', 7_562, 0.001, WHOLE, () => loop(230, W1)),
  within('… and after 50 m of SWA 3 469 A', 'the same loop, amperes computed', 'A', 3_469, 0.001, WHOLE, () =>
    loop(230, ...W2),
  ),
  within('… and after 5 m in conduit 2 368 A', 'the same loop, amperes computed', 'A', 2_368, 0.001, WHOLE, () =>
    loop(230, ...W3),
  ),
  within(
    '0.35 Ω outside and 1.446 Ω of circuit pass 128 A',
    'worked example, seen second-hand',
    'A',
    128,
    0.002,
    WHOLE,
    () => circuit('tncs-measured').amperes('fault'),
  ),
  within('TN-C-S, 20 m of 2.5/1.5 mm² pass 281 A', ENA, 'A', 281, 0.003, FACTOR, () =>
    circuit('tncs-ring').amperes('fault'),
  ),
  within('TN-S, 20 m of 2.5/1.5 mm² pass 181 A', ENA, 'A', 181, 0.003, FACTOR, () =>
    circuit('tns-ring').amperes('fault'),
  ),
  within('TN-S, 20 m of 6/2.5 mm² pass 219 A', ENA, 'A', 219, 0.003, FACTOR, () =>
    circuit('tns-cooker').amperes('fault'),
  ),
  within(
    'the IEC reference impedance 0.4 + j0.25 Ω passes 488 A',
    'IEC TR 60725, amperes computed',
    'A',
    488,
    0.002,
    WHOLE,
    () => loop(230, [0.4, 0.25]),
  ),
  within(
    'TT, 10 Ω at the source and 20 Ω at the case pass 7.67 A',
    'French IEC installation handbook, from memory',
    'A',
    7.667,
    0.001,
    WHOLE,
    () => circuit('tt-handbook').amperes('fault'),
  ),
  // The handbook rounds the current first and prints 154 V.
  within(
    '… and put 153.3 V on the case',
    'French IEC installation handbook, from memory',
    'V',
    153.3,
    0.001,
    WHOLE,
    () => circuit('tt-handbook').volts('machine'),
  ),
  within(
    'TT, 21 Ω outside and a 100 Ω electrode pass 1.893 A',
    'ENA P23/1:1991, computed',
    'A',
    1.893,
    0.001,
    WHOLE,
    () => circuit('tt-network').amperes('fault'),
  ),
  within('… and put 189.4 V on the case', 'ENA P23/1:1991, computed', 'V', 189.4, 0.001, WHOLE, () =>
    circuit('tt-network').volts('machine'),
  ),
  within(
    '50 m of 35 mm² out and back pass 3 577 A',
    'French IEC installation handbook, from memory; printed there 3 576',
    'A',
    3_577,
    0.001,
    WHOLE,
    () => circuit('tn-equal-conductors').amperes('fault'),
  ),
  within(
    '120 V into a 25 Ω rod pass 4.8 A',
    'standard example of the trade; “4 A” is also said and is wrong',
    'A',
    4.8,
    0.001,
    WHOLE,
    () => circuit('rod-25').amperes('rod'),
  ),
  within('120 V into 25 Ω and 10 Ω pass 3.43 A', 'computed', 'A', 3.43, 0.001, WHOLE, () =>
    circuit('rod-25-source-10').amperes('rod'),
  ),
  within('… and leave 85.7 V on the case', 'computed', 'V', 85.7, 0.001, WHOLE, () =>
    circuit('rod-25-source-10').volts('machine'),
  ),
  within(
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
  ).map(([how, capacitance_nF, printed, from, tolerance, because]) =>
    within(
      `IT, 1 km of ${how}: the first fault passes ${printed} mA of charging current`,
      from,
      'mA',
      printed,
      tolerance,
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
  within(
    'IT, two faults on circuits of 64.3 mΩ each are a short circuit of 3 111 A',
    'French IEC installation handbook, from memory',
    'A',
    3_111,
    0.005,
    'computed there with 400 V for √3·230 V',
    secondFault,
  ),
  within(
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
  within('a broken PEN puts 107.9 V on every case', '3 kW, 20 Ω and 5 Ω, computed', 'V', 107.9, 0.001, WHOLE, () =>
    circuit('broken-pen').volts('main earth'),
  ),
  within('… by 5.39 A through the soil', '3 kW, 20 Ω and 5 Ω, computed', 'A', 5.39, 0.001, WHOLE, () =>
    circuit('broken-pen').amperes('rod'),
  ),
  within(
    'TN-S, 0.8 Ω and a B45: 10/4 mm² may run 35 m',
    'worked example at 240 V, seen second-hand',
    'm',
    35,
    0.02,
    `printed to the metre; ${FACTOR}`,
    () => longestRun(0.8, 225),
  ),
  within(
    'TN-C-S, 0.35 Ω and a C45: 10/4 mm² may run 23 m',
    'worked example at 240 V, seen second-hand',
    'm',
    23,
    0.04,
    `printed rounded down to the metre; ${FACTOR}`,
    () => longestRun(0.35, 450),
  ),
];
