import {
  bury,
  encasedRodResistance_ohm,
  hemisphereResistance_ohm,
  plateResistance_ohm,
  ringResistance_ohm,
  rodLoading_A,
  rodResistance_ohm,
  rodsResistance_ohm,
  rodWires,
  soils,
  stripResistance_ohm,
  surfacePotential_V,
  wireResistance_ohm,
  type Arrangement,
} from '../../src/earth/index.ts';
import { asPrinted, within } from './asPrinted.ts';
import type { Published } from './published.ts';

const INCH_m = 0.0254;
const FOOT_m = 0.3048;
const DWIGHT = 'Dwight, AIEE Trans. 55 (1936), formula seen second-hand, worked by hand apart from this code';
const MIL = 'MIL-HDBK-419A, seen in a copy';
const IEEE142 = 'IEEE Std 142, seen second-hand';

// Diameter m, length m, Ω in soil of 10, 50, 100, 300 and 1000 Ω·m, soil for 25 Ω.
// One page writes ln(4L/d) without the −1 and has 36.1 Ω for 16 mm × 3 m in 100 Ω·m; Dwight's 4L/a takes the radius: 33.5 Ω.
const RODS: readonly (readonly [string, number, number, readonly string[], number])[] = [
  ['1/2 in × 8 ft', 0.5 * INCH_m, 8 * FOOT_m, ['4.14', '20.7', '41.4', '124', '414'], 60.4],
  ['5/8 in × 8 ft', 0.625 * INCH_m, 8 * FOOT_m, ['3.99', '20.0', '39.9', '119.7', '399'], 62.6],
  ['5/8 in × 10 ft', 0.625 * INCH_m, 10 * FOOT_m, ['3.31', '16.5', '33.1', '99.3', '331'], 75.6],
  ['3/4 in × 10 ft', 0.75 * INCH_m, 10 * FOOT_m, ['3.21', '16.1', '32.1', '96.4', '321'], 77.8],
  ['5/8 in × 20 ft', 0.625 * INCH_m, 20 * FOOT_m, ['1.84', '9.18', '18.35', '55.1', '183.5'], 136],
  ['16 mm × 1.2 m', 0.016, 1.2, ['7.16', '35.8', '71.6', '215', '716'], 34.9],
  ['16 mm × 2.4 m', 0.016, 2.4, ['4.04', '20.2', '40.4', '121', '404'], 61.9],
  ['16 mm × 3 m', 0.016, 3, ['3.35', '16.7', '33.5', '100.5', '335'], 74.6],
];

const SOILS_ohm_m = [10, 50, 100, 300, 1000];

const rods: readonly Published[] = RODS.flatMap(([name, diameter_m, length_m, printed, for25]) => [
  ...printed.map((digits, column) =>
    asPrinted(`a rod of ${name} in ${SOILS_ohm_m[column]} Ω·m has ${digits} Ω`, DWIGHT, 'Ω', digits, () =>
      rodResistance_ohm(length_m, diameter_m / 2, SOILS_ohm_m[column] ?? NaN),
    ),
  ),
  within(`a rod of ${name} needs a soil of ${for25} Ω·m for 25 Ω`, DWIGHT, 'Ω', 25, 0.004, 'three figures', () =>
    rodResistance_ohm(length_m, diameter_m / 2, for25),
  ),
]);

const handbookRod = (soil_ohm_m: number) => rodResistance_ohm(10 * FOOT_m, 0.5 * INCH_m, soil_ohm_m);

/** Step of 3 ft from the rod as a share of its rise, with an even leak as the handbook's line formula has it. */
const stepShare = (length_ft: number): number => {
  const radius_m = 0.5 * INCH_m;
  const buried = bury([rodWires(length_ft * FOOT_m, radius_m, { pieces: 1 })], { kind: 'even', soil_ohm_m: 10 });
  const at = (x: number) => surfacePotential_V(buried, 0, { x, y: 0 }, 1);
  const head = (10 / (2 * Math.PI * length_ft * FOOT_m)) * Math.log((2 * length_ft * FOOT_m) / radius_m);
  return 1 - at(3 * FOOT_m) / head;
};

