import { Container, type Renderer } from 'pixi.js';
import type { Picture } from '../depiction/index.ts';
import { openCamera } from './camera.ts';
import { openConductors } from './conductorView.ts';
import { openDrawings, type Drawings } from './drawings.ts';
import { INK } from './ink.ts';
import { openMarks } from './marksView.ts';
import { openParts } from './partsView.ts';
import { openRenderer, suitable } from './renderer.ts';
import { openRibbons } from './ribbonsView.ts';
import type { Scene, SceneOptions, Theme } from './scene.ts';
import { cutSheets, type Sheets } from './sheets.ts';
import type { Way } from './strokes.ts';
import { openSpark } from './sparkView.ts';

/** Widths of ribbons are told in px of a stage this many units of the drawing to the px. */
const UNITS_PER_PX = 1.05;
/** From this slowness on single cycles are shown: one then takes many seconds. */
const CYCLES_FROM = 1000;
/** A processor that paints needs time for other work too: it draws no more often than this, s. */
const LEAST_STEP_s = { webgl: 0, canvas: 1 / 40 } as const;
/** Longest step between two frames that is still motion, s; a longer one was a pause. */
const LONGEST_STEP_s = 0.1;
const FINEST = 3; // px for each unit of the drawing, at most
const USUAL_WIDTH = 1600; // units of the drawing across a whole place; only a first guess
const RECUT_AFTER_ms = 180;
const RESTORED_WITHIN_ms = 1500;

/** Opens the picture in a host that has a size. It owns no clock: call `frame` for every frame to be drawn.
 *  @throws NothingDrawsError if this browser can draw in no way */
export async function openScene(
  host: HTMLElement,
  { drawings: svgs, theme: firstTheme, stillness }: SceneOptions,
): Promise<Scene> {
  const drawings = openDrawings(svgs);
  let pixels = window.devicePixelRatio || 1;
  let theme = firstTheme;
  let renderer = await openRenderer(suitable(), pixels, INK[theme].backdrop);
  let paper = await openPaper(
    drawings,
    theme,
    Math.min(FINEST, Math.max(0.4, (host.clientWidth / USUAL_WIDTH) * pixels)),
    stillness,
    nameOf(renderer),
  );
  let picture: Picture | null = null;
  let size = { width: 1, height: 1 };
  let lost = false;
  let gone = false;
  let unsettled = 2; // frames that must be drawn even though nothing flows
  let before_s: number | null = null;
  let script_ms = 0;
  let recut: ReturnType<typeof setTimeout> | undefined;
  const camera = openCamera(stillness);
  mount();

  function mount(): void {
    const { canvas } = renderer;
    canvas.style.display = 'block';
    canvas.setAttribute('aria-hidden', 'true');
    host.append(canvas);
    canvas.addEventListener('webglcontextlost', onLost);
    canvas.addEventListener('webglcontextrestored', onRestored);
    resize();
  }

  function onLost(event: Event): void {
    event.preventDefault();
    lost = true;
    setTimeout(() => void fallBack(), RESTORED_WITHIN_ms);
  }

  function onRestored(): void {
    lost = false;
    unsettled = 2;
  }

  async function fallBack(): Promise<void> {
    if (!lost || gone) return;
    const dead = renderer;
    renderer = await openRenderer('canvas', pixels, INK[theme].backdrop);
    dead.canvas.remove();
    dead.destroy();
    lost = false;
    mount();
  }

  function resize(): void {
    size = { width: Math.max(1, host.clientWidth), height: Math.max(1, host.clientHeight) };
    pixels = window.devicePixelRatio || 1; // it changes with the zoom of the page and from screen to screen
    renderer.resize(size.width, size.height, pixels);
    if (picture) camera.fit(size, picture.world);
    unsettled = 2;
    recutSoon();
  }

  /** Sheets are cut for one scale; after it has changed for good they are cut anew. */
  function recutSoon(): void {
    clearTimeout(recut);
    recut = setTimeout(() => void recutNow(), RECUT_AFTER_ms);
  }

  async function recutNow(): Promise<void> {
    const wanted = Math.min(FINEST, camera.goal().scale * pixels);
    if (
      !picture ||
      (paper.theme === theme && paper.way === nameOf(renderer) && Math.abs(wanted / paper.sheets.resolution - 1) < 0.02)
    )
      return;
    const way = nameOf(renderer);
    const fresh = await openPaper(drawings, theme, wanted, stillness, way);
    if (gone || fresh.theme !== theme || way !== nameOf(renderer)) return fresh.destroy();
    const old = paper;
    paper = fresh;
    paper.show(picture);
    paper.settle();
    paper.prepare(picture);
    unsettled = 2;
    old.destroy();
  }

  return {
    show(next) {
      const first = picture === null;
      const world = picture?.world;
      picture = next;
      if (world?.width !== next.world.width || world.height !== next.world.height) camera.fit(size, next.world);
      paper.show(next);
      unsettled = 2;
      if (first) {
        recutSoon();
        paper.prepare(next);
      }
    },
    frame({ time_s, slow, wall_s }) {
      const start = performance.now();
      if (lost || gone || !picture) return;
      const passed_s = before_s === null ? Infinity : wall_s - before_s;
      if (unsettled === 0 && passed_s >= 0 && passed_s < LEAST_STEP_s[nameOf(renderer)]) return;
      const step_s = Number.isFinite(passed_s) ? Math.min(LONGEST_STEP_s, Math.max(0, passed_s)) : 0;
      before_s = wall_s;
      const moved = camera.beat(wall_s);
      if (stillness && !moved && unsettled === 0) {
        script_ms = performance.now() - start;
        return;
      }
      unsettled = Math.max(0, unsettled - 1);
      const pulse_rad_s = 2 * Math.PI * picture.frequency_Hz;
      const cycles = Number.isFinite(slow) && slow >= CYCLES_FROM;
      paper.beat(
        { wall_s, step_s, cycle: cycles ? { angle_rad: pulse_rad_s * time_s, swing_s: slow / pulse_rad_s } : null },
        stillness,
      );
      const { scale, x, y } = camera.view;
      paper.root.scale.set(scale);
      paper.root.position.set(x, y);
      const { width, height } = picture.world;
      const away = { x: (size.width / 2 - x) / scale - width / 2, y: (size.height / 2 - y) / scale - height / 2 };
      paper.lag(stillness ? 0 : away.x, stillness ? 0 : away.y);
      renderer.render(paper.root);
      script_ms = performance.now() - start;
    },
    focus(name) {
      camera.focus(name === null ? null : (picture?.frames[name] ?? null));
      unsettled = 2;
      recutSoon();
    },
    toScreen: (point) => camera.toScreen(point),
    resize,
    dress(next) {
      theme = next;
      renderer.background.color = INK[theme].backdrop;
      unsettled = 2;
      void recutNow();
    },
    destroy() {
      gone = true;
      clearTimeout(recut);
      renderer.canvas.remove();
      paper.destroy();
      renderer.destroy();
    },
    get renderer() {
      return nameOf(renderer);
    },
    get lastFrameScript_ms() {
      return script_ms;
    },
  };
}

