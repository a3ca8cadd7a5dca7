/** NFPA 70 table 250.122: smallest equipment grounding conductor by the rating of the device before it, copper and
 *  aluminium, as written on a drum; seen second-hand. Rows to 600 A; larger ones are proportioned by engineers. */
const TABLE_250_122 = [
  { upTo_A: 15, Cu: '14 AWG', Al: '12 AWG' },
  { upTo_A: 20, Cu: '12 AWG', Al: '10 AWG' },
  { upTo_A: 60, Cu: '10 AWG', Al: '8 AWG' },
  { upTo_A: 100, Cu: '8 AWG', Al: '6 AWG' },
  { upTo_A: 200, Cu: '6 AWG', Al: '4 AWG' },
  { upTo_A: 300, Cu: '4 AWG', Al: '2 AWG' },
  { upTo_A: 400, Cu: '3 AWG', Al: '1 AWG' },
  { upTo_A: 500, Cu: '2 AWG', Al: '1/0 AWG' },
  { upTo_A: 600, Cu: '1 AWG', Al: '2/0 AWG' },
  { upTo_A: 800, Cu: '1/0 AWG', Al: '3/0 AWG' },
  { upTo_A: 1000, Cu: '2/0 AWG', Al: '4/0 AWG' },
  { upTo_A: 1200, Cu: '3/0 AWG', Al: '250 kcmil' },
] as const;

/** Smallest equipment grounding conductor behind a device of this rating; undefined above the table. */
export function groundingConductor(rating_A: number, metal: 'Cu' | 'Al'): string | undefined {
  return TABLE_250_122.find(({ upTo_A }) => rating_A <= upTo_A)?.[metal];
}

/** Section of a conductor by its American size, mm²: AWG n has 0.127 mm · 92^((36 − n)/39) of diameter (ASTM B258, from
 *  memory), a kcmil is 0.50671 mm². @throws RangeError for anything else */
export function americanArea_mm2(size: string): number {
  const [, number = '', unit] = /^(\d+(?:\/0)?) (AWG|kcmil)$/.exec(size) ?? [];
  if (unit === undefined) throw new RangeError(`americanArea_mm2: "${size}" is no size; write 12 AWG or 250 kcmil`);
  if (unit === 'kcmil') return Number(number) * 0.50671;
  const gauge = number.endsWith('/0') ? 1 - Number(number.slice(0, -2)) : Number(number);
  return (Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2;
}

/** Smallest protective conductor of the same metal without a calculation, mm².
 *  @see IEC 60364-5-54:2011 table 54.2, seen second-hand */
export function tabulatedProtective_mm2(line_mm2: number): number {
  if (line_mm2 <= 16) return line_mm2;
  return line_mm2 <= 35 ? 16 : line_mm2 / 2;
}

/** k of a protective conductor that is a core of a cable insulated with 70 °C PVC, A·√s/mm²; of steel, that of armour.
 *  @see IEC 60364-5-54:2011 tables A.54.4 and A.54.5, seen second-hand */
export const ADIABATIC_K = { Cu: 115, Al: 76, steel: 51 } as const;

/** Smallest section that stays below its limit of temperature while this current lasts, mm²: S = I·√t / k.
 *  @see IEC 60364-5-54:2011 543.1.2 */
export function adiabatic_mm2(amperes: number, time_s: number, k: number): number {
  return (amperes * Math.sqrt(time_s)) / k;
}

type Metal = 'Cu' | 'Al';

/** NFPA 70 table 310.16, 60 °C column (from memory), with the ratings of 240.4(D) for 14, 12 and 10 AWG copper (from memory):
 *  the device a conductor may have before it. The 75 °C column, where terminals allow it, is higher. */
const AMPACITY_AWG: Readonly<Record<string, Readonly<Partial<Record<Metal, number>>>>> = {
  '14 AWG': { Cu: 15 },
  '12 AWG': { Cu: 20, Al: 15 },
  '10 AWG': { Cu: 30, Al: 25 },
  '8 AWG': { Cu: 40, Al: 35 },
  '6 AWG': { Cu: 55, Al: 40 },
  '4 AWG': { Cu: 70, Al: 55 },
  '3 AWG': { Cu: 85, Al: 65 },
  '2 AWG': { Cu: 95, Al: 75 },
  '1 AWG': { Cu: 110, Al: 85 },
  '1/0 AWG': { Cu: 125, Al: 100 },
  '2/0 AWG': { Cu: 145, Al: 115 },
  '3/0 AWG': { Cu: 165, Al: 130 },
  '4/0 AWG': { Cu: 195, Al: 150 },
  '250 kcmil': { Cu: 215, Al: 170 },
  '500 kcmil': { Cu: 320, Al: 260 },
};

/** IEC 60364-5-52:2009 table B.52.2 (copper, aluminium), 70 °C PVC, method C, two loaded conductors, 30 °C; from memory.
 *  Aluminium below 10 mm² is left out: IEC 60228 has no resistance for it. */
const AMPACITY_mm2: Readonly<Record<string, Readonly<Partial<Record<Metal, number>>>>> = {
  '1': { Cu: 15 },
  '1.5': { Cu: 19.5 },
  '2.5': { Cu: 27 },
  '4': { Cu: 36 },
  '6': { Cu: 46 },
  '10': { Cu: 63, Al: 49 },
  '16': { Cu: 85, Al: 66 },
  '25': { Cu: 112, Al: 83 },
  '35': { Cu: 138, Al: 103 },
  '50': { Cu: 168, Al: 125 },
  '70': { Cu: 213, Al: 160 },
  '95': { Cu: 258, Al: 195 },
  '120': { Cu: 299, Al: 226 },
};

/** A standard size asked for between two ratings takes the next device up: NFPA 70 240.4(B), to 800 A (from memory). */
const STANDARD_A = [
  15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400,
];

const WRITTEN = /^(\d+\/0|\d+(?:\.\d+)?)\s*(AWG|kcmil|mm²|mm2)\s+(Cu|Al)\b/;

/** Largest device that may stand before a conductor as it is written on a drum (`12 AWG Cu`), A; undefined where no table has it. */
export function carries_A(conductor: string): number | undefined {
  const [, size = '', unit = '', metal] = WRITTEN.exec(conductor.trim()) ?? [];
  if (metal !== 'Cu' && metal !== 'Al') return undefined;
  if (unit === 'mm²' || unit === 'mm2') return AMPACITY_mm2[size]?.[metal];
  const ampacity_A = AMPACITY_AWG[`${size} ${unit}`]?.[metal];
  if (ampacity_A === undefined || /^(14|12|10)$/.test(size)) return ampacity_A;
  return STANDARD_A.find((standard) => standard >= ampacity_A) ?? ampacity_A;
}

/** The thinnest conductor of the same metal that may stand behind a device of this rating; undefined if no table has one.
 *  @example conductorFor('12 AWG Cu', 40) // "8 AWG Cu" */
export function conductorFor(conductor: string, rating_A: number): string | undefined {
  const [, , unit, metal] = WRITTEN.exec(conductor.trim()) ?? [];
  const rows =
    unit === 'mm²' || unit === 'mm2'
      ? Object.keys(AMPACITY_mm2).map((size) => `${size} mm²`)
      : Object.keys(AMPACITY_AWG);
  const sizes = rows.map((size) => `${size} ${metal ?? 'Cu'}`).map((size) => ({ size, amperes: carries_A(size) ?? 0 }));
  return sizes.toSorted((one, other) => one.amperes - other.amperes).find(({ amperes }) => amperes >= rating_A)?.size;
}
