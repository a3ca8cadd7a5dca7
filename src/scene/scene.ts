import type { Picture, Point } from '../depiction/index.ts';

/** The moving picture of one moment's model at a time; it owns no clock. */
export interface Scene {
  /** A new picture: redraws what has changed; what has newly appeared or gone is animated by the next frames. */
  show(picture: Picture): void;
  /** Draws one frame. `time_s` is the moment on the timeline, `slow` how many times slower than real it runs, `wall_s` the viewer's own time. */
  frame(now: { readonly time_s: number; readonly slow: number; readonly wall_s: number }): void;
  /** Moves the camera to a named frame of the picture, or to the whole. */
  focus(frame: string | null): void;
  /** Where a point of the drawing lies now, CSS px from the upper left corner of the host. */
  toScreen(point: Point): Point;
  /** Call when the host has changed its size. */
  resize(): void;
  /** Changes paper and ink without rebuilding the host. */
  dress(theme: Theme): void;
  destroy(): void;
  readonly renderer: 'webgl' | 'canvas';
  /** Script time of the last `frame`, ms. */
  readonly lastFrameScript_ms: number;
}

/** Which palette the picture wears. */
export type Theme = 'day' | 'dark';

/** How the picture is opened. */
export interface SceneOptions {
  /** The text of every SVG that the pictures may name, by its path under assets/ without the ending. */
  readonly drawings: Readonly<Record<string, string>>;
  readonly theme: Theme;
  /** Reduced motion: nothing flows, everything changes at once. */
  readonly stillness: boolean;
}
