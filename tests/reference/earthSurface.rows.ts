import {
  buriedResistance_ohm,
  bury,
  footResistance_ohm,
  gridWires,
  gridWire_m,
  hemisphereResistance_ohm,
  laurentNiemann_ohm,
  rodWires,
  schwarz_ohm,
  SIXTY_TWO_PERCENT,
  surfaceDerating,
  surfacePotential_V,
  surfaceProfile,
  sverak_ohm,
  tolerableStep_V,
  tolerableTouch_V,
  wennerResistivity_ohm_m,
  type Grid,
} from '../../src/earth/index.ts';
import { asPrinted, within } from './asPrinted.ts';
import type { Published } from './published.ts';

const INCH_m = 0.0254;
const FOOT_m = 0.3048;
const DWIGHT = 'Dwight, AIEE Trans. 55 (1936), formula seen second-hand, worked by hand apart from this code';
const MIL = 'MIL-HDBK-419A, seen in a copy';
const IEEE80 = 'IEEE Std 80-2013, formulas seen second-hand, worked by hand apart from this code';
const ANNEX_B = 'IEEE Std 80-2013 annex B, from memory';
const SHELDRAKE = 'Sheldrake, Handbook of Electrical Engineering, appendix H, seen in an excerpt';

const square: Grid = {
  length_m: 70,
  width_m: 70,
  lengthwise: 11,
  crosswise: 11,
  depth_m: 0.5,
  wire_radius_m: 0.005,
};
const oblong: Grid = { ...square, length_m: 84, width_m: 63, lengthwise: 10, crosswise: 13 };
const annexSoil = { kind: 'even', soil_ohm_m: 400 } as const;
const sixMeshes: Grid = { length_m: 10, width_m: 10, lengthwise: 6, crosswise: 6, depth_m: 0.5, wire_radius_m: 0.005 };
const sheldrake = (grid_ohm_m: number) =>
  schwarz_ohm(sixMeshes, { count: 6, length_m: 50, radius_m: 0.01 }, grid_ohm_m, [1.15, 4.75]);

const grids: readonly Published[] = [
  asPrinted('a grid of 70 × 70 m with 11 by 11 wires has 1540 m of wire', ANNEX_B, 'm', '1540', () =>
    gridWire_m(square),
  ),
  asPrinted('that grid, 0.5 m deep in 400 Ω·m, has 2.78 Ω after Sverak', ANNEX_B, 'Ω', '2.78', () =>
    sverak_ohm(4900, gridWire_m(square), 0.5, 400),
  ),
  asPrinted('with 20 rods of 7.5 m it has 2.75 Ω after Sverak', ANNEX_B, 'Ω', '2.75', () =>
    sverak_ohm(4900, gridWire_m(square) + 20 * 7.5, 0.5, 400),
  ),
  within(
    'at 1908 A it rises to 5304 V',
    ANNEX_B,
    'V',
    5304,
    0.002,
    'worked there from the rounded 2.78 Ω',
    () => 1908 * sverak_ohm(4900, gridWire_m(square), 0.5, 400),
  ),
  asPrinted('a grid of 63 × 84 m with 38 rods of 10 m has 2.62 Ω after Sverak', ANNEX_B, 'Ω', '2.62', () =>
    sverak_ohm(63 * 84, gridWire_m(oblong) + 38 * 10, 0.5, 400),
  ),
  within(
    'a computer program has 2.67 Ω for the square grid',
    ANNEX_B,
    'Ω',
    2.67,
    0.015,
    'two programs with segments of different length',
    () => buriedResistance_ohm(gridWires(square), annexSoil),
  ),
  within(
    'a computer program has 984.3 V to touch in the corner mesh of the square grid',
    ANNEX_B,
    'V',
    984.3,
    0.07,
    'it is not said where in the mesh; ours is in its middle',
    () => {
      const buried = bury([gridWires(square)], annexSoil);
      const rise_V = 1908 * (buried.resistance_ohm[0]?.[0] ?? NaN);
      return rise_V - surfacePotential_V(buried, 0, { x: 31.5, y: 31.5 }, 1908);
    },
  ),
  within(
    'Laurent and Niemann have the same square grid within a few per cent of Sverak’s 2.78 Ω',
    ANNEX_B,
    'Ω',
    2.78,
    0.01,
    'a simpler formula, without the depth',
    () => laurentNiemann_ohm(4900, gridWire_m(square), 400),
  ),
  ...(
    [
      ['the grid alone has 227.86 Ω', 227.86, () => sheldrake(5000).grid],
      ['its rods alone have 17.541 Ω', 17.541, () => sheldrake(1000).rods],
      ['between grid and rods lie 30.82 Ω', 30.82, () => sheldrake(1000).mutual],
    ] as const
  ).map(([what, printed, computed]) =>
    within(
      `10 × 10 m of grid with rods of 50 m: ${what} after Schwarz`,
      SHELDRAKE,
      'Ω',
      printed,
      0.003,
      'rounded between the steps; k₁ = 1.15 and k₂ = 4.75 as read there',
      computed,
    ),
  ),
];

