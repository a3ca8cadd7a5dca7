import { magnetic } from './adjustable.ts';
import type { Band } from './band.ts';

/** A device of which no more is known than what is printed on its sheet. */
export interface PointsSettings {
  readonly family: 'points';
  /** Holds this for ever. */
  readonly rating_A: number;
  /** Opens within this time at this current, s, in order of current. */
  readonly opens: readonly { readonly amperes: number; readonly within_s: number }[];
  /** Acts at once somewhere from … to, A. */
  readonly magneticFrom_A?: number;
  readonly magneticTo_A?: number;
}

/** A sheet gives the longest time; a fast one takes a tenth of it: common practice, no source. */
const FAST_SHARE = 0.1;
/** Longest time of a magnetic part, s: one cycle of 50 Hz, common practice, no source. */
const AT_ONCE_S = 0.02;

/** The elements of such a device: from the current it holds up to the first published point it may open or not.
 *  @throws RangeError if no point is above what it holds, or they are not in order */
export function pointsBands({ rating_A, opens, magneticFrom_A, magneticTo_A }: PointsSettings): readonly Band[] {
  const [first] = opens;
  if (first === undefined || !(rating_A > 0 && first.amperes > rating_A))
    throw new RangeError(`A device that holds ${rating_A} A opens at no more: write a point above it`);
  const falls = opens.every(({ amperes, within_s }, index) => {
    const before = opens[index - 1];
    return within_s > 0 && (before === undefined || (amperes > before.amperes && within_s <= before.within_s));
  });
  if (!falls) throw new RangeError('The points of a device are not in order: more current, no more time');
  const slow = opens.map(({ amperes, within_s }) => [amperes, within_s] as const);
  const from = rating_A * (1 + 1e-9);
  const fast = [[from, FAST_SHARE * first.within_s] as const, ...slow.map(([at, s]) => [at, FAST_SHARE * s] as const)];
  return [
    {
      acts: 'published',
      feels: 'amperes',
      fast: { points: fast, beyond: 'flat' },
      slow: { points: slow, beyond: 'flat' },
      rated: rating_A,
    },
    ...(magneticFrom_A === undefined || magneticTo_A === undefined
      ? []
      : [magnetic(magneticFrom_A, magneticTo_A, AT_ONCE_S, rating_A)]),
  ];
}
