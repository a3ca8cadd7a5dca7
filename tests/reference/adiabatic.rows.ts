import { adiabaticFactor, adiabaticLimit_s, iceaFactor, peakFactor, type Metal } from '../../src/protection/index.ts';
import type { Published } from './published.ts';

const ANNEX_A = 'IEC 60364-5-54:2011 annex A, tables A.54.2 to A.54.6, seen second-hand';

/** Use, °C from and to, then k as printed for copper, aluminium, steel, lead; 0 where none is printed. */
const factors: readonly (readonly [string, number, number, number, number, number, number])[] = [
  ['a protective conductor by itself in PVC', 30, 160, 143, 95, 52, 0],
  ['a protective conductor by itself in butyl rubber', 30, 220, 166, 110, 60, 0],
  ['a protective conductor by itself in XLPE', 30, 250, 176, 116, 64, 0],
  ['a core of a cable with PVC', 70, 160, 115, 76, 0, 0],
  ['a core over 300 mm² with PVC', 70, 140, 103, 68, 0, 0],
  ['a core with 90 °C PVC', 90, 160, 100, 66, 0, 0],
  ['a core in butyl rubber', 85, 220, 134, 89, 0, 0],
  ['a core in XLPE', 90, 250, 143, 94, 0, 0],
  ['a core in 60 °C rubber', 60, 200, 141, 93, 0, 0],
  ['armour of a 70 °C cable', 60, 200, 0, 93, 51, 26],
  ['armour of a 90 °C cable', 80, 200, 0, 85, 46, 23],
  ['a bare conductor in normal surroundings', 30, 200, 159, 105, 58, 0],
  ['a bare conductor where fire is a risk', 30, 150, 138, 91, 50, 0],
];
const METALS: readonly Metal[] = ['Cu', 'Al', 'steel', 'Pb'];

const byFormula = factors.flatMap(([use, from_C, to_C, ...printed]): Published[] =>
  printed.flatMap((k, index) => {
    const metal = METALS[index];
    if (k === 0 || metal === undefined) return [];
    return [
      {
        what: `k of ${use}, ${metal}, from ${from_C} to ${to_C} °C`,
        source: ANNEX_A,
        unit: 'A·√s/mm²',
        printed: k,
        // 23 for lead is 23.5 by the printed formula; the rest is within 1 %.
        within: k < 30 ? 0.022 : 0.015,
        because: 'the tables are rounded to whole numbers, not always the nearest',
        computed: () => adiabaticFactor(metal, from_C, to_C),
      },
    ];
  }),
);

/** Metal, °C from and to, I·√t / A as computed from the printed constants, A per circular mil. */
const ICEA: readonly (readonly ['Cu' | 'Al', number, number, number])[] = [
  ['Cu', 75, 150, 0.0529],
  ['Cu', 75, 250, 0.076],
  ['Cu', 90, 250, 0.0719],
  ['Al', 75, 150, 0.0346],
  ['Al', 75, 250, 0.0497],
  ['Al', 90, 250, 0.047],
];
const CMIL_PER_MM2 = 1973.525;

const icea = ICEA.map(([metal, from_C, to_C, printed]): Published => ({
  what: `a ${metal} conductor stands ${printed} A√s per circular mil from ${from_C} to ${to_C} °C`,
  source: 'ICEA P-32-382, constants from memory',
  unit: 'A·√s/cmil',
  printed,
  within: 0.002,
  because: 'three figures',
  computed: () => iceaFactor(metal, from_C, to_C) / CMIL_PER_MM2,
}));

/** AWG, circular mils (NEC chapter 9 table 8), the current it stands for five seconds, A. */
const FIVE_SECONDS: readonly (readonly [string, number, number])[] = [
  ['14', 4110, 97.3],
  ['12', 6530, 154.6],
  ['10', 10380, 245.7],
];

const fiveSeconds = FIVE_SECONDS.map(([size, cmil, printed]): Published => ({
  what: `${size} AWG copper stands ${printed} A for 5 s`,
  source: 'ICEA P-32-382 with 75 to 150 °C: one ampere per 42.25 circular mils, seen in the source',
  unit: 'A',
  printed,
  within: 0.002,
  because: '42.25 is a rounded factor',
  computed: () => Math.sqrt(adiabaticLimit_s({ k: iceaFactor('Cu', 75, 150), size_mm2: cmil / CMIL_PER_MM2 }, 1) / 5),
}));

