import { perMetre, readConductor, tableTemperature_C, type Raceway } from '../../src/installation/conductor.ts';
import { coreMetre } from '../../src/installation/core.ts';
import { partKind, partSchema } from '../../src/installation/parts/index.ts';
import { asPrinted, within } from './asPrinted.ts';
import { iecSizes, necDirect, necRaceways } from './conductorTables.ts';
import type { Published } from './published.ts';

const TABLE_8 = 'NFPA 70 chapter 9 table 8, seen second-hand';
const TABLE_9 = 'NFPA 70 chapter 9 table 9, seen second-hand';
const IEC_60228 = 'IEC 60228, seen second-hand';
const R1_R2 = 'tables of practice beside BS 7671, seen second-hand';
const SWA = 'makers’ tables to BS 5467 and BS 6724, seen second-hand';

const KFT_m = 304.8;

/** Ohms of a metre as the tables of the code have it. */
function metre(text: string, temperature_C?: number, raceway: Raceway = 'none') {
  const conductor = readConductor(text);
  if (conductor === undefined) throw new Error(`no table has ${text}`);
  return perMetre(conductor, {
    temperature_C: temperature_C ?? tableTemperature_C(conductor),
    frequency_Hz: conductor.system === 'AWG' ? 60 : 50,
    raceway,
  });
}

const kft = (text: string, temperature_C?: number): number => metre(text, temperature_C).resistance_ohm_m * KFT_m;
const km = (text: string, temperature_C?: number): number => metre(text, temperature_C).resistance_ohm_m * 1000;

const direct = necDirect.map(([text, digits]) =>
  asPrinted(`${text} has ${digits} Ω/kft at 75 °C, d.c.`, TABLE_8, 'Ω/kft', digits, () => kft(text)),
);

const raceways = necRaceways.flatMap(([text, raceway, r, x]): readonly Published[] => [
  asPrinted(
    `${text} in ${raceway} conduit has ${r} Ω/kft, a.c.`,
    TABLE_9,
    'Ω/kft',
    r,
    () => KFT_m * metre(text, 75, raceway).resistance_ohm_m,
  ),
  asPrinted(
    `${text} in ${raceway} conduit has a reactance of ${x} Ω/kft`,
    TABLE_9,
    'Ω/kft',
    x,
    () => KFT_m * metre(text, 75, raceway).reactance_ohm_m,
  ),
]);

const sizes = iecSizes.map(([text, digits]) =>
  asPrinted(`${text} has at most ${digits} Ω/km at 20 °C`, IEC_60228, 'Ω/km', digits, () => km(text)),
);

const hot = (
  [
    ['14 AWG Cu', 25, 2.574],
    ['2 AWG Al', 20, 0.2611],
    ['12 AWG Cu', 90, 2.0235],
  ] as const
).map(([text, temperature_C, printed]) =>
  within(
    `${text} at ${temperature_C} °C has ${printed} Ω/kft`,
    'NFPA 70 chapter 9 table 8 note 2, computed by hand from the formula printed there',
    'Ω/kft',
    printed,
    2e-4,
    'computed to four figures',
    () => kft(text, temperature_C),
  ),
);

// The factors that bring a measured value back to 20 °C are 250/(230 + t): α = 0.004, where copper has 0.00393.
const back = (
  [
    [5, 1.064],
    [10, 1.042],
    [15, 1.02],
    [25, 0.98],
    [30, 0.962],
    [40, 0.926],
    [50, 0.893],
    [60, 0.862],
    [70, 0.833],
    [75, 0.82],
    [90, 0.781],
    [100, 0.758],
  ] as const
).map(([temperature_C, printed]) =>
  within(
    `a copper conductor measured at ${temperature_C} °C is brought back to 20 °C by the factor ${printed}`,
    'IEC 60228 table of correction factors, seen second-hand',
    '',
    printed,
    0.005,
    'the standard simplifies the coefficient of copper, 0.00393, to 0.004',
    () => km('2.5 mm² Cu', 20) / km('2.5 mm² Cu', temperature_C),
  ),
);

const effective = (
  [
    ['14 AWG Cu', 2.7],
    ['12 AWG Cu', 1.7],
    ['10 AWG Cu', 1.1],
    ['8 AWG Cu', 0.69],
    ['6 AWG Cu', 0.44],
  ] as const
).map(([text, printed]) =>
  within(
    `${text} in PVC has an effective impedance of ${printed} Ω/kft at a power factor of 0.85`,
    TABLE_9,
    'Ω/kft',
    printed,
    0.05,
    'the table’s own R is rounded to two figures before',
    () => {
      const { resistance_ohm_m, reactance_ohm_m } = metre(text, 75, 'pvc');
      return KFT_m * (resistance_ohm_m * 0.85 + reactance_ohm_m * Math.sqrt(1 - 0.85 ** 2));
    },
  ),
);

