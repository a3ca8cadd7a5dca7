import type { Container } from 'pixi.js';
import type { Conductor, CurrentKind, Drain, Ribbon } from '../depiction/index.ts';
import type { Ink } from './ink.ts';
import { SPACING } from './marks.ts';
import type { MarksView } from './marksView.ts';
import { openStrokes, type Way } from './strokes.ts';
import { layTrack, stretch, type Track } from './track.ts';

const FADE_s = 0.2;
/** Working current is drawn slimmer than its amperes say, so that what should not be there stands out. */
const SLIM = 0.66;
/** A change of width smaller than this is not seen. */
const SEEN_px = 0.2;
/** Strength of what is hardly worth telling. */
const FAINT = 0.42;
/** Narrower than this the form of a ribbon cannot be told. */
const LEAST_px: Readonly<Record<CurrentKind, number>> = { load: 3, fault: 4.5, stray: 6, person: 5 };
/** Marks go on where one ribbon joins the next; they keep away from ends by this share of the width. */
const END_ROOM: Readonly<Record<CurrentKind, number>> = { load: 0.05, fault: 0.05, stray: 0.3, person: 0.05 };

/** Where two ribbons cross, the one that matters more lies on top. */
const HEIGHT: Readonly<Record<CurrentKind, number>> = { stray: 0, load: 1, fault: 2, person: 3 };

/** What all ribbons share. */
export interface RibbonDress {
  readonly ink: Ink;
  readonly way: Way;
  readonly marks: (kind: CurrentKind) => MarksView;
  /** Units of the drawing to one px of width. */
  readonly unit: number;
  readonly stillness: boolean;
}

/** Colours of the wires that ribbons lie on. */
export type WireColours = Readonly<Record<Conductor['insulation'], string>>;

/** One instant of the viewer's time, and, where the run is slowed to single cycles, of the supply's. */
export interface Beat {
  readonly wall_s: number;
  readonly step_s: number;
  readonly cycle: { readonly angle_rad: number; readonly swing_s: number } | null;
}

/** One ribbon in the picture; `under`, `band` and `marks` go to three layers so that no casing crosses another band. */
export interface RibbonView {
  readonly under: Container;
  readonly band: Container;
  readonly marks: Container;
  readonly kind: CurrentKind;
  update(ribbon: Ribbon, wires: WireColours): void;
  /** Makes it appear, from its upstream end, as its delay says. */
  arrive(): void;
  /** Shows it whole at once. */
  settle(): void;
  /** Empties it away from a break, or, without one, lets it fade. */
  leave(drain: Drain | undefined): void;
  /** @returns false once it has gone */
  beat(beat: Beat): boolean;
  /** True once any of it shows. */
  begun(): boolean;
  /** True until it has wholly appeared. */
  arriving(): boolean;
  /** True from `leave` on. */
  leaving(): boolean;
  destroy(): void;
}

type Phase =
  | { readonly kind: 'steady' }
  | { readonly kind: 'arriving'; since_s: number | null }
  | { readonly kind: 'draining'; since_s: number | null; readonly drain: Drain }
  | { readonly kind: 'fading'; since_s: number | null };

