/** By how much more an electrode may have in the dry season than when its soil was moist: a range of factors. */
export interface Season {
  readonly from: number;
  readonly to: number;
}

const source = 'DL/T 621-1997, season factors of earthing, from memory';

// Depth of burial down to which a row holds, m.
const ROWS = [
  { to_m: 0.65, flat: { from: 1.4, to: 1.8 }, upright: { from: 1.2, to: 1.4 } },
  { to_m: 1.75, flat: { from: 1.25, to: 1.45 }, upright: { from: 1.15, to: 1.3 } },
  { to_m: Infinity, flat: { from: 1, to: 1.1 }, upright: { from: 1, to: 1.1 } },
] as const;

/** The published range of the season factor, by how deep an electrode begins (0.5 m, 0.8 to 1 m, 2.5 to 3 m are tabled; between
 *  them the nearer row) and whether it lies flat or stands. Frozen soil goes far beyond: solve it as an upper layer.
 *  @throws RangeError if the depth is below zero */
export function seasonFactors(depth_m: number, lie: 'flat' | 'upright'): Season & { readonly source: string } {
  const row = ROWS.find(({ to_m }) => depth_m >= 0 && depth_m <= to_m);
  if (row === undefined) throw new RangeError(`A depth of ${depth_m} m: write one from 0 down`);
  return { ...row[lie], source };
}
