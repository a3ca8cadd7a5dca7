import type { Texture } from 'pixi.js';
import grainFile from '../../assets/paper/grain.png?url';
import { asTexture, openBitmap, readDrawing } from './bitmap.ts';
import type { Drawings, Frame } from './drawings.ts';
import type { Ink } from './ink.ts';
import type { Theme } from './scene.ts';

const HATCH_STEP = 11; // px of the picture from stripe to stripe
const HATCH_ROOM = { 25: 7, 50: 12 } as const; // px by which the hatch stands out from the metal
const AROUND = 18; // directions in which a silhouette is grown

/** A silhouette to be hatched: drawings and where they stand. */
export interface Standing {
  readonly drawing: string;
  readonly x: number;
  readonly y: number;
}

/** A hatched silhouette and where its upper left corner stands. */
export interface Hatch {
  readonly texture: Texture;
  readonly x: number;
  readonly y: number;
}

/** Every drawing as a sheet of paper at one resolution: recoloured, grained, ready to be placed. */
export interface Sheets {
  readonly resolution: number;
  /** Shared; never destroy it alone. @throws RangeError if the drawing was not cut */
  sheet(name: string): { readonly texture: Texture; readonly frame: Frame };
  /** The metal of these drawings grown outwards and hatched. */
  hatch(standing: readonly Standing[], level: '25' | '50'): Hatch;
  /** Sheets glued into one, as large as the world and without a hole; the caller destroys it. */
  glue(standing: readonly Standing[], world: { readonly width: number; readonly height: number }): Texture;
  destroy(): void;
}

/** Cuts sheets from these drawings.
 *  @param resolution px for each unit of the drawing
 *  @param unit units of the drawing for one px of the picture */
export async function cutSheets(
  { names, drawing, frameOf }: Drawings,
  theme: Theme,
  ink: Ink,
  resolution: number,
  unit: number,
): Promise<Sheets> {
  const grain = await readGrain();
  const pens = new Map<string, CanvasRenderingContext2D>();
  const textures = new Map<string, { texture: Texture; frame: Frame }>();
  const hatches = new Map<string, Hatch>();
  await Promise.all(
    names.map(async (name) => {
      const image = await readDrawing(drawing(name, theme), name);
      const frame = frameOf(name);
      const pen = openBitmap(frame.width, frame.height, resolution);
      pen.drawImage(image, 0, 0, frame.width, frame.height);
      if (grain) lay(pen, grain, ink.grain);
      pens.set(name, pen);
      textures.set(name, { texture: asTexture(pen, frame.width), frame });
    }),
  );

  return {
    resolution,
    sheet(name) {
      const found = textures.get(name);
      if (!found) throw new RangeError(`assets/${name}.svg was not cut`);
      return found;
    },
    hatch(standing, level) {
      const key = `${level} ${standing.map(({ drawing: name, x, y }) => `${name} ${x} ${y}`).join(' ')}`;
      const made = hatches.get(key) ?? grow(standing, pens, frameOf, level, ink, resolution, unit);
      hatches.set(key, made);
      return made;
    },
    glue(standing, { width, height }) {
      const pen = openBitmap(width, height, resolution, { alpha: false });
      pen.fillStyle = ink.backdrop;
      pen.fillRect(0, 0, width, height);
      for (const { drawing: name, x, y } of standing) {
        const { width: wide, height: high } = frameOf(name);
        const from = pens.get(name);
        if (from) pen.drawImage(from.canvas, x, y, wide, high);
      }
      return asTexture(pen, width);
    },
    destroy() {
      for (const { texture } of [...textures.values(), ...hatches.values()]) texture.destroy(true);
    },
  };
}

async function readGrain(): Promise<HTMLImageElement | null> {
  const image = new Image();
  image.src = grainFile;
  try {
    await image.decode();
    return image;
  } catch {
    return null; // paper without grain is still paper
  }
}

/** Lays the grain over what is drawn and nowhere else, one px of it on one px of the sheet. */
function lay(pen: CanvasRenderingContext2D, grain: HTMLImageElement, strength: number): void {
  const pattern = pen.createPattern(grain, 'repeat');
  if (!pattern) return;
  pen.save();
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.globalCompositeOperation = 'source-atop';
  pen.globalAlpha = strength;
  pen.fillStyle = pattern;
  pen.fillRect(0, 0, pen.canvas.width, pen.canvas.height);
  pen.restore();
}

function grow(
  standing: readonly Standing[],
  pens: ReadonlyMap<string, CanvasRenderingContext2D>,
  frameOf: Drawings['frameOf'],
  level: '25' | '50',
  ink: Ink,
  resolution: number,
  unit: number,
): Hatch {
  const room = HATCH_ROOM[level] * unit;
  const boxes = standing.map(({ drawing: name, x, y }) => ({ name, x, y, ...frameOf(name) }));
  const x = Math.min(...boxes.map((box) => box.x)) - room;
  const y = Math.min(...boxes.map((box) => box.y)) - room;
  const width = Math.max(...boxes.map((box) => box.x + box.width)) + room - x;
  const height = Math.max(...boxes.map((box) => box.y + box.height)) + room - y;
  const silhouette = openBitmap(width, height, resolution);
  for (const box of boxes) {
    const pen = pens.get(box.name);
    if (pen) silhouette.drawImage(pen.canvas, box.x - x, box.y - y, box.width, box.height);
  }
  const pen = openBitmap(width, height, resolution);
  for (let i = 0; i < AROUND; i++) {
    const angle = (i / AROUND) * 2 * Math.PI;
    pen.drawImage(silhouette.canvas, Math.cos(angle) * room, Math.sin(angle) * room, width, height);
  }
  pen.globalCompositeOperation = 'source-in';
  pen.fillStyle = ink.hatchPaper;
  pen.fillRect(0, 0, width, height);
  pen.globalCompositeOperation = 'source-atop';
  pen.strokeStyle = ink.hatch;
  pen.lineWidth = HATCH_STEP * unit * (level === '50' ? 0.5 : 0.32);
  pen.beginPath();
  for (let at = -height; at < width; at += HATCH_STEP * unit) {
    pen.moveTo(at, height);
    pen.lineTo(at + height, 0);
  }
  pen.stroke();
  return { texture: asTexture(pen, width), x, y };
}
