import { useDepiction } from './shown.ts';
import { useAccount } from './shown.ts';
import type { Theme } from '../scene/index.ts';
import { Explore } from './Explore.tsx';
import type { Mode } from './Header.tsx';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useKeys } from './useKeys.ts';
import { useSound } from './useSound.ts';

/** The screen of the mode in use, with what belongs to all of them: keys, sound and its captions, the live region. */
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
  const caption = useSound(sound, useDepiction());
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
  void onMode;
  void mode;
  return (
    <>
      <Explore theme={theme} />
      {sound && caption && <p className="caption">{caption}</p>}
      <p className="visually-hidden" aria-live="polite">
        {covered ? say('covered.outcome') : headline}
      </p>
    </>
  );
}
