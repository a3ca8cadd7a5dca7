import { nearest } from './nearest.ts';

/** A metal tube that a circuit lies in and that may carry its fault current home, as written: `EMT 1/2`, `rigid 3/4`. */
export interface Conduit {
  readonly tube: 'EMT' | 'rigid';
  /** Trade size, in. */
  readonly size: string;
}

// Metal section of a tube, mm², from the dimensions of ANSI C80.3 (EMT) and ANSI C80.1 (rigid), from memory.
const METAL_mm2: Readonly<Record<Conduit['tube'], Readonly<Record<string, number>>>> = {
  EMT: { '1/2': 56.7, '3/4': 87.1, '1': 128 },
  rigid: { '1/2': 155, '3/4': 205, '1': 304 },
};

const WRITTEN = /^(?<tube>EMT|rigid)\s+(?<size>\S+)$/u;

/** Reads `EMT 1/2` or `rigid 1`; undefined where no table has it. */
export function readConduit(text: string): Conduit | undefined {
  const groups = WRITTEN.exec(text.trim())?.groups;
  if (groups === undefined) return undefined;
  const tube = groups.tube === 'EMT' ? 'EMT' : 'rigid';
  const size = groups.size ?? '';
  return Object.hasOwn(METAL_mm2[tube], size) ? { tube, size } : undefined;
}

/** The section of the tube's wall, mm². */
export function conduitMetal_mm2({ tube, size }: Conduit): number {
  const area = METAL_mm2[tube][size];
  if (area === undefined) throw new RangeError(`conduitMetal_mm2: no table has ${tube} ${size}`);
  return area;
}

/** The conduit that somebody probably meant; undefined if nothing here reads like one. */
export function likelyConduit(text: string): string | undefined {
  const known = Object.entries(METAL_mm2).flatMap(([tube, sizes]) =>
    Object.keys(sizes).map((size) => `${tube} ${size}`),
  );
  if (!/emt|rigid|conduit/iu.test(text)) return undefined;
  return nearest(text, known) ?? (/rigid/iu.test(text) ? 'rigid 1/2' : 'EMT 1/2');
}
