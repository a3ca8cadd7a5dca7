import lane from '../../assets/yard/lane.json';
import palette from '../../assets/palette.json';
import type { Theme } from '../scene/index.ts';

const SHEETS = import.meta.glob<string>('../../assets/yard/*.svg', { query: '?raw', import: 'default', eager: true });

/** A place on the lane: its front, units of the lane from its upper left corner. */
export interface Front {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Size of the lane, its own units. */
export const LANE = { width: lane.world.width, height: lane.world.height } as const;

/** Every place on the lane in its order, by the name it has in links. */
export const FRONTS: ReadonlyMap<string, Front> = new Map(
  Object.entries(lane.fronts).map(([place, [x = 0, y = 0, width = 0, height = 0]]) => [
    place,
    { x, y: y - lane.world.y, width, height },
  ]),
);

/** Where the lane lies in its window: px for each unit, and where its origin is, px. */
export interface LaneView {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** Depths at which the name plates hang, units of the lane: every other one hangs lower, so that both find room. */
export const PLATE_y = { upper: 664, lower: 810 } as const;

const AROUND = 1.15; // how much of a window the front leaves free, as a factor of its size

/** The view that brings one front before the eye.
 *  @param window of the lane at its own size, px */
export function before(front: Front, window: { readonly width: number; readonly height: number }): LaneView {
  const px = window.width / LANE.width; // px for each unit while nothing is zoomed
  const scale = Math.min(window.width / (front.width * px * AROUND), window.height / (front.height * px * AROUND));
  return {
    scale,
    x: window.width / 2 - (front.x + front.width / 2) * px * scale,
    y: window.height / 2 - (front.y + front.height / 2) * px * scale,
  };
}

/** The whole lane as one picture in the colours of a theme. */
export function drawLane(theme: Theme): string {
  const dark = new Map(Object.entries(palette).map(([day, night]) => [day.toUpperCase(), night]));
  const sheets = lane.parts.map(({ file, x, y }) =>
    (SHEETS[`../../assets/yard/${file}.svg`] ?? '').replace(
      /<svg xmlns="[^"]+"/,
      `<svg x="${x}" y="${y}" overflow="visible"`,
    ),
  );
  const { y, width, height } = lane.world;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 ${y} ${width} ${height}">${sheets.join('')}</svg>`;
  const coloured =
    theme === 'day' ? svg : svg.replace(/#[0-9a-f]{6}\b/gi, (colour) => dark.get(colour.toUpperCase()) ?? colour);
  return `data:image/svg+xml;charset=utf-8,${encodeURIComponent(coloured)}`;
}
