import type { Container } from 'pixi.js';
import type { Conductor, Picture, Point } from '../depiction/index.ts';
import { INSULATION, type Ink } from './ink.ts';
import { openStrokes, type Stroke, type Way } from './strokes.ts';
import { layTrack, standAt, stretch, type Track } from './track.ts';

const GAP = 26; // px of the picture left out where a conductor is interrupted
const STUB = 7; // px of bare copper that shows at each side of it
const STRIPE = 14; // px from stripe to stripe on a green-and-yellow conductor

const DISC = 24; // corners of a round thing

/** All conductors of a picture; one is laid anew only when it has changed. */
export interface ConductorsView {
  readonly display: Container;
  show(picture: Picture, unit: number): void;
}

interface Laid {
  readonly model: Conductor;
  readonly region: Picture['region'];
  readonly strokes: readonly Stroke[];
}

/** Opens the view of the conductors. */
export function openConductors(ink: Ink, way: Way): ConductorsView {
  const sheet = openStrokes(way);
  let laid: readonly Laid[] = [];
  return {
    display: sheet.display,
    show({ conductors, region }, unit) {
      const before = new Map(laid.map((one) => [one.model.id, one]));
      const now = conductors.map((model): Laid => {
        const known = before.get(model.id);
        if (known && known.region === region && isSame(known.model, model)) return known;
        return { model, region, strokes: lay(model, INSULATION[region], ink, unit) };
      });
      if (now.length === laid.length && now.every((one, i) => one === laid[i])) return;
      laid = now;
      sheet.draw(now.flatMap(({ strokes }) => strokes));
    },
  };
}

function isSame(one: Conductor, other: Conductor): boolean {
  return one.route === other.route && one.broken === other.broken && one.loose === other.loose;
}

function lay(
  { route, width, broken, loose, insulation }: Conductor,
  colours: (typeof INSULATION)[Picture['region']],
  ink: Ink,
  unit: number,
): readonly Stroke[] {
  const track = layTrack(route, width * 1.6);
  const pieces = broken ? apart(track, broken, GAP * unit) : [[0, track.length] as const];
  const strokes: Stroke[] = [];
  for (const [from, to] of pieces) {
    const points = stretch(track, from, to);
    if (points.length < 4) continue;
    const shadow = points.map((value, i) => value + (i % 2 === 0 ? 1.5 : 2.5) * unit);
    strokes.push({ lines: [shadow], width, color: ink.shadow, alpha: ink.shadowAlpha, cap: 'round' });
    if (pieces.length > 1) {
      const bare = stretch(track, from === 0 ? 0 : from - STUB * unit, to === track.length ? to : to + STUB * unit);
      strokes.push({ lines: [bare], width: width * 0.6, color: colours.bare, cap: 'butt' });
    }
    const alpha = insulation === 'neutral' ? 0.5 : 0.25;
    strokes.push({ lines: [points], width: width + 0.8 * unit, color: ink.edge, alpha, cap: 'butt' });
    strokes.push({ lines: [points], width, color: colours[insulation], cap: 'round' });
    if (insulation === 'protective' && colours.stripe) {
      const lines: (readonly number[])[] = [];
      for (let at = from + STRIPE * unit * 0.5; at < to; at += STRIPE * unit)
        lines.push(stretch(track, at, Math.min(to, at + STRIPE * unit * 0.45)));
      strokes.push({ lines, width: width * 0.55, color: colours.stripe, cap: 'butt' });
    }
  }
  return loose ? [...strokes, ...looseScrew(loose, width, ink, unit)] : strokes;
}

/** A hatched disc with a crooked line: a screw that does not hold. */
function looseScrew({ x, y }: Point, width: number, ink: Ink, unit: number): readonly Stroke[] {
  const disc = Array.from({ length: DISC }, (_, i) => {
    const angle = (i / DISC) * 2 * Math.PI;
    return [x + width * 1.5 * Math.cos(angle), y + width * 1.5 * Math.sin(angle)];
  }).flat();
  const crooked = [-1, 0.4, -0.2, -0.5, 0.2, 0.5, 1, -0.4].map((share, i) => (i % 2 === 0 ? x : y) + share * width);
  const line = { width: 1.5 * unit, color: ink.hatch, cap: 'round' } as const;
  return [
    { ...line, lines: [disc], fill: ink.hatchPaper },
    { ...line, lines: [crooked] },
  ];
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
