import { Container, Graphics } from 'pixi.js';
import type { Conductor, Depiction } from '../depiction/index.ts';
import { INSULATION, type Ink } from './ink.ts';
import { layTrack, standAt, stretch, type Track } from './track.ts';

const GAP = 26; // px of the picture left out where a conductor is interrupted
const STUB = 7; // px of bare copper that shows at each side of it
const STRIPE = 14; // px from stripe to stripe on a green-and-yellow conductor

/** All conductors of a picture; one is drawn anew only when it has changed. */
export interface ConductorsView {
  readonly display: Container;
  show(depiction: Depiction, unit: number): void;
}

/** Opens the view of the conductors. */
export function openConductors(ink: Ink): ConductorsView {
  const display = new Container();
  const drawn = new Map<
    string,
    { readonly model: Conductor; readonly region: Depiction['region']; readonly graphics: Graphics }
  >();
  return {
    display,
    show({ conductors, region }, unit) {
      const wanted = new Set(conductors.map(({ id }) => id));
      for (const [id, { graphics }] of drawn)
        if (!wanted.has(id)) {
          graphics.destroy();
          drawn.delete(id);
        }
      conductors.forEach((model, i) => {
        const known = drawn.get(model.id);
        if (known && known.region === region && isSame(known.model, model)) return;
        known?.graphics.destroy();
        const graphics = draw(model, INSULATION[region], ink, unit);
        display.addChildAt(graphics, Math.min(i, display.children.length));
        drawn.set(model.id, { model, region, graphics });
      });
    },
  };
}

function isSame(one: Conductor, other: Conductor): boolean {
  return one.route === other.route && one.broken === other.broken && one.loose === other.loose;
}

function draw(
  conductor: Conductor,
  colours: (typeof INSULATION)[Depiction['region']],
  ink: Ink,
  unit: number,
): Graphics {
  const graphics = new Graphics();
  const width = conductor.width;
  const track = layTrack(conductor.route, width * 1.6);
  const round = { cap: 'round', join: 'round' } as const;
  const butt = { cap: 'butt', join: 'round' } as const;
  const pieces = conductor.broken ? apart(track, conductor.broken, GAP * unit) : [[0, track.length] as const];
  for (const [from, to] of pieces) {
    const points = stretch(track, from, to);
    if (points.length < 4) continue;
    const shadow = points.map((value, i) => value + (i % 2 === 0 ? 1.5 : 2.5) * unit);
    graphics.poly(shadow, false).stroke({ width, color: ink.shadow, alpha: ink.shadowAlpha, ...round });
    if (pieces.length > 1) {
      const bare = stretch(track, from === 0 ? 0 : from - STUB * unit, to === track.length ? to : to + STUB * unit);
      graphics.poly(bare, false).stroke({ width: width * 0.6, color: colours.bare, ...butt });
    }
    const edge = conductor.insulation === 'neutral' ? 0.5 : 0.25;
    graphics.poly(points, false).stroke({ width: width + 0.8 * unit, color: ink.edge, alpha: edge, ...butt });
    graphics.poly(points, false).stroke({ width, color: colours[conductor.insulation], ...round });
    if (conductor.insulation === 'protective' && colours.stripe)
      for (let at = from + STRIPE * unit * 0.5; at < to; at += STRIPE * unit)
        graphics.poly(stretch(track, at, Math.min(to, at + STRIPE * unit * 0.45)), false).stroke({ width: width * 0.55, color: colours.stripe, ...butt }); // prettier-ignore
  }
  if (conductor.loose) {
    const { x, y } = conductor.loose;
    graphics
      .circle(x, y, width * 1.5)
      .fill({ color: ink.hatchPaper })
      .stroke({ width: 1.5 * unit, color: ink.hatch });
    graphics.poly([x - width, y + width * 0.4, x - width * 0.2, y - width * 0.5, x + width * 0.2, y + width * 0.5, x + width, y - width * 0.4], false).stroke({ width: 1.5 * unit, color: ink.hatch, ...round }); // prettier-ignore
  }
  return graphics;
}

/** The two pieces left of a track that is interrupted where it comes nearest to a point. */
function apart(
  track: Track,
  { x, y }: { readonly x: number; readonly y: number },
  gap: number,
): (readonly [number, number])[] {
  const stand = { x: 0, y: 0, angle: 0 };
  let best = 0;
  let least = Infinity;
  for (let at = 0; at <= track.length; at += gap / 8) {
    standAt(track, at, stand);
    const away = Math.hypot(stand.x - x, stand.y - y);
    if (away < least) [least, best] = [away, at];
  }
  return [
    [0, Math.max(0, best - gap / 2)],
    [Math.min(track.length, best + gap / 2), track.length],
  ];
}
