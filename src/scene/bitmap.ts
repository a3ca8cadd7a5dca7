import { ImageSource, Texture } from 'pixi.js';

/** A canvas to draw a texture on, measured in units of the drawing.
 *  @throws Error if the browser gives no 2D drawing context */
export function openBitmap(
  width: number,
  height: number,
  resolution: number,
  options: CanvasRenderingContext2DSettings = {},
): CanvasRenderingContext2D {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * resolution));
  canvas.height = Math.max(1, Math.round(height * resolution));
  const pen = canvas.getContext('2d', options);
  if (!pen) throw new Error('openBitmap: this browser gives no 2D drawing context');
  pen.scale(canvas.width / width, canvas.height / height);
  return pen;
}

/** The finished bitmap as a texture of this width, in units of the drawing. */
export function asTexture({ canvas }: CanvasRenderingContext2D, width: number): Texture {
  return new Texture({
    source: new ImageSource({ resource: canvas, resolution: canvas.width / width, scaleMode: 'linear' }),
  });
}

/** Reads an SVG as a picture that can be drawn at any size.
 *  @throws Error naming the drawing if the browser cannot read it */
export async function readDrawing(svg: string, name: string): Promise<HTMLImageElement> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  try {
    await image.decode();
  } catch (cause) {
    throw new Error(`assets/${name}.svg cannot be read by this browser`, { cause });
  }
  return image;
}
