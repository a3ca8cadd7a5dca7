import { Container, Graphics, RenderContainer, type ICanvasRenderingContext2D, type Renderer } from 'pixi.js';

/** How the picture is drawn here: by a graphics card, or with a pen by the processor. */
export type Way = 'webgl' | 'canvas';

/** Lines of one width and colour; closed ones may be filled. Points are x, y, x, y, … in units of the drawing. */
export interface Stroke {
  readonly lines: readonly (readonly number[])[];
  readonly width: number;
  readonly color: string;
  readonly alpha?: number;
  readonly cap: 'round' | 'butt';
  /** Colour inside lines that are closed. */
  readonly fill?: string;
}

/** A few strokes, one over the other. */
export interface Strokes {
  readonly display: Container;
  draw(strokes: readonly Stroke[]): void;
}

/** Opens an empty sheet for strokes. With a pen each stroke is a path that is kept: in a frame it costs one call. */
export function openStrokes(way: Way): Strokes {
  return way === 'canvas' ? penStrokes() : graphicsStrokes();
}

/** Something that is painted with a pen, in its place among all that is drawn. Only the canvas renderer has one. */
export function openPainted(paint: (pen: ICanvasRenderingContext2D, alpha: number) => void): Container {
  const display = new RenderContainer({
    render(renderer: Renderer) {
      if (!('canvasContext' in renderer)) return;
      const { canvasContext } = renderer;
      const alpha = (display.groupColorAlpha >>> 24) / 255;
      if (alpha === 0) return;
      canvasContext.setContextTransform(display.groupTransform);
      paint(canvasContext.activeContext, alpha);
    },
  });
  return display;
}

function penStrokes(): Strokes {
  let drawn: ReadonlyMap<Stroke, Path2D> = new Map();
  return {
    display: openPainted((pen, alpha) => {
      pen.lineJoin = 'round';
      for (const [stroke, path] of drawn) {
        pen.globalAlpha = alpha * (stroke.alpha ?? 1);
        if (stroke.fill !== undefined) {
          pen.fillStyle = stroke.fill;
          pen.fill(path);
        }
        pen.lineCap = stroke.cap;
        pen.lineWidth = stroke.width;
        pen.strokeStyle = stroke.color;
        pen.stroke(path);
      }
    }),
    draw(strokes) {
      drawn = new Map(strokes.map((stroke) => [stroke, drawn.get(stroke) ?? pathOf(stroke)]));
    },
  };
}

function pathOf({ lines, fill }: Stroke): Path2D {
  const path = new Path2D();
  for (const line of lines) {
    path.moveTo(line[0] ?? 0, line[1] ?? 0);
    for (let i = 2; i < line.length; i += 2) path.lineTo(line[i] ?? 0, line[i + 1] ?? 0);
    if (fill !== undefined) path.closePath();
  }
  return path;
}

function graphicsStrokes(): Strokes {
  const graphics = new Graphics();
  return {
    display: graphics,
    draw(strokes) {
      graphics.clear();
      for (const { lines, width, color, alpha = 1, cap, fill } of strokes)
        for (const line of lines) {
          graphics.poly([...line], fill !== undefined);
          if (fill !== undefined) graphics.fill({ color: fill });
          graphics.stroke({ width, color, alpha, cap, join: 'round' });
        }
    },
  };
}
