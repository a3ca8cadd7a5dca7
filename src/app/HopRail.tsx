import { useState } from 'react';
import { quantity, type WayHome } from '../explain/index.ts';
import { Covered } from './Covered.tsx';
import { useDesk, useSay } from './useDesk.ts';

/** The biggest way home, station by station: while the outcome is covered the room names the next one before it is shown. */
export function HopRail({ way }: { readonly way: WayHome | undefined }) {
  const say = useSay();
  const covered = useDesk((desk) => desk.covered);
  const [shown, setShown] = useState({ way: way?.name, count: 1 });
  const hops = way?.hops ?? [];
  const last = hops.length - 1;
  const count = covered ? (shown.way === way?.name ? shown.count : 1) : hops.length;
  if (hops.length < 2)
    return (
      <div className="hop-rail">
        <h2>{say('stage.hops')}</h2>
        {covered ? <Covered>?</Covered> : <p className="quiet">{say('demo.no.way')}</p>}
      </div>
    );
  return (
    <div className="hop-rail">
      <h2>{say('stage.hops')}</h2>
      {!covered && way && (
        <p className="hop-way">
          {way.text}, <b>{quantity(way.amperes, 'A')}</b>
        </p>
      )}
      <ol>
        {hops.map((hop, index) => {
          const known = index < count || index === last;
          return (
            <li key={hop} className={index < count ? 'passed' : ''}>
              <b aria-hidden="true">{index + 1}</b>
              <span>{known ? hop : '?'}</span>
            </li>
          );
        })}
      </ol>
      {covered && (
        <button
          type="button"
          className="pill"
          disabled={count >= last}
          onClick={() => setShown({ way: way?.name, count: count + 1 })}
        >
          {say('demo.reveal')}
        </button>
      )}
    </div>
  );
}
