import type { Theme } from '../scene/index.ts';
import { ProfilePanel } from './ProfilePanel.tsx';
import { Stage } from './Stage.tsx';
import { TimeStrip } from './TimeStrip.tsx';
import { useDepiction } from './useDepiction.ts';
import { useSound } from './useSound.ts';

/** What is to be seen and heard: the stage, the profile under it, the strip of time, captions. */
export function Picture({
  theme,
  sound,
  profile,
  strip = true,
  look,
  hops = true,
  bold = false,
}: {
  readonly theme: Theme;
  readonly sound: boolean;
  /** False where the profile stands elsewhere or not at all. */
  readonly profile: boolean;
  /** False where the run may not be seen yet. */
  readonly strip?: boolean;
  /** The part the eye is led to. */
  readonly look?: string | undefined;
  /** False where the stations of the loop need no buttons on a phone. */
  readonly hops?: boolean;
  /** Words in the stage are for the back row. */
  readonly bold?: boolean;
}) {
  const caption = useSound(sound, useDepiction());
  return (
    <>
      <Stage
        theme={theme}
        look={look}
        hops={hops}
        bold={bold}
        {...(profile ? { below: (view) => <ProfilePanel view={view} /> } : {})}
      />
      {strip && <TimeStrip />}
      {caption && <p className="caption">{caption}</p>}
    </>
  );
}

/** The profile by itself, in a column of its own width. */
export function NarrowProfile() {
  return <ProfilePanel view={null} />;
}
