import { useEffect, useMemo, useState } from 'react';
import { quantity, telling } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import { Covered } from './Covered.tsx';
import { intervalAt } from './playhead.ts';
import { formOf } from './Swatch.tsx';
import { useHomeward, type Homeward } from './useAccount.ts';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useKeys } from './useKeys.ts';

/** The biggest way home, station by station: the trainer walks it, stops where the room shall think, and the picture shows
 *  how far the current has come. While the outcome is covered the room names the next one before it is shown. */
export function HopRail({ keys }: { readonly keys: boolean }) {
  const say = useSay();
  const store = useDeskStore();
  const homeward = useHomeward();
  const covered = useDesk((desk) => desk.covered);
  const build = useDesk((desk) => desk.place.build);
  const timeline = useDesk((desk) => desk.timeline);
  const [walked, setWalked] = useState({ of: timeline, count: 1 });
  const stretches = useMemo(() => (homeward ? stretchesOf(homeward, build) : []), [homeward, build]);
  const hops = homeward?.way.hops ?? [];
  const last = hops.length - 1;
  const count = walked.of === timeline ? walked.count : 1;

  useEffect(
    () => () => {
      if (store.get().pointed?.id === HOP) store.send({ kind: 'point', pointed: null });
    },
    [store, timeline],
  );
  function walk(to: number) {
    if (to < 1 || to > hops.length) return;
    setWalked({ of: timeline, count: to });
    if (!covered) stopAtTheFault();
    const stretch = stretches[to - 1];
    store.send({ kind: 'point', pointed: stretch && to > 1 ? { id: HOP, ...stretch, held: true } : null });
  }
  /** The way is walked while current flows along it, not after something has opened. */
  function stopAtTheFault() {
    const { timeline: run, playhead } = store.get();
    const index = telling(run);
    const time_s = run.intervals[index]?.start_s;
    if (time_s === undefined) return;
    if (intervalAt(run, playhead.time_s) !== index) store.send({ kind: 'seek', time_s });
    else if (playhead.running) store.send({ kind: 'pause' });
  }
  const on = () => walk(count + 1);
  const back = () => walk(count - 1);
  useKeys({ arrowright: on, pagedown: on, arrowleft: back, pageup: back }, keys && hops.length > 1);

  if (!homeward || hops.length < 2)
    return (
      <div className="hop-rail">
        <h2>{say('stage.hops')}</h2>
        {covered ? <Covered>?</Covered> : <p className="quiet">{say('demo.no.way')}</p>}
      </div>
    );
  const { way, of } = homeward;
  return (
    <div className={covered ? 'hop-rail' : `hop-rail rail-${formOf(way.kind, of)}`}>
      <h2>{say('stage.hops')}</h2>
      {!covered && (
        <p className="hop-way">
          {way.text}, <b>{quantity(way.amperes, 'A')}</b>
        </p>
      )}
      <p className="hop-walk">
        <button type="button" className="pill" disabled={count <= 1} aria-label={say('stage.previous')} onClick={back}>
          ←
        </button>
        <button type="button" className="pill" disabled={count >= hops.length} onClick={on}>
          {say('demo.reveal')}
        </button>
      </p>
      <ol>
        {hops.map((hop, index) => {
          const known = !covered || index < count || index === last;
          const here = index === count - 1;
          return (
            <li key={hop} className={index < count ? 'passed' : ''} {...(here ? { 'aria-current': 'step' } : {})}>
              <b aria-hidden="true">{index + 1}</b>
              <span>{known ? hop : '?'}</span>
            </li>
          );
        })}
      </ol>
      <p className="visually-hidden" aria-live="polite">
        {count > 1 &&
          say('stage.hop', { hop: String(count), hops: String(hops.length), station: hops[count - 1] ?? '' })}
      </p>
    </div>
  );
}

const HOP = 'hop';

/** What of the picture is reached with each station: its part, and the branches passed so far. */
function stretchesOf({ way, of }: Homeward, build: Build) {
  if (way.via.length !== way.hops.length) return [];
  const partOf = (branch: number) => build.branches[branch]?.part;
  const load = way.branches.findIndex((branch) => partOf(branch) === way.via[0]);
  // A working current is traced from the winding: home begins behind its load.
  const home = of === 'load' ? way.branches.slice(load + 1) : way.branches;
  let end = 0;
  return way.via.map((part, index) => {
    const first = index === 0 ? -1 : home.findIndex((branch, at) => at >= end && partOf(branch) === part);
    if (first >= 0) for (end = first; partOf(home[end] ?? -1) === part; end += 1);
    return { parts: [part], branches: home.slice(0, end) };
  });
}
