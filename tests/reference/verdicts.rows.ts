import {
  ADIABATIC_K,
  adiabatic_mm2,
  americanArea_mm2,
  groundingConductor,
  tabulatedProtective_mm2,
} from '../../src/explain/verdicts/conductorLimits.ts';
import { longestRun_m } from '../../src/explain/verdicts/circuit.ts';
import { disconnectionTime_s, loopLimit_ohm } from '../../src/explain/verdicts/disconnection.ts';
import { verdicts, type Verdict } from '../../src/explain/index.ts';
import { initialConditions, type Build } from '../../src/installation/index.ts';
import { designed, verdictOf } from '../explain/designed.ts';
import { unearthed } from '../explain/unearthed.ts';
import { asPrinted, within } from './asPrinted.ts';
import type { Published } from './published.ts';

const BS7671 = 'BS 7671:2018 table 41.3, seen second-hand';
const TABLE_41_1 = 'IEC 60364-4-41:2005 table 41.1, seen second-hand';
const TABLE_250_122 = 'NFPA 70 table 250.122, seen second-hand';
const R1_R2 = 'sum of IEC 60228 values, as tabulated by the trade, seen second-hand';

// Where the reprints with and without C_min = 0.95 disagree (B 32 A: 1.37 and 1.44 Ω) the later, careful one is taken.
const LOOPS: readonly (readonly ['b' | 'c' | 'd', number, string])[] = [
  ['b', 6, '7.28'],
  ['b', 10, '4.37'],
  ['b', 16, '2.73'],
  ['b', 20, '2.19'],
  ['b', 25, '1.75'],
  ['b', 32, '1.37'],
  ['b', 40, '1.09'],
  ['b', 50, '0.87'],
  ['b', 63, '0.69'],
  ['c', 6, '3.64'],
  ['c', 10, '2.19'],
  ['c', 16, '1.37'],
  ['c', 20, '1.09'],
  ['c', 32, '0.68'],
  ['c', 63, '0.35'],
  ['d', 10, '1.09'],
  ['d', 32, '0.34'],
];

/** The largest loop our verdict allows a machine behind this breaker, Ω. */
function allowed_ohm(type: 'b' | 'c' | 'd', rating_A: number): number {
  return verdictOf(designed({ family: `iec60898-${type}`, rating_A }), 'loop').limit ?? NaN;
}

const TIMES: readonly (readonly ['TN' | 'TT', number, string])[] = [
  ['TN', 120, '0.8'],
  ['TN', 230, '0.4'],
  ['TN', 400, '0.2'],
  ['TN', 690, '0.1'],
  ['TT', 120, '0.3'],
  ['TT', 230, '0.2'],
  ['TT', 400, '0.07'],
  ['TT', 690, '0.04'],
];

const GROUNDING: readonly (readonly [number, 'Cu' | 'Al', string])[] = [
  [15, 'Cu', '14 AWG'],
  [20, 'Cu', '12 AWG'],
  [60, 'Cu', '10 AWG'],
  [100, 'Cu', '8 AWG'],
  [200, 'Cu', '6 AWG'],
  [20, 'Al', '10 AWG'],
  [100, 'Al', '6 AWG'],
  [200, 'Al', '4 AWG'],
];

const SUMS: readonly (readonly [string, string, string])[] = [
  ['1.5', '1', '30.20'],
  ['2.5', '1.5', '19.51'],
  ['2.5', '2.5', '14.82'],
  ['4', '1.5', '16.71'],
  ['6', '2.5', '10.49'],
  ['10', '4', '6.44'],
  ['16', '6', '4.23'],
];

/** R1 + R2 of a metre as our verdict finds it, mΩ; reactance set aside. */
function sum_mohm(line: string, protective: string): number {
  const one = verdictOf(
    designed({ line: `${line} mm² Cu`, protective: `${protective} mm² Cu`, length_m: 1000 }),
    'loop',
  );
  // Half the published reactance of 0.08 mΩ/m belongs to each conductor.
  return Math.sqrt(one.value ** 2 - 0.16 ** 2);
}

/** A second fault as our verdict finds it, between lines or, where it is distributed, from a line to the neutral. */
function second(kind: 'second-fault' | 'loop', build: Build): Verdict {
  const all = verdicts(build, initialConditions(build.installation));
  const found = all.find((one) => one.kind === kind && one.other !== undefined);
  if (found === undefined) throw new RangeError(`second: no ${kind}`);
  return found;
}

const OF_35_mm2 = { resistance_ohm: 0.0321429 };

