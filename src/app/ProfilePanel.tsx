import { memo, useCallback, useMemo, useRef } from 'react';
import { ProfileChart } from '../charts/index.ts';
import type { Profile } from '../depiction/index.ts';
import { quantity } from '../explain/index.ts';
import { Covered } from './Covered.tsx';
import { useDepiction } from './useDepiction.ts';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useSize } from './useSize.ts';
import type { View } from './useScene.ts';

const MARGIN = 14;

/** Where the volts of the loop are spent, under the stage and aligned with it; alone (`null`) as wide as there is room. */
export const ProfilePanel = memo(function ProfilePanel({ view }: { readonly view: View | null }) {
  const say = useSay();
  const store = useDeskStore();
  const { profile } = useDepiction();
  const covered = useDesk((desk) => desk.covered);
  const pointed = useDesk((desk) => desk.pointed);
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);

  const place = useMemo(() => {
    if (view) return (x: number) => view.x + x * view.scale;
    const xs = [...profile.out, ...profile.home].map(({ x }) => x);
    const [least, most] = [Math.min(...xs), Math.max(...xs)];
    return (x: number) => MARGIN + ((x - least) / (most - least || 1)) * (size.width - 3 * MARGIN);
  }, [view, profile, size.width]);
  const isLit = useCallback((part: string) => pointed?.parts.includes(part) ?? false, [pointed]);
  const onPoint = useCallback(
    (part: string | null) => {
      if (store.get().pointed?.held) return;
      const id = `riser ${part}`;
      if (part === null) store.send({ kind: 'point', pointed: null });
      else if (store.get().pointed?.id !== id)
        store.send({ kind: 'point', pointed: { id, parts: [part], branches: [], held: false } });
    },
    [store],
  );
  const onPress = useCallback(
    (part: string) => {
      const id = `riser ${part}`;
      const now = store.get().pointed;
      const again = now?.id === id && now.held;
      store.send({ kind: 'point', pointed: again ? null : { id, parts: [part], branches: [], held: true } });
    },
    [store],
  );
  const lit = [...profile.out, ...profile.home].find(({ part }) => isLit(part));
  return (
    <section className="sheet profile" aria-labelledby="profile-heading">
      <h2 id="profile-heading">
        {covered ? say('desk.profile') : profile.title}
        {!covered && lit && <span className="profile-reading">{lit.label}</span>}
      </h2>
      <div className="profile-box" ref={box}>
        {covered ? (
          <Covered>{say('covered.number')}</Covered>
        ) : (
          <ProfileChart
            profile={profile}
            width={size.width}
            height={size.height}
            font={size.font}
            place={place}
            outLabel={say('desk.out')}
            homeLabel={say('desk.home')}
            isLit={isLit}
            onPoint={onPoint}
            onPress={onPress}
          />
        )}
      </div>
      {!covered && <ProfileTable profile={profile} />}
    </section>
  );
});

/** The same levels for those who do not see the lines. */
function ProfileTable({ profile }: { readonly profile: Profile }) {
  const say = useSay();
  return (
    <div className="visually-hidden">
      <table>
        <caption>{profile.title}</caption>
        <thead>
          <tr>
            <th scope="col">{say('table.part')}</th>
            <th scope="col">{say('table.volts')}</th>
          </tr>
        </thead>
        <tbody>
          {[...profile.out, ...profile.home].map(({ part, label, volts }, index) => (
            <tr key={`${part} ${index}`}>
              <th scope="row">{label}</th>
              <td>{quantity(volts, 'V')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {profile.touch && <p>{profile.touch.label}</p>}
    </div>
  );
}