const flushRod = () => bury([rodWires(10 * FOOT_m, 0.3125 * INCH_m, { pieces: 1 })], { kind: 'even', soil_ohm_m: 100 });

const surface: readonly Published[] = [
  ...(
    [
      ['0.5', '3183.1'],
      ['1', '1591.5'],
      ['2', '795.8'],
      ['3', '530.5'],
      ['5', '318.3'],
      ['10', '159.2'],
      ['20', '79.6'],
    ] as const
  ).map(([distance, volts]) =>
    asPrinted(
      `100 A into a hemisphere in 100 Ω·m: ${volts} V at ${distance} m`,
      DWIGHT,
      'V',
      volts,
      () => 100 * hemisphereResistance_ohm(Number(distance), 100),
    ),
  ),
  ...(
    [
      ['0.3', '157.4'],
      ['0.5', '130.9'],
      ['1', '95.7'],
      ['2', '63.1'],
      ['3', '46.6'],
      ['5', '30.1'],
      ['10', '15.7'],
      ['20', '7.9'],
    ] as const
  ).map(([distance, volts]) =>
    asPrinted(
      `10 A into a flush rod of 5/8 in × 10 ft in 100 Ω·m, leaking evenly: ${volts} V at ${distance} m`,
      'line source ρI/(2πL)·asinh(L/x), worked by hand apart from this code',
      'V',
      volts,
      () => surfacePotential_V(flushRod(), 0, { x: Number(distance), y: 0 }, 10),
    ),
  ),
  // The line formula has 346.9 V at the rod's skin, Dwight's R·I is 330.9 V: the rise is taken as R·I.
  within(
    '10 A into that rod leave 235 V between it and feet at 1 m',
    'Dwight and line source, worked by hand apart from this code',
    'V',
    235,
    0.005,
    'printed to three figures, from 331 − 96',
    () => surfaceProfile(flushRod(), 0, 10, [1])[0]?.touch_V ?? NaN,
  ),
  ...(
    [
      [10, 0.85],
      [100, 0.89],
    ] as const
  ).map(([length_ft, share]) =>
    within(
      `${share} of the resistance of a 1 in rod of ${length_ft} ft lies within its length`,
      MIL,
      '',
      share,
      0.012,
      'printed to two figures',
      () => {
        const length_m = length_ft * FOOT_m;
        const buried = bury([rodWires(length_m, 0.5 * INCH_m, { pieces: 1 })], { kind: 'even', soil_ohm_m: 100 });
        const head = (100 / (2 * Math.PI * length_m)) * Math.log((4 * length_m) / INCH_m);
        return 1 - surfacePotential_V(buried, 0, { x: length_m, y: 0 }, 1) / head;
      },
    ),
  ),
];

