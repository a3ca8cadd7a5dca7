import { Container, Sprite, Texture } from 'pixi.js';
import type { Picture, Halo, PartView } from '../depiction/index.ts';
import type { Sheets } from './sheets.ts';

const CROSS_FADE_s = 0.22;
/** How often what turns goes round, 1/s. */
const TURNS_Hz = 1.1;

/** Layers in front of which things stand and move; they are glued into one sheet while the camera rests on the whole. */
const BEHIND: ReadonlySet<string> = new Set(['sky', 'hills', 'ground', 'house', 'furniture']);

interface Shown {
  model: PartView;
  /** The last of them is the present drawing; those before fade away. */
  readonly sheets: { readonly sprite: Sprite; since_s: number | null; readonly leaving: boolean }[];
}

/** All drawings of a picture in their layers. */
export interface PartsView {
  /** The layer of this name; made when first asked for. */
  layer(name: string): Container;
  show(picture: Picture, sheets: Sheets): void;
  /** Work that may be done before it is needed, in small pieces. */
  readonly ahead: (picture: Picture, sheets: Sheets) => readonly (() => void)[];
  beat(wall_s: number, stillness: boolean): void;
  /** Far layers lag behind a camera that has moved this far from the middle, units of the drawing. */
  lag(dx: number, dy: number): void;
  destroy(): void;
}

/** Opens the view of the drawings below `stage`. */
export function openParts(stage: Container): PartsView {
  const layers = new Map<string, Container>();
  const shown = new Map<string, Shown>();
  const hatched = new Map<string, Sprite>();
  const lags = new Map<Container, number>();
  const glued = stage.addChild(new Sprite());
  let gluedFrom = '';
  let cut: Sheets | null = null;

  /** One sheet to paint instead of many, for machines that paint with the processor. */
  function glue({ parts, world }: Picture, sheets: Sheets): void {
    const behind = parts.filter(({ group }) => BEHIND.has(group));
    const key = `${sheets.resolution} ${behind.map(({ drawing, x, y }) => `${drawing} ${x} ${y}`).join(' ')}`;
    if (key === gluedFrom) return;
    gluedFrom = key;
    if (glued.texture !== Texture.EMPTY) glued.texture.destroy(true);
    glued.texture = sheets.glue(behind, world);
  }

  function layer(name: string): Container {
    const found = layers.get(name);
    if (found) return found;
    const made = stage.addChild(new Container({ label: name, sortableChildren: true }));
    layers.set(name, made);
    return made;
  }

  function place(model: PartView, sheets: Sheets): Sprite {
    const { texture, frame } = sheets.sheet(model.drawing);
    const sprite = new Sprite(texture);
    const { x = 0, y = 0 } = frame.shaft && model.turning ? frame.shaft : {};
    sprite.pivot.set(x, y);
    sprite.position.set(model.x + x, model.y + y);
    sprite.zIndex = model.order;
    return layer(model.group).addChild(sprite);
  }

  function showPart(model: PartView, sheets: Sheets): void {
    const known = shown.get(model.id);
    const same =
      known &&
      known.model.drawing === model.drawing &&
      known.model.turning === model.turning &&
      known.model.x === model.x;
    if (known && same) {
      known.model = model;
      const sprite = known.sheets.at(-1)?.sprite;
      if (sprite) [sprite.alpha, sprite.zIndex] = [model.opacity, model.order];
      return;
    }
    const earlier = (known?.sheets ?? []).map(({ sprite }) => ({ sprite, since_s: null, leaving: true }));
    const sprite = place(model, sheets);
    sprite.alpha = model.opacity;
    shown.set(model.id, { model, sheets: [...earlier, { sprite, since_s: null, leaving: false }] });
    lags.set(layer(model.group), model.parallax);
  }

  function showHatch({ halos, parts }: Picture, sheets: Sheets): void {
    const wanted = new Map<string, { halo: Halo; around: readonly PartView[] }>();
    for (const halo of halos) {
      const around = parts.filter(({ id }) => halo.drawings.includes(id));
      if (halo.level !== 'none' && around.length > 0) wanted.set(halo.part, { halo, around });
    }
    for (const [part, sprite] of hatched) if (!wanted.has(part)) sprite.visible = false;
    for (const [part, { halo, around }] of wanted) {
      if (halo.level === 'none') continue;
      const hatch = sheets.hatch(around, halo.level);
      const first = around.reduce((lowest, one) => (one.order < lowest.order ? one : lowest));
      const sprite = hatched.get(part) ?? layer(first.group).addChild(new Sprite());
      sprite.texture = hatch.texture;
      sprite.position.set(hatch.x, hatch.y);
      sprite.zIndex = first.order - 0.5;
      sprite.visible = true;
      hatched.set(part, sprite);
    }
  }

  return {
    layer,
    show(picture, sheets) {
      for (const group of picture.groups) layer(group);
      if (cut !== sheets) {
        for (const one of shown.values()) one.sheets.forEach(({ sprite }) => sprite.destroy());
        shown.clear();
        for (const sprite of hatched.values()) sprite.destroy();
        hatched.clear();
        cut = sheets;
      }
      const present = new Set(picture.parts.map(({ id }) => id));
      for (const [id, one] of shown)
        if (!present.has(id)) {
          one.sheets.forEach(({ sprite }) => sprite.destroy());
          shown.delete(id);
        }
      for (const model of picture.parts) showPart(model, sheets);
      showHatch(picture, sheets);
      glue(picture, sheets);
    },
    ahead: ({ halos, parts }, sheets) =>
      halos.flatMap(({ drawings }) => {
        const around = parts.filter(({ id }) => drawings.includes(id));
        return around.length === 0
          ? []
          : (['25', '50'] as const).map((level) => () => void sheets.hatch(around, level));
      }),
    beat(wall_s, stillness) {
      for (const one of shown.values()) {
        const present = one.sheets.at(-1);
        if (present && one.model.turning)
          present.sprite.scale.x = stillness ? 1 : Math.cos(wall_s * 2 * Math.PI * TURNS_Hz);
        if (one.sheets.length < 2 || !present) continue;
        present.since_s ??= wall_s;
        const share = stillness ? 1 : Math.min(1, (wall_s - present.since_s) / CROSS_FADE_s);
        present.sprite.alpha = one.model.opacity * Math.min(1, share * 2);
        for (const { sprite, leaving } of one.sheets) if (leaving) sprite.alpha = Math.min(1, 2 - share * 2);
        if (share < 1) continue;
        for (const { sprite } of one.sheets.splice(0, one.sheets.length - 1)) sprite.destroy();
      }
    },
    lag(dx, dy) {
      const rests = Math.hypot(dx, dy) < 0.5;
      glued.visible = rests;
      for (const [name, one] of layers) if (BEHIND.has(name)) one.visible = !rests;
      for (const [one, share] of lags) one.position.set(dx * share, dy * share);
    },
    destroy() {
      if (glued.texture !== Texture.EMPTY) glued.texture.destroy(true);
    },
  };
}
