import type { Edge } from './band.ts';

/** Gates of gG fuse-links. Rating, A; whole at 10 s; melted by 5 s; whole at 0.1 s; melted by 0.1 s, A (IEC 60269-1 table 3,
 *  from memory); least I²t to melt and largest to clear, A²s (IEC 60269-2, figures for selectivity, from memory).
 *  The largest of one size is the least of the size 1.6 times as large: that is the 1.6 : 1 rule. */
const GATES: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [16, 33, 65, 85, 150, 291, 1210],
  [20, 42, 85, 110, 200, 640, 2500],
  [25, 52, 110, 150, 260, 1210, 4000],
  [32, 75, 150, 200, 350, 2500, 5750],
  [40, 95, 190, 260, 450, 4000, 9000],
  [50, 125, 250, 350, 610, 5750, 13700],
  [63, 160, 320, 450, 820, 9000, 21200],
  [80, 215, 425, 610, 1100, 13700, 36000],
  [100, 290, 580, 820, 1450, 21200, 64000],
  [125, 355, 715, 1100, 1910, 36000, 104000],
  [160, 460, 950, 1450, 2590, 64000, 185000],
  [200, 610, 1250, 1910, 3420, 104000, 302000],
];

/** Conventional currents, multiples of the rating, and time, s: holds, blows within. IEC 60269-1 and -2, from memory. */
const CONVENTIONAL = [
  { upTo_A: 4, holds: 1.5, blows: 2.1, time_s: 3600 },
  { upTo_A: 15.9, holds: 1.5, blows: 1.9, time_s: 3600 },
  { upTo_A: 63, holds: 1.25, blows: 1.6, time_s: 3600 },
  { upTo_A: 160, holds: 1.25, blows: 1.6, time_s: 7200 },
  { upTo_A: 400, holds: 1.25, blows: 1.6, time_s: 10800 },
  { upTo_A: Infinity, holds: 1.25, blows: 1.6, time_s: 14400 },
] as const;

/** From here on down melting is adiabatic, s. */
const ADIABATIC_S = 0.01;

/** The two edges of a gG fuse-link. Between two sizes of the table it is drawn between them; below 16 A and above 200 A as
 *  the last size in proportion (assumption). */
export function ggGates(rating_A: number): { readonly fast: Edge['points']; readonly slow: Edge['points'] } {
  const { holds, blows, time_s } = CONVENTIONAL.find(({ upTo_A }) => rating_A <= upTo_A) ?? CONVENTIONAL[5];
  const gate = (column: 1 | 2 | 3 | 4 | 5 | 6): number => gateAt(rating_A, column);
  return {
    fast: [
      [holds * rating_A, time_s],
      [gate(1), 10],
      [gate(3), 0.1],
      [Math.sqrt(gate(5) / ADIABATIC_S), ADIABATIC_S],
    ],
    slow: [
      [blows * rating_A, time_s],
      [gate(2), 5],
      [gate(4), 0.1],
      [Math.sqrt(gate(6) / ADIABATIC_S), ADIABATIC_S],
    ],
  };
}

function gateAt(rating_A: number, column: 1 | 2 | 3 | 4 | 5 | 6): number {
  const row = GATES.findIndex(([rating]) => rating_A <= rating);
  const [high, low] = [GATES[row], GATES[row - 1]];
  if (high?.[0] === rating_A) return high[column];
  const end = row < 0 ? GATES[GATES.length - 1] : row === 0 ? high : undefined;
  if (end !== undefined) return end[column] * (rating_A / end[0]) ** (column > 4 ? 2 : 1);
  if (high === undefined || low === undefined)
    throw new RangeError(`No gG fuse of ${rating_A} A: write a rating above zero`);
  return low[column] * (high[column] / low[column]) ** (Math.log(rating_A / low[0]) / Math.log(high[0] / low[0]));
}
