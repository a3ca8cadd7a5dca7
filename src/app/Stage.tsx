import { lazy, memo, Suspense, useEffect, useRef, useState, type ReactNode, type RefObject } from 'react';
import type { Depiction } from '../depiction/index.ts';
import type { Theme } from '../scene/index.ts';
import { SelectedWay } from './SelectedWay.tsx';
import { useDepiction } from './useDepiction.ts';
import { Spots } from './Spots.tsx';
import { TextTwin } from './TextTwin.tsx';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useScene, type View } from './useScene.ts';
import { useNarrow } from './useMedia.ts';
import { HopBar } from './HopBar.tsx';

const SchematicSheet = lazy(async () => ({ default: (await import('./SchematicSheet.tsx')).SchematicSheet }));

const LEAST_PLATE_px = 13;
const BACK_ROW_OF_WIDTH = 0.0168;
const PLATE_OF_WIDTH = 0.0125; // size of the words on a plate, as a share of the stage's width

/** The picture with its name plates and everything that can be pressed in it. What is put below it gets to know how the
 *  drawing's x lies in it. */
export const Stage = memo(function Stage({
  theme,
  bold,
  look,
  hops,
  below,
}: {
  readonly theme: Theme;
  /** Words in it are for the back row. */
  readonly bold: boolean;
  /** The part the eye is led to. */
  readonly look?: string | undefined;
  readonly hops: boolean;
  readonly below?: (view: View | null) => ReactNode;
}) {
  const say = useSay();
  const depiction = useDepiction();
  const host = useRef<HTMLDivElement>(null);
  const scroller = useRef<HTMLDivElement>(null);
  const { kind, view } = useScene(host, theme);
  const [open, setOpen] = useState<string | null>(null);
  const captioned = useDesk((desk) => desk.covered) ? '' : depiction.person.caption;
  const narrow = useNarrow();
  const drawn = useDesk((desk) => desk.place.build.installation.drawing !== undefined);
  const [asked, setAsked] = useState(false);
  const schematic = !drawn || asked;
  useLook(look, depiction, view, scroller);
  return (
    <>
      <section className="stage" aria-label={say('stage.label')}>
        {schematic && (
          <Suspense fallback={<p className="stage-loading">{say('app.loading')}</p>}>
            <SchematicSheet bold={bold} />
          </Suspense>
        )}
        {drawn && (
          <div className="stage-switch" role="group" aria-label={say('stage.shown')}>
            {([false, true] as const).map((way) => (
              <button key={String(way)} type="button" aria-pressed={asked === way} onClick={() => setAsked(way)}>
                {say(way ? 'stage.schematic' : 'stage.picture')}
              </button>
            ))}
          </div>
        )}
        <div className="stage-scroller" ref={scroller} hidden={schematic}>
          <div className="stage-sheet" style={{ '--world': `${depiction.world.width} / ${depiction.world.height}` }}>
            <div className="stage-canvas" ref={host} aria-hidden="true" hidden={kind === 'none'} />
            {kind === 'none' ? (
              <TextTwin />
            ) : (
              <>
                <SelectedWay depiction={depiction} view={view} />
                <Spots
                  depiction={depiction}
                  view={view}
                  font_px={Math.max(
                    LEAST_PLATE_px,
                    Math.round(view.width * (bold ? BACK_ROW_OF_WIDTH : PLATE_OF_WIDTH)),
                  )}
                  open={open}
                  onOpen={setOpen}
                />
              </>
            )}
            {kind === 'loading' && <p className="stage-loading">{say('app.loading')}</p>}
          </div>
        </div>
        <p className="visually-hidden">{captioned}</p>
      </section>
      {narrow && hops && kind === 'drawn' && !schematic && (
        <HopBar depiction={depiction} view={view} scroller={scroller} />
      )}
      {drawn && below?.(schematic ? null : view)}
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
