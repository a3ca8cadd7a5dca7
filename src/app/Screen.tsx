import type { Theme } from '../scene/index.ts';
import { Demonstrate } from './Demonstrate.tsx';
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
  keys,
  onMode,
  onHelp,
}: {
  readonly mode: Mode;
  readonly theme: Theme;
  readonly sound: boolean;
  readonly keys: boolean;
  readonly onMode: (mode: Mode) => void;
  readonly onHelp: () => void;
}) {
  const say = useSay();
  const store = useDeskStore();
  const { headline } = useAccount();
  const covered = useDesk((desk) => desk.covered);
  useKeys(
    {
      ' ': () => store.send({ kind: store.get().playhead.running ? 'pause' : 'run' }),
      u: () => store.send({ kind: 'cover', covered: !store.get().covered }),
      n: () => store.send({ kind: 'skip', to: 'next' }),
      'ctrl+z': () => store.send({ kind: 'undo' }),
      '?': onHelp,
    },
    keys,
  );
  return (
    <>
      {mode === 'demonstrate' ? (
        <Demonstrate theme={theme} sound={sound} keys={keys} onLeave={() => onMode('explore')} />
      ) : (
        <Explore theme={theme} sound={sound} />
      )}
      <p className="visually-hidden" aria-live="polite">
        {covered ? say('covered.outcome') : headline}
      </p>
    </>
  );
}
