import type { Body, Skin } from './person.ts';

/** Touch voltages of the rows of IEC 60479-1 tables 1 to 3, V. */
export const touchVoltages_V = [25, 50, 75, 100, 125, 150, 175, 200, 225, 400, 500, 700, 1000] as const;

/** Total body impedance hand to hand, 50/60 Hz, large contact area (order of 10 000 mm² per hand), Ω, one value a row of
 *  `touchVoltages_V`: not exceeded by that share of people. The last row is also the internal impedance.
 *  IEC 60479-1:2018 (and TS 60479-1:2005) tables 1 (dry), 2 (water-wet), 3 (saltwater-wet): from memory. */
export const bodyTable_ohm: Readonly<Record<Skin, Readonly<Record<Body['percentile'], readonly number[]>>>> = {
  dry: {
    5: [1750, 1375, 1125, 990, 900, 850, 825, 800, 775, 700, 625, 575, 575],
    50: [3250, 2500, 2000, 1725, 1550, 1400, 1325, 1275, 1225, 950, 850, 775, 775],
    95: [6100, 4600, 3600, 3125, 2675, 2350, 2175, 2050, 1900, 1275, 1150, 1050, 1050],
  },
  'water-wet': {
    5: [1175, 1100, 1025, 975, 900, 850, 825, 800, 775, 700, 625, 575, 575],
    50: [2175, 2000, 1825, 1675, 1550, 1400, 1325, 1275, 1225, 950, 850, 775, 775],
    95: [4100, 3675, 3275, 2950, 2675, 2350, 2175, 2050, 1900, 1275, 1150, 1050, 1050],
  },
  'salt-wet': {
    5: [960, 940, 920, 880, 850, 830, 810, 790, 770, 700, 625, 575, 575],
    50: [1300, 1275, 1250, 1225, 1200, 1180, 1155, 1135, 1115, 950, 850, 775, 775],
    95: [1755, 1720, 1685, 1655, 1620, 1590, 1560, 1530, 1505, 1275, 1150, 1050, 1050],
  },
};

/** Total impedance of a body hand to hand at this touch voltage, Ω: the table, a straight line in Z between its rows, held below
 *  25 V (where the real impedance is higher: the careful side) and above 1000 V.
 *  @throws RangeError if the voltage is negative or not a number */
export function totalImpedance_ohm(touch_V: number, body: Body): number {
  if (!(touch_V >= 0)) throw new RangeError(`A touch voltage of ${touch_V} V: write zero or more`);
  const column = bodyTable_ohm[body.skin][body.percentile];
  const above = touchVoltages_V.findIndex((volts) => touch_V < volts);
  if (above < 1) return column[above === 0 ? 0 : column.length - 1] ?? NaN;
  const [low_V = 0, high_V = 0] = touchVoltages_V.slice(above - 1, above + 1);
  const [low_ohm = 0, high_ohm = 0] = column.slice(above - 1, above + 1);
  return low_ohm + ((touch_V - low_V) / (high_V - low_V)) * (high_ohm - low_ohm);
}

/** The table read backwards: impedance as a function of current. Between two rows Z = a − b·U, hence Z = a / (1 + b·I) and
 *  U = a·I / (1 + b·I). Piece k holds from `from_A[k]` on. */
export interface ByCurrent {
  readonly from_A: Float64Array;
  readonly a_ohm: Float64Array;
  readonly b: Float64Array;
}

/** The pieces of one column of the table. Current rises with voltage along every column, so they follow each other without overlap. */
export function byCurrent(percentile: Body['percentile'], skin: Skin): ByCurrent {
  return pieces[skin][percentile];
}

const pieces = {
  dry: columns('dry'),
  'water-wet': columns('water-wet'),
  'salt-wet': columns('salt-wet'),
} as const satisfies Readonly<Record<Skin, unknown>>;

function columns(skin: Skin): Readonly<Record<Body['percentile'], ByCurrent>> {
  const table = bodyTable_ohm[skin];
  return { 5: readBackwards(table[5]), 50: readBackwards(table[50]), 95: readBackwards(table[95]) };
}

function readBackwards(column: readonly number[]): ByCurrent {
  const from_A = new Float64Array(column.length);
  const a_ohm = new Float64Array(column.length);
  const b = new Float64Array(column.length);
  a_ohm[0] = column[0] ?? NaN;
  for (let row = 1; row < column.length; row++) {
    const [low_V = NaN, high_V = NaN] = touchVoltages_V.slice(row - 1, row + 1);
    const [low_ohm = NaN, high_ohm = NaN] = column.slice(row - 1, row + 1);
    const slope = (low_ohm - high_ohm) / (high_V - low_V);
    from_A[row] = low_V / low_ohm;
    a_ohm[row] = low_ohm + slope * low_V;
    b[row] = slope;
  }
  return { from_A, a_ohm, b };
}
