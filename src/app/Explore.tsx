import { Suspense } from 'react';
import type { Theme } from '../scene/index.ts';
import { Account, Outcome, Ways } from './Account.tsx';
import { Conditions } from './Conditions.tsx';
import { NarrowProfile, Picture, PictureToCome } from './lazyPicture.tsx';
import { useSay } from './useDesk.ts';
import { useNarrow } from './useMedia.ts';

/** The desk: stage, profile and strip on the left, what is the matter and what happens on the right; on a phone all in
 *  one column. */
export function Explore({ theme, sound }: { readonly theme: Theme; readonly sound: boolean }) {
  const say = useSay();
  if (useNarrow())
    return (
      <main className="desk-narrow">
        <Suspense fallback={<PictureToCome />}>
          <Picture theme={theme} sound={sound} profile={false} />
        </Suspense>
        <section className="sheet account" aria-label={say('account.heading')} id="account">
          <Outcome />
        </section>
        <Conditions />
        <section className="sheet account" aria-label={say('ledger.way')}>
          <Ways />
        </section>
        <Suspense fallback={null}>
          <NarrowProfile />
        </Suspense>
      </main>
    );
  return (
    <main className="desk">
      <div className="desk-left">
        <Suspense fallback={<PictureToCome />}>
          <Picture theme={theme} sound={sound} profile />
        </Suspense>
      </div>
      <div className="desk-right">
        <Conditions />
        <Account />
      </div>
    </main>
  );
}
