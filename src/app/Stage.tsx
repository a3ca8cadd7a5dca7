import { memo, useEffect, useRef, useState, type ReactNode, type RefObject } from 'react';
import type { Depiction } from '../depiction/index.ts';
import type { Theme } from '../scene/index.ts';
import { SelectedWay } from './SelectedWay.tsx';
import { useDepiction } from './useDepiction.ts';
import { Spots } from './Spots.tsx';
import { TextTwin } from './TextTwin.tsx';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useScene, type View } from './useScene.ts';
import { useNarrow } from './useNarrow.ts';
import { HopBar } from './HopBar.tsx';

/** The picture with its name plates and everything that can be pressed in it. What is put below it gets to know how the
 *  drawing's x lies in it. */
export const Stage = memo(function Stage({
  theme,
  font_px = 13,
  look,
  below,
}: {
  readonly theme: Theme;
  /** Size of the words in it. */
  readonly font_px?: number;
  /** The part the eye is led to. */
  readonly look?: string | undefined;
  readonly below?: (view: View) => ReactNode;
}) {
  const say = useSay();
  const depiction = useDepiction();
  const host = useRef<HTMLDivElement>(null);
  const scroller = useRef<HTMLDivElement>(null);
  const { kind, view } = useScene(host, depiction, theme);
  const [open, setOpen] = useState<string | null>(null);
  const captioned = useDesk((desk) => desk.covered) ? '' : depiction.person.caption;
  const narrow = useNarrow();
  useLook(look, depiction, view, scroller);
  return (
    <>
      <section className="stage" aria-label={say('stage.label')}>
        <div className="stage-scroller" ref={scroller}>
          <div className="stage-sheet" style={{ '--world': `${depiction.world.width} / ${depiction.world.height}` }}>
            <div className="stage-canvas" ref={host} aria-hidden="true" hidden={kind === 'none'} />
            {kind === 'none' ? (
              <TextTwin />
            ) : (
              <>
                <SelectedWay depiction={depiction} view={view} />
                <Spots depiction={depiction} view={view} font_px={font_px} open={open} onOpen={setOpen} />
              </>
            )}
            {kind === 'loading' && <p className="stage-loading">{say('app.loading')}</p>}
          </div>
        </div>
        <p className="visually-hidden">{captioned}</p>
      </section>
      {narrow && kind === 'drawn' && <HopBar depiction={depiction} view={view} scroller={scroller} />}
      {below?.(view)}
    </>
  );
});

/** Leads the eye to a part: its plate is lit, and where the picture is wider than the window it comes to the middle. */
function useLook(
  look: string | undefined,
  { hotspots }: Depiction,
  view: View,
  scroller: RefObject<HTMLDivElement | null>,
): void {
  const store = useDeskStore();
  const target = hotspots.find(({ id }) => id === look)?.target;
  const middle = target && view.width > 1 ? view.x + (target.x + target.width / 2) * view.scale : undefined;
  useEffect(() => {
    if (look === undefined) return;
    store.send({ kind: 'point', pointed: { id: `part ${look}`, parts: [look], branches: [], held: false } });
    return () => store.send({ kind: 'point', pointed: null });
  }, [store, look]);
  useEffect(() => {
    const box = scroller.current;
    if (middle !== undefined && box) box.scrollTo({ left: middle - box.clientWidth / 2 });
  }, [middle, scroller]);
}
