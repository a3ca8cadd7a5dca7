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

/** The textures that point the way on ribbons, one for each kind of current: single chevron, double chevron, broken piece, dart. */
export function drawMarks(ink: Ink, resolution: number): Readonly<Record<CurrentKind, Texture>> {
  return {
    load: mark(resolution, (pen) => chevrons(pen, ink.chevron.load, [0], 3.2, 5)),
    fault: mark(resolution, (pen) => chevrons(pen, ink.chevron.fault, [-3.1, 3.1], 2.8)),
    stray: mark(resolution, (pen) => piece(pen, ink.current.stray, ink.casing)),
    person: mark(resolution, (pen) => chevrons(pen, ink.chevron.person, [0], 2.6, 3.3)),
  };
}

function mark(resolution: number, draw: (pen: CanvasRenderingContext2D) => void): Texture {
  const side = MARK_SIZE * 1.5;
  const pen = openBitmap(side, side, resolution);
  pen.translate(side / 2, side / 2);
  draw(pen);
  return asTexture(pen, side);
}

function chevrons(pen: CanvasRenderingContext2D, colour: string, at: readonly number[], width: number, half = 4): void {
  pen.strokeStyle = colour;
  pen.lineWidth = width;
  pen.lineJoin = 'miter';
  for (const x of at) {
    pen.beginPath();
    pen.moveTo(x - half * 0.5, -half);
    pen.lineTo(x + half * 0.5, 0);
    pen.lineTo(x - half * 0.5, half);
    pen.stroke();
  }
}

/** A piece of a broken ribbon: notched behind, pointed ahead, so that it points the way even when it stands still. */
function piece(pen: CanvasRenderingContext2D, colour: string, casing: string): void {
  const half = MARK_SIZE / 2;
  pen.beginPath();
  pen.moveTo(-9, -half + 1.5);
  pen.lineTo(5, -half + 1.5);
  pen.lineTo(10, 0);
  pen.lineTo(5, half - 1.5);
  pen.lineTo(-9, half - 1.5);
  pen.lineTo(-4.5, 0);
  pen.closePath();
  pen.lineJoin = 'round';
  pen.strokeStyle = casing;
  pen.lineWidth = 4;
  pen.stroke();
  pen.fillStyle = colour;
  pen.fill();
}
