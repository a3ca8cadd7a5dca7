import { byPercentile, bySkin, column, touchVoltages_V } from './impedanceTables.ts';
import { limbsTo } from './person.ts';
import type { Area, Body, Limb, Skin } from './person.ts';

/** Total impedance of a body hand to hand at this touch voltage, Ω: the table, a straight line in Z between its rows, held below
 *  25 V (where the real impedance is higher: the careful side) and above 1000 V.
 *  @throws RangeError if the voltage is negative or not a number */
export function totalImpedance_ohm(
  touch_V: number,
  { percentile, skin, area = 'large', direct = false }: Body,
): number {
  if (!(touch_V >= 0)) throw new RangeError(`A touch voltage of ${touch_V} V: write zero or more`);
  const ohms = column(percentile, skin, area, direct);
  const above = touchVoltages_V.findIndex((volts) => touch_V < volts);
  if (above < 1) return ohms[above === 0 ? 0 : ohms.length - 1] ?? NaN;
  const [low_V = 0, high_V = 0] = touchVoltages_V.slice(above - 1, above + 1);
  const [low_ohm = 0, high_ohm = 0] = ohms.slice(above - 1, above + 1);
  return low_ohm + ((touch_V - low_V) / (high_V - low_V)) * (high_ohm - low_ohm);
}

/** One way from the outside of the skin to the middle of the trunk, by its current: R = fixed + a / (d + b·I), Ω. Piece k begins at
 *  `from_A[k]`, `from_V[k]` and `from_ohm[k]`; the last entry of the first two is `Infinity`. */
export interface ByCurrent {
  readonly from_A: Float64Array;
  readonly from_V: Float64Array;
  readonly from_ohm: Float64Array;
  readonly fixed_ohm: Float64Array;
  readonly a: Float64Array;
  readonly d: Float64Array;
  readonly b: Float64Array;
}

/** The column of the table read backwards, for one limb with its skin, or for a place on the trunk. */
export function byCurrent(
  limb: Limb,
  percentile: Body['percentile'],
  skin: Skin,
  area: Area,
  direct: boolean,
): ByCurrent {
  const curves = limbsTo(limb) === 0 ? onTrunk : ofLimb;
  return (direct ? curves.direct : curves[area])[skin][percentile];
}

/** Half the body hand to hand as pieces. Between two rows Z = p − q·U, hence Z = p / (1 + q·I): current rises with voltage along every
 *  column, so the pieces follow each other without overlap. */
export function limbCurve(ohms: readonly number[]): ByCurrent {
  const pieces: Piece[] = [{ from_A: 0, fixed_ohm: 0, a: (ohms[0] ?? NaN) / 2, d: 1, b: 0 }];
  for (let row = 1; row < ohms.length; row++) {
    const [low_V = NaN, high_V = NaN] = touchVoltages_V.slice(row - 1, row + 1);
    const [low_ohm = NaN, high_ohm = NaN] = ohms.slice(row - 1, row + 1);
    const slope = (low_ohm - high_ohm) / (high_V - low_V);
    pieces.push({ from_A: low_V / low_ohm, fixed_ohm: 0, a: (low_ohm + slope * low_V) / 2, d: 1, b: slope });
  }
  return laid(pieces);
}

/** Share of the internal impedance hand to hand that lies between a place on the trunk and its middle. IEC TS 60479-1:2005 figure 2
 *  gives the whole trunk 1 to 2 %: from memory, low confidence. */
const TRUNK_SHARE = 0.01;

/** A place on the trunk: the same skin without the limb. Where the voltage across that skin stops rising with the current it is held,
 *  though the table lets it fall, so that one voltage has one current. */
function trunkCurve(ohms: readonly number[]): ByCurrent {
  const internal = ohms.at(-1) ?? NaN;
  const { from_A, a, d, b } = limbCurve(ohms);
  const trunk_ohm = TRUNK_SHARE * internal;
  const pieces: Piece[] = [];
  for (let k = 0; k < a.length; k++) {
    const [from = NaN, p = NaN, one = NaN, q = NaN] = [from_A[k], a[k], d[k], b[k]];
    // d/dI of p·I / (1 + q·I) − internal / 2 · I
    const still_A = q > 0 ? (Math.sqrt((2 * p) / internal) - 1) / q : Infinity;
    const peak_A = Math.max(from, still_A);
    if (peak_A > from) pieces.push({ from_A: from, fixed_ohm: trunk_ohm - internal / 2, a: p, d: one, b: q });
    if (peak_A >= (from_A[k + 1] ?? Infinity)) continue;
    const held_V = peak_A * (p / (1 + q * peak_A) - internal / 2);
    pieces.push({ from_A: peak_A, fixed_ohm: trunk_ohm, a: held_V, d: 0, b: 1 });
    break;
  }
  return laid(pieces);
}

interface Piece {
  readonly from_A: number;
  readonly fixed_ohm: number;
  readonly a: number;
  readonly d: number;
  readonly b: number;
}

function laid(pieces: readonly Piece[]): ByCurrent {
  const from_ohm = Float64Array.from(pieces, ({ from_A, fixed_ohm, a, d, b }) => fixed_ohm + a / (d + b * from_A));
  return {
    from_A: Float64Array.of(...pieces.map(({ from_A }) => from_A), Infinity),
    from_V: Float64Array.of(...pieces.map(({ from_A }, k) => from_A * (from_ohm[k] ?? NaN)), Infinity),
    from_ohm,
    fixed_ohm: Float64Array.from(pieces, ({ fixed_ohm }) => fixed_ohm),
    a: Float64Array.from(pieces, ({ a }) => a),
    d: Float64Array.from(pieces, ({ d }) => d),
    b: Float64Array.from(pieces, ({ b }) => b),
  };
}

const ofLimb = everyColumn(limbCurve);
const onTrunk = everyColumn(trunkCurve);

function everyColumn(read: (ohms: readonly number[]) => ByCurrent) {
  const all = (area: Area, direct: boolean) =>
    bySkin((skin) => byPercentile((percentile) => read(column(percentile, skin, area, direct))));
  return {
    large: all('large', false),
    medium: all('medium', false),
    small: all('small', false),
    direct: all('large', true),
  } as const;
}