// ρ, ρ_s Ω·m, h_s m, t s; C_s, touch and step of 50 kg, touch and step of 70 kg.
const LAYERS = [
  [400, 2500, 0.102, 0.5, '0.7429', '621.0', '1992.0', '840.5', '2696.1'],
  [100, 2500, 0.1, 0.5, '0.7021', '595.9', '1891.7', '806.6', '2560.3'],
  [100, 3000, 0.15, 0.5, '0.7769', '737.6', '2458.2', '998.3', '3327.1'],
  [50, 10_000, 0.1, 0.3, '0.6912', '2407.6', '8995.1', '3258.6', '12174.4'],
  [200, 5000, 0.15, 1, '0.7785', '793.3', '2825.0', '1073.6', '3823.6'],
  [100, 100, 0.1, 0.5, '1.0000', '188.7', '262.5', '255.3', '355.3'],
] as const;

const limits: readonly Published[] = [
  ...LAYERS.flatMap(([soil, surface_ohm_m, thick, time_s, derate, touch50, step50, touch70, step70]) => {
    const where = `${surface_ohm_m} Ω·m, ${thick} m thick, on ${soil} Ω·m, ${time_s} s`;
    const derating = surfaceDerating(soil, surface_ohm_m, thick);
    const on = (mass_kg: 50 | 70) => ({ mass_kg, time_s, surface_ohm_m, derating });
    return [
      asPrinted(`${where}: the layer counts ${derate}`, IEEE80, '', derate, () => derating),
      asPrinted(`${where}: 50 kg may touch ${touch50} V`, IEEE80, 'V', touch50, () => tolerableTouch_V(on(50))),
      asPrinted(`${where}: 50 kg may step over ${step50} V`, IEEE80, 'V', step50, () => tolerableStep_V(on(50))),
      asPrinted(`${where}: 70 kg may touch ${touch70} V`, IEEE80, 'V', touch70, () => tolerableTouch_V(on(70))),
      asPrinted(`${where}: 70 kg may step over ${step70} V`, IEEE80, 'V', step70, () => tolerableStep_V(on(70))),
    ];
  }),
  // The guide rounds C_s to 0.74 before it goes on, so that its limits lie 0.4 % below the unrounded ones above.
  asPrinted('with C_s rounded to 0.74, 70 kg may touch 838.2 V', ANNEX_B, 'V', '838.2', () =>
    tolerableTouch_V({ mass_kg: 70, time_s: 0.5, surface_ohm_m: 2500, derating: 0.74 }),
  ),
  asPrinted('with C_s rounded to 0.74, 70 kg may step over 2686.6 V', ANNEX_B, 'V', '2686.6', () =>
    tolerableStep_V({ mass_kg: 70, time_s: 0.5, surface_ohm_m: 2500, derating: 0.74 }),
  ),
  // One foot 3ρ; two side by side 1.5ρ, one after the other 6ρ, as in the formulas of touch and step.
  ...(
    [
      [100, 300],
      [2500, 7500],
    ] as const
  ).map(([soil, ohm]) =>
    asPrinted(`a foot on ${soil} Ω·m has ${ohm} Ω`, 'IEEE Std 80-2013, from memory', 'Ω', String(ohm), () =>
      footResistance_ohm(soil),
    ),
  ),
];

const measured: readonly Published[] = [
  // The handbook prints its constant as 6.28, once as 6.26 and once as 6.25; 2π gives 7660.
  within(
    'four pins 20 ft apart that read 2 Ω stand in 76.62 Ω·m',
    MIL,
    'Ω·m',
    76.62,
    0.0005,
    'ours has 2π exactly',
    () => wennerResistivity_ohm_m(20 * FOOT_m, 2),
  ),
  asPrinted(
    'the potential pin stands at 61.8 % of the way',
    'IEEE Std 81 and Tagg, Earth Resistances (1964), from memory',
    '%',
    '61.8',
    () => 100 * SIXTY_TWO_PERCENT,
  ),
];

/** Grids, what stands on the surface, what is tolerable there, and measuring. */
export const rows: readonly Published[] = [...grids, ...surface, ...limits, ...measured];