/** Opens a view of a ribbon; it is steady until told otherwise. */
export function openRibbon(first: Ribbon, firstWires: WireColours, dress: RibbonDress): RibbonView {
  const below = openStrokes(dress.way);
  const above = openStrokes(dress.way);
  const row = dress.marks(first.kind);
  const [under, band, marks] = [below.display, above.display, row.display];
  under.zIndex = band.zIndex = marks.zIndex = HEIGHT[first.kind];
  let model = first;
  let wires = firstWires;
  let width = 0;
  let track: Track = { xy: [], at: [0], length: 0 };
  let phase: Phase = { kind: 'steady' };
  let travel = 0;
  let drawn = '';

  function lay(): void {
    width = Math.max(LEAST_px[model.kind], model.width_px * (model.kind === 'load' ? SLIM : 1)) * dress.unit;
    track = layTrack(model.route, width * 1.25);
    drawn = '';
  }

  function drawBand(low: number, high: number): void {
    const key = `${low.toFixed(1)} ${high.toFixed(1)}`;
    if (key === drawn) return;
    const points = stretch(track, low, high);
    drawn = points.length < 4 ? '' : key;
    if (points.length < 4 || model.kind === 'stray') {
      below.draw([]);
      above.draw([]);
      return;
    }
    const { ink, unit } = dress;
    const line = { lines: [points], cap: 'round' } as const;
    const shadow = {
      lines: [points.map((value, i) => value + (i % 2 === 0 ? 1.5 : 3) * unit)],
      width: width + unit,
      color: ink.shadow,
      alpha: ink.shadowAlpha,
      cap: 'round',
    } as const;
    if (model.kind === 'person') {
      below.draw([shadow, { ...line, width: width + 3 * unit, color: ink.edge }]);
      above.draw([
        { ...line, width, color: ink.current.person },
        { ...line, width: width * 0.5, color: ink.core },
      ]);
      return;
    }
    // Work lies on its wire and lets the insulation show; what does not belong wears a light edge.
    const edge = model.kind === 'load' && model.wire ? wires[model.wire] : ink.casing;
    const edged = model.casing || model.wire !== undefined;
    below.draw(edged ? [shadow, { ...line, width: width + 3.4 * unit, color: edge }] : [shadow]);
    above.draw([{ ...line, width, color: ink.current[model.kind] }]);
  }

  function placeMarks(low: number, high: number, flip: number): void {
    const { widths, least } = SPACING[model.kind];
    const spacing = Math.max(widths * width, least * dress.unit);
    const backward = model.speed < 0;
    const room = END_ROOM[model.kind] * width;
    const from = backward ? track.length - high : low;
    const to = backward ? track.length - low : high;
    const start = (((travel - model.reach) % spacing) + spacing) % spacing;
    const first = start + Math.max(0, Math.ceil((from + room - start) / spacing)) * spacing;
    row.place({ track, first, last: to - room, spacing, backward, width, flip });
  }

  /** What of the length shows now, and whether the phase is over. */
  function range(wall_s: number): { low: number; high: number; alpha: number; over: boolean } {
    const { length } = track;
    if (phase.kind === 'steady') return { low: 0, high: length, alpha: 1, over: false };
    phase.since_s ??= wall_s;
    const passed = dress.stillness ? Infinity : wall_s - phase.since_s;
    if (phase.kind === 'fading')
      return { low: 0, high: length, alpha: 1 - Math.min(1, passed / FADE_s), over: passed >= FADE_s };
    const { delay_s, run_s } = phase.kind === 'draining' ? phase.drain : model;
    const share = run_s > 0 ? Math.min(1, Math.max(0, (passed - delay_s) / run_s)) : passed >= delay_s ? 1 : 0;
    const over = share >= 1;
    if (phase.kind === 'draining') {
      const edge = share * length;
      return phase.drain.from === 'start'
        ? { low: edge, high: length, alpha: 1, over }
        : { low: 0, high: length - edge, alpha: 1, over };
    }
    return model.speed >= 0
      ? { low: 0, high: share * length, alpha: 1, over }
      : { low: (1 - share) * length, high: length, alpha: 1, over };
  }

  lay();
  return {
    under,
    band,
    marks,
    kind: first.kind,
    update(ribbon, newWires) {
      const same =
        wires === newWires &&
        Math.abs(ribbon.width_px - model.width_px) < SEEN_px &&
        ribbon.route === model.route &&
        ribbon.casing === model.casing;
      model = same ? { ...ribbon, width_px: model.width_px } : ribbon;
      wires = newWires;
      if (!same) lay();
      if (phase.kind !== 'arriving') phase = { kind: 'steady' };
    },
    arrive() {
      phase = { kind: 'arriving', since_s: null };
    },
    settle() {
      phase = { kind: 'steady' };
    },
    leave(drain) {
      if (phase.kind === 'draining' || phase.kind === 'fading') return;
      phase = drain ? { kind: 'draining', since_s: null, drain } : { kind: 'fading', since_s: null };
    },
    beat({ wall_s, step_s, cycle }) {
      const { low, high, alpha, over } = range(wall_s);
      if (over && (phase.kind === 'draining' || phase.kind === 'fading')) return false;
      if (over) phase = { kind: 'steady' };
      under.alpha = band.alpha = marks.alpha = alpha * (model.faint ? FAINT : 1);
      drawBand(low, high);
      let flip = 1;
      if (!dress.stillness) {
        if (cycle) {
          const angle = cycle.angle_rad + model.phase_rad;
          travel = Math.abs(model.speed) * cycle.swing_s * Math.sin(angle);
          flip = Math.max(-1, Math.min(1, 5 * Math.cos(angle)));
        } else travel += Math.abs(model.speed) * step_s;
      }
      placeMarks(low, high, flip);
      return true;
    },
    begun: () => phase.kind !== 'arriving' || drawn !== '',
    arriving: () => phase.kind === 'arriving',
    leaving: () => phase.kind === 'draining' || phase.kind === 'fading',
    destroy() {
      under.destroy();
      band.destroy();
      marks.destroy({ children: true });
    },
  };
}
