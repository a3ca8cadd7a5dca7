import { Container, Graphics } from 'pixi.js';
import type { Point } from '../depiction/index.ts';
import type { Ink } from './ink.ts';

/** The two shapes of the arc take turns this often: 2.5 changes of shape a second, no change of brightness (WCAG 2.2, 2.3.1: at most three flashes). */
const TURN_s = 0.4;
const RAYS = 9;

/** A small paper star where an arc burns. */
export interface SparkView {
  readonly display: Container;
  show(at: Point | undefined, unit: number): void;
  beat(wall_s: number, stillness: boolean): void;
}

/** Opens the view of the arc; nothing shows until there is one. */
export function openSpark(ink: Ink): SparkView {
  const display = new Container();
  const shapes = [star(ink, 0), star(ink, 1)];
  display.addChild(...shapes);
  display.visible = false;
  return {
    display,
    show(at, unit) {
      display.visible = at !== undefined;
      if (at) display.position.set(at.x, at.y);
      display.scale.set(unit);
    },
    beat(wall_s, stillness) {
      const turn = stillness ? 0 : Math.floor(wall_s / TURN_s) % shapes.length;
      shapes.forEach((shape, i) => (shape.visible = i === turn));
    },
  };
}

function star(ink: Ink, turn: number): Graphics {
  const ring = (long: number, short: number): number[] =>
    Array.from({ length: RAYS * 2 }, (_, i) => {
      const angle = ((i + turn * 0.9) / (RAYS * 2)) * 2 * Math.PI;
      const ray = (i >> 1) % 3 === turn ? 1.18 : 1;
      const radius = i % 2 === 0 ? long * ray : short;
      return [Math.cos(angle) * radius, Math.sin(angle) * radius];
    }).flat();
  const rim = { width: 1.6, color: ink.sparkEdge, join: 'miter' } as const;
  return new Graphics()
    .poly(ring(15, 7))
    .fill({ color: ink.spark })
    .stroke(rim)
    .poly(ring(6.5, 3.2))
    .fill({ color: '#FFF9E3' });
}
