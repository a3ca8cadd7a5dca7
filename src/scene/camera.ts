import type { Box, Point } from '../depiction/index.ts';

const MOVE_s = 0.38;
/** Where the whole nearly fills the window, so much of its edge may be cut rather than leave a margin. */
const MAY_CUT = 0.12;

/** What the window shows: units of the drawing to px, and where the drawing's origin lies, px. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** Moves between views, easing out, always interruptible. */
export interface Camera {
  /** Where it is now. */
  readonly view: View;
  /** Chooses what to look at; `null` is the whole. */
  focus(box: Box | null): void;
  /** A new window or a new whole: goes there at once. */
  fit(
    window: { readonly width: number; readonly height: number },
    world: { readonly width: number; readonly height: number },
  ): void;
  /** @returns true while it moves */
  beat(wall_s: number): boolean;
  /** Where it will come to rest. */
  goal(): View;
  toScreen(point: Point): Point;
}

/** Opens a camera.
 *  @param stillness moves at once */
export function openCamera(stillness: boolean): Camera {
  let window = { width: 1, height: 1 };
  let world = { width: 1, height: 1 };
  let target: Box | null = null;
  let view: View = { scale: 1, x: 0, y: 0 };
  let from = view;
  let since_s: number | null = null;
  let moving = false;

  const goal = (): View => look(target, window, world);

  return {
    get view() {
      return view;
    },
    focus(box) {
      target = box;
      from = view;
      since_s = null;
      moving = true;
    },
    fit(newWindow, newWorld) {
      window = newWindow;
      world = newWorld;
      view = goal();
      moving = false;
    },
    beat(wall_s) {
      if (!moving) return false;
      since_s ??= wall_s;
      const t = stillness ? 1 : Math.min(1, (wall_s - since_s) / MOVE_s);
      const eased = 1 - (1 - t) ** 3;
      const to = goal();
      view = {
        scale: from.scale + (to.scale - from.scale) * eased,
        x: from.x + (to.x - from.x) * eased,
        y: from.y + (to.y - from.y) * eased,
      };
      moving = t < 1;
      return true;
    },
    goal,
    toScreen: ({ x, y }) => ({ x: view.x + x * view.scale, y: view.y + y * view.scale }),
  };
}

/** The view of a box (or of the whole) in a window. The whole fills the window where little is lost; never shows beyond the world while it fills. */
function look(
  box: Box | null,
  window: { readonly width: number; readonly height: number },
  world: { readonly width: number; readonly height: number },
): View {
  const fill = Math.max(window.width / world.width, window.height / world.height);
  const whole = Math.min(window.width / world.width, window.height / world.height);
  const wanted = box ? Math.min(window.width / box.width, window.height / box.height) : whole;
  const scale = whole / fill > 1 - MAY_CUT || box ? Math.max(wanted, fill) : wanted;
  const centre = box
    ? { x: box.x + box.width / 2, y: box.y + box.height / 2 }
    : { x: world.width / 2, y: world.height / 2 };
  return {
    scale,
    x: inside(window.width / 2 - centre.x * scale, window.width, world.width * scale),
    y: inside(window.height / 2 - centre.y * scale, window.height, world.height * scale),
  };
}

function inside(origin: number, window: number, world: number): number {
  return world <= window ? (window - world) / 2 : Math.min(0, Math.max(window - world, origin));
}
