import { Container } from 'pixi.js';
import type { Picture } from '../depiction/index.ts';
import { INSULATION } from './ink.ts';
import { openRibbon, type Beat, type RibbonDress, type RibbonView } from './ribbonView.ts';

/** All ribbons of a picture, in two layers of three sheets each: edges below, bands, marks on top. */
export interface RibbonsView {
  readonly parts: Container;
  readonly people: Container;
  show(picture: Picture): void;
  beat(beat: Beat): void;
  /** Ends every arrival at once. */
  settle(): void;
  destroy(): void;
}

/** Opens the view of the ribbons; it grows with what it is shown and forgets what has gone. */
export function openRibbons(dress: RibbonDress): RibbonsView {
  const over = { parts: openLayer(), people: openLayer() };
  const present = new Map<string, RibbonView>();
  /** Those that give way: of the same stretch under a new one, drained, or faded. */
  const going = new Map<RibbonView, string>();

  return {
    parts: over.parts.whole,
    people: over.people.whole,
    show({ ribbons, drains, region }) {
      const wires = INSULATION[region];
      const wanted = new Map(ribbons.map((ribbon) => [ribbon.id, ribbon]));
      for (const [id, view] of present) {
        const ribbon = wanted.get(id);
        if (ribbon?.kind === view.kind) continue;
        present.delete(id);
        going.set(view, id);
        if (!ribbon) view.leave(drains.find((drain) => drain.id === id));
      }
      for (const ribbon of ribbons) {
        const known = present.get(ribbon.id);
        if (known) {
          known.update(ribbon, wires);
          continue;
        }
        const view = openRibbon(ribbon, wires, dress);
        const layer = over[ribbon.over];
        layer.under.addChild(view.under);
        layer.bands.addChild(view.band);
        layer.marks.addChild(view.marks);
        view.arrive();
        present.set(ribbon.id, view);
      }
    },
    beat(beat) {
      for (const view of present.values()) view.beat(beat);
      for (const [view, id] of going) {
        const follower = present.get(id);
        if (follower?.begun()) view.marks.visible = false;
        if (follower && !follower.arriving() && !view.leaving()) view.leave(undefined);
        if (view.beat(beat)) continue;
        going.delete(view);
        view.destroy();
      }
    },
    settle() {
      for (const view of present.values()) view.settle();
    },
    destroy() {
      for (const view of [...present.values(), ...going.keys()]) view.destroy();
      over.parts.whole.destroy({ children: true });
      over.people.whole.destroy({ children: true });
    },
  };
}

function openLayer(): { whole: Container; under: Container; bands: Container; marks: Container } {
  const [under, bands, marks] = [sorted(), sorted(), sorted()];
  const whole = new Container();
  whole.addChild(under, bands, marks);
  return { whole, under, bands, marks };
}

function sorted(): Container {
  return new Container({ sortableChildren: true });
}
