import { useCallback, useEffect, useRef, useState, type RefObject } from 'react';
import { picture, type Picture } from '../depiction/index.ts';
import type { Scene, Theme } from '../scene/index.ts';
import { fetchSheets } from './drawings.ts';
import { useClock, type OnFrame } from './useClock.ts';
import { useDesk, useDeskStore, useVocabulary } from './useDesk.ts';

/** How the drawing's units lie in the stage: px for each unit, and where its origin is, px from the stage's corner. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
  /** Size of the stage, px. */
  readonly width: number;
  readonly height: number;
}

/** The picture as far as it is there: still loading, drawn, or not to be had in this browser. */
export interface SceneState {
  readonly kind: 'loading' | 'drawn' | 'none';
  readonly view: View;
}

/** Opens the picture in its host after the words are on the screen, and keeps it at the moment shown. It follows the desk
 *  by itself in every frame: what is pressed is seen before anything else on the page is drawn anew. */
export function useScene(host: RefObject<HTMLDivElement | null>, theme: Theme): SceneState {
  const store = useDeskStore();
  const vocabulary = useVocabulary();
  const still = useDesk((desk) => desk.still);
  const drawing = useDesk((desk) => desk.place.build.installation.drawing);
  const [kind, setKind] = useState<SceneState['kind']>('loading');
  const [view, setView] = useState<View>({ scale: 1, x: 0, y: 0, width: 1, height: 1 });
  const scene = useRef<Scene | null>(null);
  const dressed = useRef(theme);
  const shown = useRef<Picture | null>(null);
  const seen = useRef(view);
  const size = useRef({ width: 1, height: 1 }); // measured when it changes: asking in a frame would lay out the page

  const follow = useCallback((now: View) => {
    const { scale, x, y, width, height } = seen.current;
    const moved = Math.abs(now.scale - scale) > 1e-4 || Math.abs(now.x - x) > 0.1 || Math.abs(now.y - y) > 0.1;
    if (!moved && now.width === width && now.height === height) return;
    seen.current = now;
    setView(now);
  }, []);

  const present = useCallback((): Picture => {
    const { timeline, playhead } = store.get();
    return picture(timeline, playhead.time_s, vocabulary);
  }, [store, vocabulary]);
  const latest = useRef(present);

  useEffect(() => {
    latest.current = present;
  }, [present]);
  useEffect(() => {
    dressed.current = theme;
    scene.current?.dress(theme);
  }, [theme]);

  useEffect(() => {
    const node = host.current;
    if (!node || drawing === undefined) return;
    let gone = false;
    let opened: Scene | null = null;
    const measure = () => {
      size.current = { width: node.clientWidth, height: node.clientHeight };
      if (opened) opened.resize();
      else follow(fitted(size.current, latest.current().world));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(node);
    measure();
    const afterPaint = requestAnimationFrame(() => {
      setTimeout(async () => {
        try {
          const [{ openScene }, drawings] = await Promise.all([import('../scene/index.ts'), fetchSheets(drawing)]);
          if (gone) return;
          const made = await openScene(node, { drawings, theme: dressed.current, stillness: still });
          if (gone) return made.destroy();
          opened = scene.current = made;
          shown.current = null;
          setKind('drawn');
        } catch (error) {
          console.info('The picture cannot be drawn here; the words stand in for it.', error);
          if (!gone) setKind('none');
        }
      });
    });
    return () => {
      gone = true;
      cancelAnimationFrame(afterPaint);
      observer.disconnect();
      opened?.destroy();
      scene.current = null;
      setKind('loading');
    };
  }, [host, still, drawing, follow]);

  useClock(
    useCallback<OnFrame>(
      (now) => {
        const open = scene.current;
        if (!open) return;
        const next = latest.current();
        if (next !== shown.current) open.show(next);
        shown.current = next;
        open.frame(now);
        follow(viewOf(open, size.current));
      },
      [follow],
    ),
  );
  return { kind: drawing === undefined ? 'none' : kind, view };
}

function viewOf({ toScreen }: Scene, { width, height }: Pick<View, 'width' | 'height'>): View {
  const origin = toScreen({ x: 0, y: 0 });
  return { scale: (toScreen({ x: 1000, y: 0 }).x - origin.x) / 1000, x: origin.x, y: origin.y, width, height };
}

/** Where the whole drawing lies while nothing is drawn yet. */
function fitted({ width, height }: Pick<View, 'width' | 'height'>, world: Picture['world']): View {
  const scale = Math.min(width / world.width, height / world.height);
  return { scale, x: (width - world.width * scale) / 2, y: (height - world.height * scale) / 2, width, height };
}