export const rows: readonly Published[] = [
  within(
    'IT, judged at two circuits of 64.3 mΩ each: a second fault draws 3 111 A',
    'French IEC installation handbook, from memory: 400 V round 128.6 mΩ',
    'A',
    3_111,
    0.003,
    'the winding of the judged circuit has 32 µΩ of its own',
    () => second('second-fault', unearthed({ line: OF_35_mm2, protective: OF_35_mm2 })).value,
  ),
  ...(
    [
      [false, '3.80', 'U/(2·Ia) between lines', 400],
      [true, '2.19', 'U0/(2·Ia) to the distributed neutral', 230.94],
    ] as const
  ).map(([neutral, ohm, condition, volts]) =>
    asPrinted(
      `IT, two circuits behind C 10 A: both loops together have at most ${ohm} Ω`,
      `IEC 60364-4-41 411.6.4, Zs ≤ ${condition}, seen second-hand; worked by hand: 0.95 · ${volts} V / 100 A`,
      'Ω',
      ohm,
      () => second('loop', unearthed({ neutral })).limit ?? NaN,
    ),
  ),
  ...LOOPS.map(([type, rating_A, ohm]) =>
    asPrinted(
      `behind ${type.toUpperCase()} ${rating_A} A at 230 V the loop has at most ${ohm} Ω`,
      BS7671,
      'Ω',
      ohm,
      () => allowed_ohm(type, rating_A),
    ),
  ),
  within(
    'without C_min a loop behind B 16 A has at most 2.87 Ω',
    'BS 7671:2008 table 41.3, seen second-hand',
    'Ω',
    2.87,
    0.002,
    'printed rounded down from 2.875',
    () => loopLimit_ohm(230, 80, 1),
  ),
  ...(
    [
      [0.03, 1667],
      [0.1, 500],
      [0.3, 167],
      [0.5, 100],
    ] as const
  ).map(([residual_A, ohm]) =>
    within(
      `an RCD of ${residual_A * 1000} mA allows a TT electrode of ${ohm} Ω at 50 V`,
      'IEC 60364-4-41:2005 411.5.3, R_A · IΔn ≤ 50 V, as tabulated by the trade, worked by hand',
      'Ω',
      ohm,
      0.003,
      'printed to the whole ohm',
      () => verdictOf(designed({ electrode_ohm: 20, residual_A }), 'loop').limit ?? NaN,
    ),
  ),
  ...TIMES.map(([earthing, volts, time]) =>
    within(
      `a final circuit of a ${earthing} supply at ${volts} V is dead in ${time} s`,
      TABLE_41_1,
      's',
      Number(time),
      0,
      'a limit is a limit: nothing is rounded',
      () => disconnectionTime_s(earthing, volts),
    ),
  ),
  ...GROUNDING.map(([rating_A, metal, size]) =>
    within(
      `behind ${rating_A} A the equipment grounding conductor has ${size} ${metal}`,
      TABLE_250_122,
      'AWG',
      Number.parseInt(size, 10),
      0,
      'a size is a size',
      () => Number.parseInt(groundingConductor(rating_A, metal) ?? '', 10),
    ),
  ),
  ...SUMS.map(([line, protective, sum]) =>
    within(
      `a metre of ${line} mm² out and ${protective} mm² home has ${sum} mΩ at 20 °C`,
      R1_R2,
      'mΩ',
      Number(sum),
      0.0015,
      'printed to three or four figures; ours counts five joints of 10 µΩ over a kilometre',
      () => sum_mohm(line, protective),
    ),
  ),
  within(
    'a 20 m run of 2.5/1.5 mm² at 70 °C behind 0.35 Ω draws 281 A',
    'worked by hand from IEC 60228 with the factor 1.20',
    'A',
    281,
    0.003,
    'printed to three figures, with 1.20 for the exact 1.1965',
    () => verdictOf(designed({ outside_ohm: 0.35, temperature_C: 70 }), 'fault-to-metal').value,
  ),
  within(
    'the same run behind 0.8 Ω has a loop of 1.268 Ω',
    'worked by hand from IEC 60228 with the factor 1.20',
    'Ω',
    1.268,
    0.002,
    'printed to four figures, with 1.20 for the exact 1.1965',
    () => verdictOf(designed({ outside_ohm: 0.8, temperature_C: 70 }), 'loop').value,
  ),
  within(
    'a 10/4 mm² run behind 0.8 Ω and B 45 A at 240 V reaches 35 m',
    'a published worked example, seen second-hand',
    'm',
    35,
    0.02,
    'printed to the whole metre',
    () => longest_m(0.8, 240 / 225),
  ),
  within(
    'the same run behind 0.35 Ω and C 45 A reaches 23 m',
    'a published worked example, seen second-hand',
    'm',
    23,
    0.035,
    'printed rounded down to the whole metre',
    () => longest_m(0.35, 240 / 450),
  ),
  asPrinted(
    '1500 A for 0.1 s needs 4.12 mm² of a core',
    'IEC 60364-5-54:2011 543.1.2, worked by hand',
    'mm²',
    '4.12',
    () => adiabatic_mm2(1500, 0.1, ADIABATIC_K.Cu),
  ),
  asPrinted(
    '1966 A for 0.1 s needs 13.5 mm² of armour at 90 °C',
    'a published worked example of IEC 60364-5-54, seen second-hand',
    'mm²',
    '13.5',
    () => adiabatic_mm2(1966, 0.1, 46),
  ),
  ...(
    [
      [10, 10],
      [25, 16],
      [35, 16],
      [70, 35],
    ] as const
  ).map(([line, protective]) =>
    asPrinted(
      `beside ${line} mm² the protective conductor has ${protective} mm² without a calculation`,
      'IEC 60364-5-54:2011 table 54.2, seen second-hand',
      'mm²',
      String(protective),
      () => tabulatedProtective_mm2(line),
    ),
  ),
  asPrinted('14 AWG has 2.08 mm²', 'ASTM B258, seen second-hand', 'mm²', '2.08', () => americanArea_mm2('14 AWG')),
];

/** Longest run of 10/4 mm² at 1.2 times 6.44 mΩ/m behind this outside loop, m. */
function longest_m(outside_ohm: number, limit_ohm: number): number {
  const metre = 0.00644 * 1.2;
  return longestRun_m({ re: outside_ohm + 10 * metre, im: 0 }, { re: 10 * metre, im: 0 }, 10, limit_ohm);
}
