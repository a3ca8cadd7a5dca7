import { expect, test } from 'vitest';
import {
  dalzielFibrillation_A,
  dalzielLetGo,
  heartCurrent_A,
  LET_GO_A,
  solveBody,
  totalImpedance_ohm,
  zone,
  zoneCurve,
} from '../../src/body/index.ts';
import type { Contact, Limb, Skin, Zone } from '../../src/body/index.ts';

const percentiles = [5, 50, 95] as const;
const skins: readonly Skin[] = ['dry', 'water-wet', 'salt-wet'];

// IEC 60479-1:2018 (TS 60479-1:2005) tables 1, 2, 3: total body impedance hand to hand, 50/60 Hz, large contact area, Ω. From memory.
// Touch volts; dry 5, 50, 95 %; water-wet 5, 50, 95 %; saltwater-wet 5, 50, 95 %.
const impedances: readonly (readonly number[])[] = [
  [25, 1750, 3250, 6100, 1175, 2175, 4100, 960, 1300, 1755],
  [50, 1375, 2500, 4600, 1100, 2000, 3675, 940, 1275, 1720],
  [75, 1125, 2000, 3600, 1025, 1825, 3275, 920, 1250, 1685],
  [100, 990, 1725, 3125, 975, 1675, 2950, 880, 1225, 1655],
  [125, 900, 1550, 2675, 900, 1550, 2675, 850, 1200, 1620],
  [150, 850, 1400, 2350, 850, 1400, 2350, 830, 1180, 1590],
  [175, 825, 1325, 2175, 825, 1325, 2175, 810, 1155, 1560],
  [200, 800, 1275, 2050, 800, 1275, 2050, 790, 1135, 1530],
  [225, 775, 1225, 1900, 775, 1225, 1900, 770, 1115, 1505],
  [400, 700, 950, 1275, 700, 950, 1275, 700, 950, 1275],
  [500, 625, 850, 1150, 625, 850, 1150, 625, 850, 1150],
  [700, 575, 775, 1050, 575, 775, 1050, 575, 775, 1050],
  [1000, 575, 775, 1050, 575, 775, 1050, 575, 775, 1050],
];

test.each(impedances)('hand to hand at %d V the body has the nine impedances of the tables', (volts, ...row) => {
  const got = skins.flatMap((skin) => percentiles.map((percentile) => totalImpedance_ohm(volts, { percentile, skin })));
  expect(got).toEqual(row);
});

/** A person between stiff voltages; each contact bare. */
function bare(skin: Skin, percentile: 5 | 50 | 95, touched: readonly (readonly [Limb, number])[]) {
  const contacts: readonly Contact[] = touched.map(([limb]) => ({ limb, outside_ohm: 0 }));
  const count = contacts.length;
  const impedance = { re: new Float64Array(count * count), im: new Float64Array(count * count) };
  const volts = { re: Float64Array.from(touched, ([, potential]) => potential), im: new Float64Array(count) };
  return solveBody({ percentile, skin }, contacts, volts, impedance);
}

// I = U / Z from table 1, 50 % column; 120, 230, 240 and 277 V lie on straight lines between its rows. Computed. V, Ω, mA.
const currents: readonly (readonly [number, number, number])[] = [
  [25, 3250.0, 7.7],
  [50, 2500.0, 20.0],
  [75, 2000.0, 37.5],
  [100, 1725.0, 58.0],
  [120, 1585.0, 75.7],
  [125, 1550.0, 80.6],
  [150, 1400.0, 107.1],
  [200, 1275.0, 156.9],
  [225, 1225.0, 183.7],
  [230, 1217.1, 189.0],
  [240, 1201.4, 199.8],
  [277, 1143.3, 242.3],
  [400, 950.0, 421.1],
];

test.each(currents)('%d V dry, hand to hand, meets %d ohm and drives %d mA', (volts, ohm, milliamperes) => {
  const body = { percentile: 50, skin: 'dry' } as const;
  const { amperes } = bare('dry', 50, [
    ['left hand', volts],
    ['right hand', 0],
  ]);
  expect(totalImpedance_ohm(volts, body).toFixed(1)).toBe(ohm.toFixed(1));
  expect((1000 * (amperes.re[0] ?? NaN)).toFixed(1)).toBe(milliamperes.toFixed(1));
  expect(amperes.re[1]).toBe(-(amperes.re[0] ?? NaN));
});

