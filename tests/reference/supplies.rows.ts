import type { Published } from './published.ts';
import { measured, type Circuit } from './bench.ts';

type Transformer = Circuit['parts'][string];

const BOLT = 'the bolt of the fault is 10 µΩ';
const ROUNDED = 'printed to whole amperes after the full-load current was rounded';

const bolt = (a: string, b: string): Transformer => ({
  kind: 'impedance',
  between: [a, b],
  resistance_ohm: 0,
  as: 'fault',
});

/** Amperes of a bolted fault between two terminals of a transformer. */
const bolted = (transformer: Transformer, a: string, b: string): number =>
  measured({ parts: { winding: transformer, fault: bolt(`winding.${a}`, `winding.${b}`) } }).amperes('fault');

/** Amperes of a bolted three-phase fault: three bolts to one bar. */
const boltedThreePhase = (transformer: Transformer): number =>
  measured({
    parts: {
      winding: transformer,
      bar: { kind: 'fitting' },
      'fault a': bolt('winding.a', 'bar'),
      'fault b': bolt('winding.b', 'bar'),
      'fault c': bolt('winding.c', 'bar'),
    },
  }).amperes('fault a');

// Single-phase 120/240 V: kVA, %Z, amperes line to neutral.
const splitPhase = [
  [25, 1.5, 12_175],
  [37.5, 1.5, 18_018],
  [50, 1.5, 23_706],
  [75, 1.5, 34_639],
  [100, 1.6, 42_472],
  [167, 1.6, 66_644],
] as const;

// Three-phase, infinite primary, Z × 0.9: kVA, volts, %Z, amperes.
const northAmerican = [
  [45, 208, 1.0, 13_879],
  [75, 208, 1.0, 23_131],
  [112.5, 208, 1.11, 31_258],
  [150, 208, 1.07, 43_236],
  [225, 208, 1.12, 61_958],
  [300, 208, 1.11, 83_355],
  [500, 208, 1.24, 124_360],
  [750, 208, 3.5, 66_089],
  [1000, 208, 3.5, 88_118],
  [75, 480, 1.0, 10_023],
  [112.5, 480, 1.0, 15_035],
  [150, 480, 1.2, 16_706],
  [225, 480, 1.2, 25_059],
  [300, 480, 1.2, 33_411],
  [500, 480, 1.3, 51_402],
  [750, 480, 3.5, 28_638],
  [1000, 480, 3.5, 38_185],
  [1500, 480, 3.5, 57_277],
  [2000, 480, 4.0, 66_823],
  [2500, 480, 4.0, 83_529],
] as const;

// 400 V, 50 Hz: kVA, short-circuit impedance %, amperes of a three-phase fault.
const european = [
  [50, 4, 1_804],
  [100, 4, 3_608],
  [160, 4, 5_774],
  [250, 4, 9_021],
  [315, 4, 11_367],
  [400, 4, 14_434],
  [500, 4, 18_042],
  [630, 4, 22_733],
  [800, 6, 19_245],
  [1000, 6, 24_056],
  [1250, 6, 30_070],
  [1600, 6, 38_490],
  [2500, 6, 60_141],
] as const;

const wye = (rating_VA: number, secondary_V: number, impedance_percent: number): Transformer => ({
  kind: 'three-phase-transformer',
  rating_VA,
  secondary_V,
  impedance_percent,
  x_over_r: 5,
});

/** Published short-circuit currents at the terminals of transformers. */
export const rows: readonly Published[] = [
  ...splitPhase.map(([kVA, percent, printed]): Published => ({
    what: `a ${kVA} kVA, 120/240 V transformer of ${percent} % gives ${printed} A from line to neutral at its terminals`,
    source: 'fuse-maker short-circuit handbooks, worst case with a 100 000 kVA primary, from memory',
    unit: 'A',
    printed,
    within: 0.005,
    because: BOLT,
    computed: () =>
      bolted(
        {
          kind: 'centre-tapped-transformer',
          rating_VA: kVA * 1000,
          impedance_percent: percent * 0.9,
          x_over_r: 3,
          primary_VA: 1e8,
        },
        'x1',
        'x2',
      ),
  })),
  ...(
    [
      [0, 1.3333],
      [1, 1.4724],
      [3, 1.6217],
      [10, 1.662],
    ] as const
  ).map(([x_over_r, printed]): Published => ({
    what: `with X/R ${x_over_r} a fault to the neutral of a centre-tapped winding is ${printed} times the one between the lines`,
    source:
      'Kersting, IEEE Trans. Ind. Appl. 45(2), 2009, T model of the interlaced winding; coefficients from memory, ratio computed',
    unit: '',
    printed,
    within: 1e-4,
    because: 'printed to four decimals',
    computed: () => {
      const weak = { kind: 'centre-tapped-transformer', rating_VA: 100, impedance_percent: 4, x_over_r } as const;
      return bolted(weak, 'x1', 'x2') / bolted(weak, 'x1', 'x3');
    },
  })),
  ...northAmerican.map(([kVA, volts, percent, printed]): Published => ({
    what: `a ${kVA} kVA, ${volts} V three-phase transformer of ${percent} % gives ${printed} A at its terminals`,
    source:
      'fuse-maker short-circuit handbooks, infinite primary, Z × 0.9; %Z from memory, I = S/(√3·U)/(0.9·Z) computed',
    unit: 'A',
    printed,
    within: 0.004,
    because: BOLT,
    computed: () => boltedThreePhase(wye(kVA * 1000, volts, percent * 0.9)),
  })),
  {
    what: 'a pad-mounted 1000 kVA, 480 V transformer of 5.75 % gives 20 924 A',
    source: 'IEEE C57.12.34 impedance, as worked in a plan-review forum, seen second-hand',
    unit: 'A',
    printed: 20_924,
    within: 0.002,
    because: ROUNDED,
    computed: () => boltedThreePhase(wye(1e6, 480, 5.75)),
  },
  ...european.map(([kVA, percent, printed]): Published => ({
    what: `a ${kVA} kVA, 400 V transformer of ${percent} % gives ${printed} A`,
    source: 'EN 50588-1:2015 impedances, from memory; I = S/(√3·U)/u computed',
    unit: 'A',
    printed,
    within: 0.004,
    because: BOLT,
    computed: () => boltedThreePhase(wye(kVA * 1000, 400, percent)),
  })),
];