const single: readonly Published[] = [
  asPrinted('a rod of 3/4 in × 10 ft in 100 Ω·m has 32 Ω', MIL, 'Ω', '32', () =>
    rodResistance_ohm(10 * FOOT_m, 0.375 * INCH_m, 100),
  ),
  within(
    'a nomograph asks for 5/8 in × 20 ft for 20 Ω in 100 Ω·m',
    'an instrument manual, seen second-hand',
    'Ω',
    20,
    0.09,
    'read off a nomograph, which asks for the next whole length',
    () => rodResistance_ohm(20 * FOOT_m, 0.3125 * INCH_m, 100),
  ),
  within(
    'a rod of 1 in × 10 ft in 10 Ω·m at 20 kA makes a step of 41 400 V, 0.68 of its rise',
    MIL,
    'V',
    41_400,
    0.01,
    'the share is printed to two figures',
    () => 0.68 * 20_000 * handbookRod(10),
  ),
  ...(
    [
      [5, 0.75],
      [10, 0.68],
      [20, 0.61],
      [50, 0.53],
      [100, 0.48],
    ] as const
  ).map(([length_ft, share]) =>
    within(
      `a pace of 3 ft away from a 1 in rod of ${length_ft} ft spans ${share} of its rise`,
      MIL,
      '',
      share,
      0.06,
      'the handbook’s shares lie 0.01 to 0.025 below the line formula it prints beside them; the formula is followed',
      () => stepShare(length_ft),
    ),
  ),
  asPrinted('a rod of 5/8 in × 8 ft in 200 Ω·m bears 95 A for one second', IEEE142, 'A', '95', () =>
    rodLoading_A(8 * FOOT_m, 0.625 * INCH_m, 200, 1),
  ),
  asPrinted('a hemisphere of 0.5 m in 100 Ω·m has 31.83 Ω', DWIGHT, 'Ω', '31.83', () =>
    hemisphereResistance_ohm(0.5, 100),
  ),
  asPrinted('10 m of bare wire, radius 4 mm, 0.6 m deep, in 100 Ω·m have 15.04 Ω', DWIGHT, 'Ω', '15.04', () =>
    wireResistance_ohm(10, 0.004, 0.6, 100),
  ),
  asPrinted('30 m of bare wire, radius 5.24 mm, 0.76 m deep, in 100 Ω·m have 5.87 Ω', DWIGHT, 'Ω', '5.87', () =>
    wireResistance_ohm(30, 0.00524, 0.76, 100),
  ),
  asPrinted('20 m of strip 25 × 3 mm, 0.6 m deep, in 100 Ω·m have 8.11 Ω', DWIGHT, 'Ω', '8.11', () =>
    stripResistance_ohm(20, 0.025, 0.003, 0.6, 100),
  ),
  asPrinted('a ring of 10 m, wire of 10.6 mm, 0.75 m deep, in 100 Ω·m has 6.19 Ω', DWIGHT, 'Ω', '6.19', () =>
    ringResistance_ohm(10, 0.0106, 0.75, 100),
  ),
  asPrinted('a ring of 20 m, wire of 10.6 mm, 0.75 m deep, in 100 Ω·m has 3.44 Ω', DWIGHT, 'Ω', '3.44', () =>
    ringResistance_ohm(20, 0.0106, 0.75, 100),
  ),
  asPrinted('a plate of 0.6 × 0.6 m on edge, its middle 1.5 m deep, in 100 Ω·m has 39.6 Ω', DWIGHT, 'Ω', '39.6', () =>
    plateResistance_ohm(0.6, 1.5, 'upright', 100),
  ),
  asPrinted(
    'a bar of 15.9 mm × 3.05 m in 0.6 m of concrete of 30 Ω·m, in 100 Ω·m, has 19.8 Ω',
    'IEEE Std 142, formula from memory, worked by hand apart from this code',
    'Ω',
    '19.8',
    () => encasedRodResistance_ohm(3.05, 0.0159, 0.6, 30, 100),
  ),
];

const factor = (count: number, times: number, arrangement: Arrangement): number => {
  const length_m = 10 * FOOT_m;
  const radius_m = 0.3125 * INCH_m;
  const all = rodsResistance_ohm(count, times * length_m, arrangement, length_m, radius_m, 100);
  return (count * all) / rodResistance_ohm(length_m, radius_m, 100);
};

