import type { Strip } from '../depiction/index.ts';

type Mark = Strip['marks'][number];

/** A mark with the place of its words over the strip, CSS px from its left end; row 0 lies nearest to it. */
export interface PlacedLabel extends Mark {
  readonly left: number;
  readonly row: 0 | 1;
}

const GLYPH_em = 0.54; // wide, on average, in bold
const GAP_px = 14;

/** Gives every mark's words room of their own in two rows over the strip: centred on the mark where they can be, inside
 *  the ends, later ones pushed to the right or up; what finds no room is left out (its mark stays).
 *  @param width of the strip, CSS px
 *  @param font_px size of the words */
export function placeLabels(marks: readonly Mark[], width: number, font_px: number): readonly PlacedLabel[] {
  const ends: [number, number] = [-GAP_px, -GAP_px];
  const placed: PlacedLabel[] = [];
  for (const mark of marks) {
    const size = mark.label.length * GLYPH_em * font_px;
    const wanted = Math.min(Math.max(0, mark.position * width - size / 2), width - size);
    const row = ([0, 1] as const).find((candidate) => Math.max(wanted, ends[candidate] + GAP_px) - wanted <= size / 2);
    if (row === undefined) continue;
    const left = Math.max(wanted, ends[row] + GAP_px);
    if (left + size > width + GAP_px) continue;
    ends[row] = left + size;
    placed.push({ ...mark, left, row });
  }
  return placed;
}