const size_mm2 = (k: number, amperes: number, time_s: number): number =>
  Math.sqrt(time_s / adiabaticLimit_s({ k, size_mm2: 1 }, amperes));

const worked: readonly Published[] = [
  {
    what: '95 mm² copper in XLPE stands 13.6 kA for 1 s',
    source: 'IEC 60949:1988, adiabatic part of a worked example, seen second-hand',
    unit: 'kA',
    printed: 13.6,
    within: 0.003,
    because: 'three figures',
    computed: () => (adiabaticFactor('Cu', 90, 250) * 95) / 1000,
  },
  {
    what: 'one ampere for 5 s wants 42.25 circular mils of copper',
    source: 'ICEA P-32-382, 75 to 150 °C, seen in the source',
    unit: 'cmil',
    printed: 42.25,
    within: 0.001,
    because: 'four figures against constants of three',
    computed: () => size_mm2(iceaFactor('Cu', 75, 150), 1, 5) * CMIL_PER_MM2,
  },
  {
    what: '1500 A for 0.1 s at k 115 want 4.12 mm²',
    source: 'IEC 60364-5-54 543.1.2 by arithmetic',
    unit: 'mm²',
    printed: 4.12,
    within: 0.002,
    because: 'three figures',
    computed: () => size_mm2(115, 1500, 0.1),
  },
  {
    what: '1000 A for 0.4 s at k 143 want 4.42 mm²',
    source: 'IEC 60364-5-54 543.1.2 by arithmetic',
    unit: 'mm²',
    printed: 4.42,
    within: 0.002,
    because: 'three figures',
    computed: () => size_mm2(143, 1000, 0.4),
  },
  {
    what: '1966 A for 0.1 s want 13.5 mm² of steel armour of a 90 °C cable',
    source: 'a worked example of BS 7671 543.1.3, k 46, seen second-hand',
    unit: 'mm²',
    printed: 13.5,
    within: 0.015,
    because: 'three figures, and the printed k is 46 where its formula gives 46.6',
    computed: () => size_mm2(adiabaticFactor('steel', 80, 200), 1966, 0.1),
  },
  {
    what: '14 AWG (2.08 mm²) stands 318 A for 0.875 s at k 143',
    source: 'IEC 60364-5-54 543.1.2 by arithmetic',
    unit: 's',
    printed: 0.875,
    within: 0.001,
    because: 'three figures',
    computed: () => adiabaticLimit_s({ k: 143, size_mm2: 2.08 }, 318),
  },
  {
    what: '14 AWG (2.08 mm²) stands 318 A for 0.566 s at k 115',
    source: 'IEC 60364-5-54 543.1.2 by arithmetic',
    unit: 's',
    printed: 0.566,
    within: 0.001,
    because: 'three figures',
    computed: () => adiabaticLimit_s({ k: 115, size_mm2: 2.08 }, 318),
  },
];

/** X/R, κ, κ√2. */
const PEAKS: readonly (readonly [number, number, number])[] = [
  [0.1, 1.02, 1.443],
  [0.5, 1.0224, 1.446],
  [1, 1.0688, 1.512],
  [1.5, 1.1526, 1.63],
  [2, 1.2387, 1.752],
  [3, 1.3805, 1.952],
  [5, 1.5578, 2.203],
  [8, 1.6935, 2.395],
  [10, 1.746, 2.469],
  [14, 1.811, 2.561],
  [20, 1.8635, 2.635],
];

const peaks = PEAKS.flatMap(([xOverR, kappa, peak]): Published[] => [
  {
    what: `the first peak at X/R ${xOverR} is ${kappa} times that of the steady wave`,
    source: 'IEC 60909-0:2016 4.3.1, formula seen second-hand',
    unit: '',
    printed: kappa,
    within: 5e-5,
    because: 'five figures',
    computed: () => peakFactor(xOverR),
  },
  {
    what: `the first peak at X/R ${xOverR} is ${peak} times the r.m.s. current`,
    source: 'IEC 60909-0:2016 4.3.1, formula seen second-hand',
    unit: '',
    printed: peak,
    within: 5e-4,
    because: 'four figures',
    computed: () => Math.SQRT2 * peakFactor(xOverR),
  },
]);

/** What conductors stand without loss of heat, and the first peak of a short circuit. */
export const rows: readonly Published[] = [...byFormula, ...icea, ...fiveSeconds, ...worked, ...peaks];
