import { memo, useRef, useState, type ReactNode } from 'react';
import type { Theme } from '../scene/index.ts';
import { SelectedWay } from './SelectedWay.tsx';
import { useDepiction } from './useDepiction.ts';
import { Spots } from './Spots.tsx';
import { TextTwin } from './TextTwin.tsx';
import { useDesk, useSay } from './useDesk.ts';
import { useScene, type View } from './useScene.ts';
import { useNarrow } from './useNarrow.ts';
import { HopBar } from './HopBar.tsx';

/** The picture with its name plates and everything that can be pressed in it. What is put below it gets to know how the
 *  drawing's x lies in it. */
export const Stage = memo(function Stage({
  theme,
  font_px = 13,
  below,
}: {
  readonly theme: Theme;
  /** Size of the words in it. */
  readonly font_px?: number;
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
