import type { Area, Body, Skin } from './person.ts';

/** Touch voltages of the rows of the tables of IEC 60479-1, V. */
export const touchVoltages_V = [25, 50, 75, 100, 125, 150, 175, 200, 225, 400, 500, 700, 1000] as const;

/** Three columns of a table: one value a row of `touchVoltages_V`, Ω hand to hand, not exceeded by that share of people. */
export type Columns = Readonly<Record<Body['percentile'], readonly number[]>>;

/** Large contact area (order of 10 000 mm² per hand), 50/60 Hz. The last row is also the internal impedance.
 *  IEC 60479-1:2018 (and TS 60479-1:2005) tables 1 (dry), 2 (water-wet), 3 (saltwater-wet): from memory. */
const large: Readonly<Record<Skin, Columns>> = {
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

/** Medium contact area (order of 1 000 mm²), 50/60 Hz, up to 225 V: LOW CONFIDENCE, from memory of IEC TS 60479-1:2005 tables 4 to 6.
 *  From 400 V on no area matters and the rows are those of the large one. */
const mediumTo225V: Readonly<Record<Skin, Columns>> = {
  dry: {
    5: [11125, 7150, 4625, 3000, 2350, 1800, 1550, 1375, 1275],
    50: [20600, 13000, 8200, 5200, 4000, 3000, 2500, 2200, 2000],
    95: [38725, 23925, 14750, 9150, 6875, 5050, 4125, 3525, 3225],
  },
  'water-wet': {
    5: [5050, 4100, 3400, 2800, 2350, 1800, 1550, 1375, 1275],
    50: [9350, 7450, 6000, 4850, 4000, 3000, 2500, 2200, 2000],
    95: [17575, 13700, 10800, 8525, 6875, 5050, 4125, 3525, 3225],
  },
  'salt-wet': {
    5: [1795, 1765, 1740, 1715, 1685, 1660, 1525, 1350, 1225],
    50: [2425, 2390, 2350, 2315, 2280, 2245, 2210, 2175, 2000],
    95: [3275, 3225, 3175, 3125, 3075, 3030, 2985, 2935, 2885],
  },
};

/** Direct current, large contact area, dry: IEC TS 60479-1:2005 table 10, from memory; 50 % firm, 5 and 95 % of low confidence.
 *  Wet skin under direct current is not in the table: the columns for alternating current stand for it, the careful side. */
const directDry: Columns = {
  5: [2100, 1600, 1275, 1100, 975, 875, 825, 800, 775, 700, 625, 575, 575],
  50: [3875, 2900, 2275, 1900, 1675, 1475, 1350, 1275, 1225, 950, 850, 775, 775],
  95: [7275, 5325, 4100, 3350, 2875, 2475, 2225, 2050, 1900, 1275, 1150, 1050, 1050],
};

const medium = bySkin((skin) =>
  byPercentile((percentile) => completed(mediumTo225V[skin][percentile], large[skin][percentile])),
);

/** Small contact area (order of 100 mm²): an EXTRAPOLATION of ours. What lies outside the internal impedance grows from medium to small
 *  by the same factor as from large to medium, and never rises with the voltage. */
const small = bySkin((skin) =>
  byPercentile((percentile) => smaller(large[skin][percentile], medium[skin][percentile])),
);

const alternating: Readonly<Record<Area, Readonly<Record<Skin, Columns>>>> = { large, medium, small };

/** The column for a body, Ω hand to hand. Direct current has a table of its own for large dry contacts only. */
export function column(percentile: Body['percentile'], skin: Skin, area: Area, direct: boolean): readonly number[] {
  return (direct && skin === 'dry' && area === 'large' ? directDry : alternating[area][skin])[percentile];
}

/** The same of whatever is asked for every skin. */
export function bySkin<T>(of: (skin: Skin) => T): Readonly<Record<Skin, T>> {
  return { dry: of('dry'), 'water-wet': of('water-wet'), 'salt-wet': of('salt-wet') };
}

/** The same of whatever is asked for every percentile. */
export function byPercentile<T>(of: (percentile: Body['percentile']) => T): Readonly<Record<Body['percentile'], T>> {
  return { 5: of(5), 50: of(50), 95: of(95) };
}

function smaller(wide: readonly number[], narrow: readonly number[]): readonly number[] {
  const internal = wide.at(-1) ?? NaN;
  let least = Infinity;
  return wide.map((ohm, row) => {
    const outside = ohm - internal;
    const narrower = (narrow[row] ?? NaN) - internal;
    least = Math.min(least, outside > 0 ? internal + narrower ** 2 / outside : ohm);
    return least;
  });
}

function completed(to225V: readonly number[], wide: readonly number[]): readonly number[] {
  return [...to225V, ...wide.slice(to225V.length)];
}