// Heart-current factors: IEC TS 60479-1:2005 table 12, seen in a copy.
const factors: readonly (readonly [Partial<Record<Limb, number>>, number, string])[] = [
  [{ 'left hand': 0.1, feet: -0.1 }, 1, 'left hand to feet'],
  [{ 'left hand': 0.05, 'right hand': 0.05, feet: -0.1 }, 1, 'both hands to feet'],
  [{ 'left hand': 0.1, 'right hand': -0.1 }, 0.4, 'left hand to right hand'],
  [{ 'right hand': 0.1, feet: -0.1 }, 0.8, 'right hand to feet'],
  [{ 'right hand': 0.1, 'left foot': -0.1 }, 0.8, 'right hand to left foot'],
];

const inPhase = (limbs: Partial<Record<Limb, number>>) =>
  Object.fromEntries(Object.entries(limbs).map(([limb, re]) => [limb, { re, im: 0 }]));

test.each(factors)('%o counts %d for the heart: %s', (limbs, factor, path) => {
  const heart = heartCurrent_A(inPhase(limbs));
  expect(heart.factor).toBeCloseTo(factor, 12);
  expect(heart.amperes).toBeCloseTo(factor * 0.1, 12);
  expect(heart.path).toBe(path);
});

// IEC 60479-1 figure 20, mA at these times. Seen second-hand: b 200 at 10 ms and 5 for long, c1 500 at 10 ms and 40 for long, c2 900 at
// 50 ms; the rest from memory of the plot.
const zonePoints: readonly (readonly [number, number, number, number, number])[] = [
  [0.01, 200, 500, 1000, 1500],
  [0.02, 150, 495, 900, 1450],
  [0.05, 80, 450, 900, 1350],
  [0.1, 50, 400, 750, 1100],
  [0.2, 35, 250, 600, 900],
  [0.3, 25, 165, 380, 600],
  [0.5, 18, 100, 200, 320],
  [1, 11, 50, 80, 140],
  [2, 7.5, 42, 60, 95],
  [3, 6, 40, 55, 85],
  [5, 5.2, 40, 51, 80],
  [10, 5, 40, 50, 80],
];

test.each(zonePoints)('at %d s each boundary divides its two zones', (time_s, ...milliamperes) => {
  const zones: readonly Zone[] = ['AC-2', 'AC-3', 'AC-4.1', 'AC-4.2', 'AC-4.3'];
  milliamperes.forEach((limit, index) => {
    expect(zone((limit / 1000) * (1 - 1e-9), time_s)).toBe(zones[index]);
    expect(zone((limit / 1000) * (1 + 1e-9), time_s)).toBe(zones[index + 1]);
  });
  expect(zone(0.0005, time_s)).toBe('AC-1');
  expect(zone(0.000501, time_s)).toBe('AC-2');
});

// Dalziel and Lee, IEEE Trans. IGA-4, 1968 (50 kg, seen in a copy); IEEE 80 (70 kg, seen second-hand): k/√t, mA. Computed.
test.each([
  [0.0083, 1273.3, 1723.3],
  [0.02, 820.2, 1110.2],
  [0.03, 669.7, 906.4],
  [0.05, 518.8, 702.1],
  [0.1, 366.8, 496.5],
  [0.2, 259.4, 351.1],
  [0.3, 211.8, 286.6],
  [0.4, 183.4, 248.2],
  [0.5, 164.0, 222.0],
  [0.75, 133.9, 181.3],
  [1, 116.0, 157.0],
  [2, 82.0, 111.0],
  [3, 67.0, 90.6],
  [5, 51.9, 70.2],
])(
  'after %d s Dalziel lets half a per cent of people of 50 kg fibrillate at %d mA, of 70 kg at %d mA',
  (time_s, light, heavy) => {
    expect((1000 * (dalzielFibrillation_A(time_s) ?? NaN)).toFixed(1)).toBe(light.toFixed(1));
    expect((1000 * (dalzielFibrillation_A(time_s, 70) ?? NaN)).toFixed(1)).toBe(heavy.toFixed(1));
  },
);

// IEC 60479-1:2005/2018, curve b for long times, seen second-hand; Dalziel's let-go figures, 99.5 % seen in a copy (children from memory).
test('the 5 mA at which everyone is said to let go lies between what Dalziel gave for children and found for women', () => {
  expect(LET_GO_A).toBe(0.005);
  expect(zoneCurve('b').at(-1)?.amperes).toBe(LET_GO_A);
  expect(LET_GO_A).toBeGreaterThan(dalzielLetGo.children.nearlyAll_A);
  expect(LET_GO_A).toBeLessThan(dalzielLetGo.women.nearlyAll_A);
  expect([dalzielLetGo.men.nearlyAll_A, dalzielLetGo.women.nearlyAll_A, dalzielLetGo.children.nearlyAll_A]).toEqual([
    0.009, 0.006, 0.0045,
  ]);
  expect([dalzielLetGo.men.median_A, dalzielLetGo.women.median_A]).toEqual([0.016, 0.0105]);
});
