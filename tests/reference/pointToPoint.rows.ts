import { within } from './asPrinted.ts';
import { loop_A } from './circuit.ts';
import type { Published } from './published.ts';

/** Amperes round a loop of impedances; half of the first is the source's own. */
const loop = (
  emf_V: number,
  [r, x]: readonly [number, number],
  ...more: readonly (readonly [number, number])[]
): number => loop_A(emf_V, { r: r / 2, x: x / 2 }, { r: r / 2, x: x / 2 }, ...more.map(([r, x]) => ({ r, x })));

const ONE_ANGLE = 'the method adds ohms as if of one angle, so all are given as resistance; rounded at each step';
const POINT_TO_POINT = 'point-to-point method of fuse-maker handbooks';
// Ohms of one conductor of this many feet: 1 / C of the handbooks' table.
const feet = (length: number, c: number, parallel = 1): number => length / (c * parallel);
/** Amperes of the three-phase fault: one phase to the star. */
const threePhase = (line_V: number, own: number, ...ohms: readonly number[]): number =>
  loop(line_V / Math.sqrt(3), [own, 0], ...ohms.map((r) => [r, 0] as const));

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
    'the 300 kVA from line to neutral, 1.5 times as much at its terminals, after 150 ft of 3/0',
    5_156,
    0.001,
    () => loop(120, [P3_OHM / 3 + lineToLine(150, 13_923), 0]),
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

/** Published short-circuit currents by the point-to-point method. */
export const rows: readonly Published[] = pointToPoint.map(([what, printed, tolerance, computed]) =>
  within(`${what}: ${printed} A`, POINT_TO_POINT, 'A', printed, tolerance, ONE_ANGLE, computed),
);
