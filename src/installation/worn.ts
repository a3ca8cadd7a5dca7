import { z } from 'zod';
import { resistance_ohm } from './quantity.ts';

/** What stands between a person and a thing: typical resistance and the range it is met in, Ω. */
interface Worn {
  readonly typical_ohm: number;
  readonly from_ohm: number;
  readonly to_ohm: number;
  readonly source: string;
}

const PRACTICE = 'typical, common practice, no source';
const ISO_20345 = 'EN ISO 20345, from memory; typical is the geometric mean of the range';

/** Shoes, one of them. */
const shoes = {
  'old wet shoe': {
    typical_ohm: 1e3,
    from_ohm: 250,
    to_ohm: 4e3,
    source: 'EN 50522:2010 (1000 Ω), from memory; range: common practice',
  },
  'damp leather sole': { typical_ohm: 5e3, from_ohm: 1e3, to_ohm: 2e4, source: PRACTICE },
  'dry leather sole': { typical_ohm: 1e5, from_ohm: 1e4, to_ohm: 1e6, source: PRACTICE },
  'conductive shoe': {
    typical_ohm: 1e4,
    from_ohm: 1e3,
    to_ohm: 1e5,
    source: `${ISO_20345}; its lower end: common practice`,
  },
  'antistatic shoe': { typical_ohm: 1e7, from_ohm: 1e5, to_ohm: 1e9, source: ISO_20345 },
  'electrical hazard shoe': {
    typical_ohm: 1.3e8,
    from_ohm: 1.8e7,
    to_ohm: 1e9,
    source: 'ASTM F2413 (1 mA at 18 kV at most), dry, from memory; upper end: common practice',
  },
} as const satisfies Readonly<Record<string, Worn>>;

/** Gloves, one of them. */
const gloves = {
  'wet cotton glove': { typical_ohm: 500, from_ohm: 100, to_ohm: 2e3, source: PRACTICE },
  'damp leather glove': { typical_ohm: 2e3, from_ohm: 500, to_ohm: 1e4, source: PRACTICE },
  'dry leather glove': { typical_ohm: 1e5, from_ohm: 1e4, to_ohm: 1e6, source: PRACTICE },
  'rubber glove of class 0': {
    typical_ohm: 1e7,
    from_ohm: 3.1e5,
    to_ohm: 1e9,
    source: 'ASTM D120 and IEC 60903 (16 mA at 5 kV at most), from memory; the rest: common practice',
  },
} as const satisfies Readonly<Record<string, Worn>>;

/** Mats and floors, both feet together. */
const coverings = {
  'tiles on concrete': { typical_ohm: 1e4, from_ohm: 1e3, to_ohm: 1e5, source: PRACTICE },
  'dry wood': { typical_ohm: 2e5, from_ohm: 2e4, to_ohm: 1e7, source: PRACTICE },
  'insulating floor': {
    typical_ohm: 5e4,
    from_ohm: 5e4,
    to_ohm: 1e9,
    source: 'IEC 60364-6 (50 kΩ at least, up to 500 V), from memory; the least is taken, the careful side',
  },
  'rubber mat': { typical_ohm: 1e7, from_ohm: 1e5, to_ohm: 1e9, source: PRACTICE },
} as const satisfies Readonly<Record<string, Worn>>;

const all: Readonly<Record<string, Worn>> = { ...shoes, ...gloves, ...coverings };

function measuredOr<Table extends Readonly<Record<string, Worn>>>(table: Table) {
  const names = z.enum(Object.keys(table) as [keyof Table & string, ...(keyof Table & string)[]]);
  return z.union([resistance_ohm, names]).meta({ examples: [1000] });
}

/** Ω of one shoe, or one of the shoes that have a published or customary range. */
export const shoeSchema = measuredOr(shoes);
/** Ω of one glove, or one of those with a range. */
export const gloveSchema = measuredOr(gloves);
/** Ω of a mat or floor under both feet, or one of those with a range. */
export const coveringSchema = measuredOr(coverings);

/** The resistance written as a number or by name (then the typical one), Ω. @throws RangeError if there is no such name */
export function worn_ohm(written: number | string): number {
  if (typeof written === 'number') return written;
  const found = all[written];
  if (found === undefined) throw new RangeError(`worn_ohm: there is nothing to wear called "${written}"`);
  return found.typical_ohm;
}
