import type { Box, Hotspot } from '../depiction/index.ts';
import type { View } from './useScene.ts';

/** Where a name plate stands, CSS px of its centre in the stage, and how much it says. */
export interface PlacedPlate {
  readonly x: number;
  readonly y: number;
  /** Its second line is shown. */
  readonly detail: boolean;
}

const LONG = 26; // letters
const GLYPH_em = 0.54; // wide, on average
const LINE_em = 1.27;
const PAD_px = 9;
const GAP_px = 3;
const WIDEST_em = 15;
/** Tried in this order when the wanted place is taken; in heights and widths of the plate. */
const NUDGES: readonly (readonly [number, number])[] = [
  [0, 0],
  [0, -0.6],
  [0, 0.6],
  [0.35, 0],
  [-0.35, 0],
  [0.35, -0.7],
  [-0.35, -0.7],
  [0.35, 0.7],
  [-0.35, 0.7],
  [0, -1.2],
  [0, 1.2],
  [0.6, 0],
  [-0.6, 0],
];

/** Gives the plate of each prominent thing, and of those pointed at, a place of its own in the stage: where the drawing
 *  wants it, or near; without its second line if there is no room for that, and no plate (shown on approach) if there is
 *  none at all. Plates with figures go first; none stands on a face.
 *  @param font_px size of the words on a plate
 *  @param pointed parts that are pointed at; they go first */
export function placePlates(
  spots: readonly Hotspot[],
  view: View,
  stage: { readonly width: number; readonly height: number },
  font_px: number,
  pointed: readonly string[] = [],
): ReadonlyMap<string, PlacedPlate> {
  const taken: Box[] = spots.flatMap(({ keepClear }) => (keepClear === undefined ? [] : [onStage(keepClear, view)]));
  const placed = new Map<string, PlacedPlate>();
  const rank = (spot: Hotspot) => (pointed.includes(spot.id) ? 0 : saysFigures(spot) ? 1 : 2);
  const order = spots
    .filter(({ id, prominent }) => prominent || pointed.includes(id))
    .toSorted((one, other) => rank(one) - rank(other));
  for (const spot of order) {
    for (const detail of spot.detail ? [true, false] : [false]) {
      const found = freePlace(spot, detail, view, stage, font_px, taken);
      if (!found) continue;
      taken.push(found);
      placed.set(spot.id, { x: found.x + found.width / 2, y: found.y + found.height / 2, detail });
      break;
    }
  }
  return placed;
}

function onStage(box: Box, { x, y, scale }: View): Box {
  return { x: x + box.x * scale, y: y + box.y * scale, width: box.width * scale, height: box.height * scale };
}

function freePlace(
  spot: Hotspot,
  detail: boolean,
  view: View,
  stage: { readonly width: number; readonly height: number },
  font_px: number,
  taken: readonly Box[],
): Box | undefined {
  const { width, height } = plateSize(spot.name, detail ? spot.detail : '', font_px);
  for (const [dx, dy] of NUDGES) {
    const x = view.x + spot.plate.x * view.scale + dx * width - width / 2;
    const y = view.y + spot.plate.y * view.scale + dy * height - height / 2;
    const box = {
      x: Math.max(GAP_px, Math.min(x, stage.width - width - GAP_px)),
      y: Math.max(GAP_px, Math.min(y, stage.height - height - GAP_px)),
      width,
      height,
    };
    if (!taken.some((other) => overlap(box, other))) return box;
  }
  return undefined;
}

/** What a plate says under the name, in lines: a long statement is parted at its first comma. */
export function plateLines(detail: string): readonly string[] {
  const comma = detail.length > LONG ? detail.indexOf(', ') : -1;
  return comma < 0 ? [detail].filter(Boolean) : [detail.slice(0, comma), detail.slice(comma + 2)];
}

/** The room a plate takes, CSS px. */
function plateSize(name: string, detail: string, font_px: number): { readonly width: number; readonly height: number } {
  const lines = [name, ...plateLines(detail)];
  const widest = Math.max(...lines.map((line) => Math.min(WIDEST_em, line.length * GLYPH_em)));
  const rows = lines.reduce((sum, line) => sum + Math.ceil((line.length * GLYPH_em) / WIDEST_em), 0);
  return { width: widest * font_px + 2 * PAD_px, height: rows * LINE_em * font_px + 6 };
}

function overlap(a: Box, b: Box): boolean {
  return (
    a.x < b.x + b.width + GAP_px &&
    b.x < a.x + a.width + GAP_px &&
    a.y < b.y + b.height + GAP_px &&
    b.y < a.y + a.height + GAP_px
  );
}

function saysFigures({ detail }: Hotspot): boolean {
  return /\d/.test(detail);
}
