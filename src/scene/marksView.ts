import { Container, Sprite, type Texture } from 'pixi.js';
import type { CurrentKind } from '../depiction/index.ts';
import type { Ink } from './ink.ts';
import { MARK_SIZE, marksOf, markTexture, type Mark } from './marks.ts';
import { openPainted, type Way } from './strokes.ts';
import { standAt, type Stand, type Track } from './track.ts';

/** A ribbon of this width wears its marks at the size they were drawn in. */
const MARKED_WIDTH = MARK_SIZE - 2;

/** Where marks stand: from `first` to `last` along a track, this far apart; backward ones point to its start. */
export interface Row {
  readonly track: Track;
  readonly first: number;
  readonly last: number;
  readonly spacing: number;
  readonly backward: boolean;
  /** Of the ribbon, units of the drawing. */
  readonly width: number;
  /** 1 as it is, −1 turned about, between them seen from the side. */
  readonly flip: number;
}

/** The marks of one ribbon. */
export interface MarksView {
  readonly display: Container;
  place(row: Row): void;
}

/** Where the marks of ribbons come from. */
export interface MarkShop {
  marks(kind: CurrentKind): MarksView;
  destroy(): void;
}

/** Opens the marks in this ink: sprites of one texture for a graphics card, paths for a pen.
 *  @param resolution px for each unit of the drawing */
export function openMarks(ink: Ink, way: Way, resolution: number): MarkShop {
  const shapes = marksOf(ink);
  const textures = new Map<CurrentKind, Texture>();
  const textureOf = (kind: CurrentKind): Texture => {
    const texture = textures.get(kind) ?? markTexture(shapes[kind], Math.max(2, resolution * 1.5));
    textures.set(kind, texture);
    return texture;
  };
  return {
    marks: (kind) => (way === 'canvas' ? penMarks(shapes[kind]) : spriteMarks(textureOf(kind))),
    destroy() {
      for (const texture of textures.values()) texture.destroy(true);
    },
  };
}

/** A sprite for each mark. */
function spriteMarks(texture: Texture): MarksView {
  const display = new Container();
  const stand: Stand = { x: 0, y: 0, angle: 0 };
  return {
    display,
    place(row) {
      const scale = row.width / MARKED_WIDTH;
      const along = (row.backward ? -1 : 1) * row.flip;
      let used = 0;
      for (let d = row.first; d <= row.last; d += row.spacing) {
        standAt(row.track, row.backward ? row.track.length - d : d, stand);
        let sprite = display.children[used] as Sprite | undefined;
        if (!sprite) {
          sprite = new Sprite({ texture, anchor: 0.5 });
          display.addChild(sprite);
        }
        sprite.position.set(stand.x, stand.y);
        sprite.rotation = stand.angle;
        sprite.scale.set(scale * along, scale);
        used++;
      }
      // Shrunk to nothing, not hidden: hiding would have the renderer sort everything anew in every frame.
      for (let i = used; i < display.children.length; i++) display.children[i]?.scale.set(0);
    },
  };
}

/** All marks of a ribbon as one path: the processor pays for each thing it is told to paint. */
function penMarks(mark: Mark): MarksView {
  const stand: Stand = { x: 0, y: 0, angle: 0 };
  let row: Row | null = null;
  return {
    display: openPainted((pen, alpha) => {
      if (!row || row.first > row.last) return;
      const scale = row.width / MARKED_WIDTH;
      const along = (row.backward ? -1 : 1) * row.flip * scale;
      pen.beginPath();
      for (let d = row.first; d <= row.last; d += row.spacing) {
        standAt(row.track, row.backward ? row.track.length - d : d, stand);
        const [cos, sin] = [Math.cos(stand.angle), Math.sin(stand.angle)];
        for (const line of mark.lines) {
          for (let i = 0; i < line.length; i += 2) {
            const [u, v] = [(line[i] ?? 0) * along, (line[i + 1] ?? 0) * scale];
            const [x, y] = [stand.x + u * cos - v * sin, stand.y + u * sin + v * cos];
            if (i === 0) pen.moveTo(x, y);
            else pen.lineTo(x, y);
          }
          if (mark.fill !== undefined) pen.closePath();
        }
      }
      pen.globalAlpha = alpha;
      pen.lineCap = 'butt';
      pen.lineJoin = mark.fill === undefined ? 'miter' : 'round';
      pen.lineWidth = mark.width * scale;
      pen.strokeStyle = mark.color;
      pen.stroke();
      if (mark.fill === undefined) return;
      pen.fillStyle = mark.fill;
      pen.fill();
    }),
    place(next) {
      row = next;
    },
  };
}