// Some copies swap 1.5/1.5 with 1.5/1 and print 2.5/2.5 as 18.1, 4/2.5 as 12.9, 6/4 as 8.4: these are the sums of IEC 60228.
const sums = (
  [
    ['1', '1', '36.20'],
    ['1.5', '1', '30.20'],
    ['1.5', '1.5', '24.20'],
    ['2.5', '1', '25.51'],
    ['2.5', '1.5', '19.51'],
    ['2.5', '2.5', '14.82'],
    ['4', '1.5', '16.71'],
    ['4', '2.5', '12.02'],
    ['4', '4', '9.22'],
    ['6', '2.5', '10.49'],
    ['6', '4', '7.69'],
    ['6', '6', '6.16'],
    ['10', '4', '6.44'],
    ['10', '6', '4.91'],
    ['10', '10', '3.66'],
    ['16', '6', '4.23'],
    ['16', '10', '2.98'],
    ['16', '16', '2.30'],
    ['25', '10', '2.557'],
    ['25', '16', '1.877'],
    ['35', '16', '1.674'],
  ] as const
).map(([line, protective, digits]) =>
  asPrinted(
    `a line of ${line} mm² with a protective conductor of ${protective} mm² has ${digits} mΩ/m`,
    R1_R2,
    'mΩ/m',
    digits,
    () => km(`${line} mm² Cu`) + km(`${protective} mm² Cu`),
  ),
);

const core_mohm_m = (text: string): number => {
  const core = coreMetre(text, { frequency_Hz: 50, raceway: 'none' });
  if (core === undefined) throw new Error(`no table has ${text}`);
  return 1000 * core.resistance_ohm_m;
};

const conduits = (
  [
    ['EMT 1/2', 2.44],
    ['EMT 3/4', 1.59],
    ['EMT 1', 1.08],
    ['rigid 1/2', 0.89],
    ['rigid 3/4', 0.674],
    ['rigid 1', 0.455],
  ] as const
).map(([text, printed]) =>
  within(
    `${text} conduit has ${printed} mΩ/m, d.c.`,
    'steel of 1.38e-7 Ω·m (IEC practice) on the dimensions of ANSI C80.1 and C80.3, from memory, computed by hand',
    'mΩ/m',
    printed,
    0.003,
    'computed to three figures',
    () => core_mohm_m(text),
  ),
);

const steel: readonly (readonly [string, readonly string[]])[] = [
  ['1.5', ['10.2', '9.5', '8.8', '8.2']],
  ['2.5', ['8.8', '8.2', '7.7', '6.8']],
  ['4', ['7.9', '7.5', '6.8', '6.2']],
  ['6', ['7.0', '6.7', '4.3', '3.9']],
];

const armours = [
  ...steel.flatMap(([size, printed]) =>
    printed.map((digits, at) =>
      asPrinted(
        `the steel armour of ${size} mm² cable with ${at + 2} cores has ${digits} Ω/km`,
        SWA,
        'Ω/km',
        digits,
        () => core_mohm_m(`SWA ${size} mm² ${at + 2}-core`),
      ),
    ),
  ),
  ...(
    [
      ['10', 5.84],
      ['16', 3.61],
      ['25', 3.61],
      ['35', 2.53],
      ['50', 2.23],
      ['70', 1.9],
      ['95', 1.34],
      ['120', 1.21],
    ] as const
  ).map(([size, printed]) =>
    within(
      `the steel armour of two-core ${size} mm² cable has ${printed} Ω/km`,
      'section by BS 5467, seen second-hand; 138 Ω·mm²/km and a tenth for the lay, computed by hand',
      'Ω/km',
      printed,
      0.0042,
      'computed to three figures',
      () => core_mohm_m(`SWA ${size} mm² 2-core`),
    ),
  ),
  ...(
    [
      ['50', '1.3'],
      ['70', '0.75'],
      ['95', '0.67'],
      ['120', '0.61'],
      ['150', '0.42'],
      ['185', '0.38'],
      ['240', '0.34'],
    ] as const
  ).map(([size, digits]) =>
    asPrinted(`the aluminium armour of ${size} mm² single-core cable has ${digits} Ω/km`, SWA, 'Ω/km', digits, () =>
      core_mohm_m(`AWA ${size} mm²`),
    ),
  ),
];

const pipes = (
  [
    [15, 0.7, 0.548],
    [22, 0.9, 0.289],
    [28, 0.9, 0.225],
  ] as const
).map(([outside_mm, wall_mm, printed]) =>
  within(
    `a copper water pipe of ${outside_mm} × ${wall_mm} mm has ${printed} mΩ/m`,
    'copper of the IACS, 1.7241e-8 Ω·m, on the dimensions of EN 1057, computed by hand',
    'mΩ/m',
    printed,
    0.003,
    'computed to three figures',
    () => {
      const part = partSchema.parse({
        kind: 'pipe',
        earth_resistance_ohm: 3,
        material: 'copper',
        length_m: 1,
        outside_mm,
        wall_mm,
      });
      const { branches } = partKind('pipe').plan('pipe', part, { region: 'iec', frequency_Hz: 50 });
      return 1000 * (branches.find(({ name }) => name === 'pipe.metal')?.resistance_ohm ?? NaN);
    },
  ),
);

/** Conductors, conduits, armour and pipes. */
export const rows: readonly Published[] = [
  ...direct,
  ...raceways,
  ...sizes,
  ...hot,
  ...back,
  ...effective,
  ...sums,
  ...conduits,
  ...armours,
  ...pipes,
];