// One factor is printed for a line, a hollow triangle, a circle and a square. A line has up to a sixth less; the square, or the
// circle where the number doesn't go round a square, comes nearest.
const FACTORS = [
  [2, 1.16, 0.03],
  [3, 1.29, 0.03],
  [4, 1.36, 0.03],
  [8, 1.68, 0.04],
  [12, 1.8, 0.02],
  [16, 1.92, 0.02],
  [20, 2, 0.02],
  [24, 2.16, 0.07],
] as const;

const several: readonly Published[] = [
  ...FACTORS.map(([count, printed, tolerance]) =>
    within(
      `${count} rods one length apart have ${printed} times the part that each would have alone`,
      `${IEEE142}, table 14`,
      '',
      printed,
      tolerance,
      'one factor for all arrangements; ours are each solved, in a square or a circle',
      () => factor(count, 1, count % 4 === 0 ? 'square' : 'circle'),
    ),
  ),
  // Dwight prints two series; at s = L that for s > L gives 0.584 (10 ft) or 0.587 (8 ft), that for s < L 0.566. The closed form
  // behind both agrees with the latter, and with a numeric solution; it is followed.
  within(
    'two rods of 10 ft one length apart have 0.584 of one',
    DWIGHT,
    '',
    0.584,
    0.035,
    'the series for s > L is used beyond its reach there',
    () => factor(2, 1, 'line') / 2,
  ),
  asPrinted(
    'two rods of 10 ft four lengths apart have 0.519 of one',
    DWIGHT,
    '',
    '0.519',
    () => factor(2, 4, 'line') / 2,
  ),
  within(
    'two rods of 10 ft two lengths apart have 0.538 of one',
    DWIGHT,
    '',
    0.538,
    0.003,
    'the series for s > L, cut after the third term',
    () => factor(2, 2, 'line') / 2,
  ),
  asPrinted('two rods of 5/8 in × 8 ft, 6 ft apart, in 100 Ω·m have 23.26 Ω', DWIGHT, 'Ω', '23.26', () =>
    rodsResistance_ohm(2, 6 * FOOT_m, 'line', 8 * FOOT_m, 0.3125 * INCH_m, 100),
  ),
  within(
    '26 rods of 32 Ω round a site of 100 × 160 ft, 20 ft apart, have 1.76 Ω',
    MIL,
    'Ω',
    1.76,
    0.14,
    'its factor 0.055 is read off a graph, below IEEE 142’s; ours solves every pair, as 24 and 28 rods round a square',
    () =>
      (rodsResistance_ohm(24, 20 * FOOT_m, 'square', 10 * FOOT_m, 0.375 * INCH_m, 100) +
        rodsResistance_ohm(28, 20 * FOOT_m, 'square', 10 * FOOT_m, 0.375 * INCH_m, 100)) /
      2,
  ),
];

const NBS = 'NBS Technologic Paper 108, seen second-hand';
const MEASURED_SOILS = [
  ['ashes and cinders', '5.9', '23.7', '70', NBS],
  ['clay and loam', '3.4', '40.6', '163', NBS],
  ['clay with sand and gravel', '10.2', '158', '1350', NBS],
  ['sand and gravel', '590', '940', '4580', NBS],
] as const;

const named: readonly Published[] = [
  ...MEASURED_SOILS.flatMap(([name, least, mean, most, source]) => [
    asPrinted(`${name} has at least ${least} Ω·m`, source, 'Ω·m', least, () => soils[name].from_ohm_m),
    asPrinted(`${name} has ${mean} Ω·m in the mean`, source, 'Ω·m', mean, () => soils[name].typical_ohm_m),
    asPrinted(`${name} has at most ${most} Ω·m`, source, 'Ω·m', most, () => soils[name].to_ohm_m),
  ]),
  ...(['21', '200'] as const).map((digits, end) =>
    asPrinted(
      `wet concrete has ${end === 0 ? 'at least' : 'at most'} ${digits} Ω·m`,
      'IEEE Std 80-2013 table 7, from memory',
      'Ω·m',
      digits,
      () => soils['wet concrete'][end === 0 ? 'from_ohm_m' : 'to_ohm_m'],
    ),
  ),
];

/** Electrodes by formula, and soil. */
export const rows: readonly Published[] = [...rods, ...single, ...several, ...named];
