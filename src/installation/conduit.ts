import { nearest } from './nearest.ts';

/** A metal tube that a circuit lies in and that may carry its fault current home, as written: `EMT 1/2`, `rigid 3/4`. */
export interface Conduit {
  readonly tube: 'EMT' | 'rigid';
  /** Trade size, in. */
  readonly size: string;
}

// Outside diameter and wall, in (ANSI C80.3 for EMT, ANSI C80.1 for rigid conduit, from memory).
const OUTSIDE_WALL_in: Readonly<Record<Conduit['tube'], Readonly<Record<string, readonly [number, number]>>>> = {
  EMT: { '1/2': [0.706, 0.042], '3/4': [0.922, 0.049], '1': [1.163, 0.057] },
  rigid: { '1/2': [0.84, 0.104], '3/4': [1.05, 0.107], '1': [1.315, 0.126] },
};

const WRITTEN = /^(?<tube>EMT|rigid)\s+(?<size>\S+)$/u;

/** Reads `EMT 1/2` or `rigid 1`; undefined where no table has it. */
export function readConduit(text: string): Conduit | undefined {
  const groups = WRITTEN.exec(text.trim())?.groups;
  if (groups === undefined) return undefined;
  const tube = groups.tube === 'EMT' ? 'EMT' : 'rigid';
  const size = groups.size ?? '';
  return Object.hasOwn(OUTSIDE_WALL_in[tube], size) ? { tube, size } : undefined;
}

/** The section of the tube's wall, mm². */
export function conduitMetal_mm2({ tube, size }: Conduit): number {
  const dimensions = OUTSIDE_WALL_in[tube][size];
  if (dimensions === undefined) throw new RangeError(`conduitMetal_mm2: no table has ${tube} ${size}`);
  const [outside_in, wall_in] = dimensions;
  return Math.PI * wall_in * (outside_in - wall_in) * 25.4 ** 2;
}

/** The conduit that somebody probably meant; undefined if nothing here reads like one. */
export function likelyConduit(text: string): string | undefined {
  const known = Object.entries(OUTSIDE_WALL_in).flatMap(([tube, sizes]) =>
    Object.keys(sizes).map((size) => `${tube} ${size}`),
  );
  if (!/emt|rigid|conduit/iu.test(text)) return undefined;
  return nearest(text, known) ?? (/rigid/iu.test(text) ? 'rigid 1/2' : 'EMT 1/2');
}
