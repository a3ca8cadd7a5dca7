import { lazy, Suspense, useEffect } from 'react';
import type { Conditions } from '../installation/index.ts';
import type { Theme } from '../scene/index.ts';
import { Explore } from './Explore.tsx';
import type { Mode } from './Header.tsx';
import { useAccount } from './useAccount.ts';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useKeys } from './useKeys.ts';

/** The screen of the mode in use, with the keys and the live region that belong to all of them. */
export function Screen({
  mode,
  theme,
  sound,
  still,
  keys,
  lesson,
  onMode,
  onLesson,
  onExplore,
  onPlace,
  onHelp,
}: {
  readonly mode: Mode;
  readonly theme: Theme;
  readonly sound: boolean;
  readonly still: boolean;
  readonly keys: boolean;
  /** The lesson being played, by its name. */
  readonly lesson: string | null;
  readonly onMode: (mode: Mode) => void;
  readonly onLesson: (lesson: string | null) => void;
  readonly onExplore: (place: string, conditions: Conditions) => void;
  /** A place was chosen in the yard. */
  readonly onPlace: (place: string) => void;
  readonly onHelp: () => void;
}) {
  const say = useSay();
  useKeys({ '?': onHelp }, keys);
  useOthersReady();
  if (mode === 'learn')
    return (
      <Suspense fallback={<main className="learn" aria-busy="true" />}>
        <Learn lesson={lesson} theme={theme} sound={sound} still={still} onLesson={onLesson} onExplore={onExplore} />
      </Suspense>
    );
  if (mode === 'yard')
    return (
      <Suspense fallback={<main className="yard" aria-busy="true" />}>
        <Yard theme={theme} still={still} onOpen={onPlace} />
      </Suspense>
    );
  return (
    <>
      <DeskKeys on={keys} />
      {mode === 'demonstrate' ? (
        <Suspense
          fallback={
            <main className="demo" aria-busy="true">
              {say('app.loading')}
            </main>
          }
        >
          <Demonstrate theme={theme} sound={sound} keys={keys} onLeave={() => onMode('explore')} />
        </Suspense>
      ) : (
        <Explore theme={theme} sound={sound} />
      )}
      <Announcer />
    </>
  );
}

const learn = () => import('./Learn.tsx');
const demonstrate = () => import('./Demonstrate.tsx');
const yard = () => import('./Yard.tsx');
const Yard = lazy(async () => ({ default: (await yard()).Yard }));
const Learn = lazy(async () => ({ default: (await learn()).Learn }));
const Demonstrate = lazy(async () => ({ default: (await demonstrate()).Demonstrate }));
const IDLE_ms = 4000;

/** Fetches the other modes once everything asked for is there, so that a change of mode does not wait. */
function useOthersReady(): void {
  useEffect(() => {
    const timer = setTimeout(() => void Promise.all([learn(), demonstrate(), yard()]).catch(() => {}), IDLE_ms);
    return () => clearTimeout(timer);
  }, []);
}

function DeskKeys({ on }: { readonly on: boolean }) {
  const store = useDeskStore();
  useKeys(
    {
      ' ': () => store.send({ kind: store.get().playhead.running ? 'pause' : 'run' }),
      u: () => store.send({ kind: 'cover', covered: !store.get().covered }),
      n: () => store.send({ kind: 'skip', to: 'next' }),
      'ctrl+z': () => store.send({ kind: 'undo' }),
    },
    on,
  );
  return null;
}

/** Tells the outcome to those who listen, unless it is covered. */
function Announcer() {
  const say = useSay();
  const { headline } = useAccount();
  const covered = useDesk((desk) => desk.covered);
  return (
    <p className="visually-hidden" aria-live="polite">
      {covered ? say('covered.outcome') : headline}
    </p>
  );
}