function nameOf({ name }: Renderer): Way {
  return name === 'canvas' ? 'canvas' : 'webgl';
}

/** Everything that is drawn, in one theme and cut for one scale. */
async function openPaper(drawings: Drawings, theme: Theme, resolution: number, stillness: boolean, way: Way) {
  const ink = INK[theme];
  const sheets: Sheets = await cutSheets(drawings, theme, ink, resolution, UNITS_PER_PX);
  const root = new Container();
  const parts = openParts(root);
  const conductors = openConductors(ink, way);
  const shop = openMarks(ink, way, resolution);
  const ribbons = openRibbons({ ink, way, marks: shop.marks, unit: UNITS_PER_PX, stillness });
  const spark = openSpark(ink);
  let layered = false;
  return {
    theme,
    way,
    sheets,
    root,
    show(picture: Picture): void {
      parts.show(picture, sheets);
      if (!layered) {
        parts.layer('ribbons').addChild(conductors.display, ribbons.parts);
        parts.layer('body ribbons').addChild(ribbons.people);
        parts.layer('over').addChild(spark.display);
        layered = true;
      }
      conductors.show(picture, UNITS_PER_PX);
      ribbons.show(picture);
      spark.show(picture.spark, UNITS_PER_PX);
    },
    settle: ribbons.settle,
    /** Hatches the metal before it is live, while nothing else is to be done. */
    prepare(picture: Picture): void {
      const todo = [...parts.ahead(picture, sheets)];
      const next = (): void => {
        if (root.destroyed) return;
        todo.shift()?.();
        if (todo.length > 0) whenIdle(next);
      };
      whenIdle(next);
    },
    beat(beat: Parameters<typeof ribbons.beat>[0], still: boolean): void {
      parts.beat(beat.wall_s, still);
      ribbons.beat(beat);
      spark.beat(beat.wall_s, still);
    },
    lag: parts.lag,
    destroy(): void {
      ribbons.destroy();
      parts.destroy();
      root.destroy({ children: true });
      shop.destroy();
      sheets.destroy();
    },
  };
}

function whenIdle(work: () => void): void {
  if ('requestIdleCallback' in window) window.requestIdleCallback(work, { timeout: 2000 });
  else setTimeout(work, 50);
}
