import type { Texture } from 'pixi.js';
import type { CurrentKind } from '../depiction/index.ts';
import { asTexture, openBitmap } from './bitmap.ts';
import type { Ink } from './ink.ts';

/** Side of the square that a mark is drawn in; a ribbon of this width wears it at its own size. */
export const MARK_SIZE = 16;

/** How far apart marks stand along a ribbon, in widths of the ribbon and at least so many units. */
export const SPACING: Readonly<Record<CurrentKind, { readonly widths: number; readonly least: number }>> = {
  load: { widths: 4.4, least: 38 },
  fault: { widths: 1.9, least: 20 },
  stray: { widths: 1.8, least: 17 },
  person: { widths: 2.2, least: 16 },
};

/** A mark that points the way, about its middle: open lines, or a closed piece where it is filled. */
export interface Mark {
  readonly lines: readonly (readonly number[])[];
  readonly width: number;
  readonly color: string;
  readonly fill?: string;
}

/** The marks of each kind of current: single chevron, double chevron, broken piece, dart. */
export function marksOf(ink: Ink): Readonly<Record<CurrentKind, Mark>> {
  return {
    load: chevrons(ink.chevron.load, [0], 3.2, 5),
    fault: chevrons(ink.chevron.fault, [-3.1, 3.1], 2.8),
    stray: piece(ink.current.stray, ink.casing),
    person: chevrons(ink.chevron.person, [0], 2.6, 3.3),
  };
}

/** A mark as a texture, for a graphics card. */
export function markTexture(mark: Mark, resolution: number): Texture {
  const side = MARK_SIZE * 1.5;
  const pen = openBitmap(side, side, resolution);
  pen.translate(side / 2, side / 2);
  pen.lineJoin = mark.fill === undefined ? 'miter' : 'round';
  pen.lineWidth = mark.width;
  pen.strokeStyle = mark.color;
  pen.beginPath();
  for (const line of mark.lines) {
    pen.moveTo(line[0] ?? 0, line[1] ?? 0);
    for (let i = 2; i < line.length; i += 2) pen.lineTo(line[i] ?? 0, line[i + 1] ?? 0);
    if (mark.fill !== undefined) pen.closePath();
  }
  pen.stroke();
  if (mark.fill !== undefined) {
    pen.fillStyle = mark.fill;
    pen.fill();
  }
  return asTexture(pen, side);
}

function chevrons(color: string, at: readonly number[], width: number, half = 4): Mark {
  return { lines: at.map((x) => [x - half * 0.5, -half, x + half * 0.5, 0, x - half * 0.5, half]), width, color };
}

/** A piece of a broken ribbon: notched behind, pointed ahead, so that it points the way even when it stands still. */
function piece(fill: string, casing: string): Mark {
  const half = MARK_SIZE / 2;
  const outline = [-9, 1.5 - half, 5, 1.5 - half, 10, 0, 5, half - 1.5, -9, half - 1.5, -4.5, 0];
  return { lines: [outline], width: 4, color: casing, fill };
}
