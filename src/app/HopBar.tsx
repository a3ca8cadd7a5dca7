import { useEffect, useRef, useState, type RefObject } from 'react';
import type { Depiction, Hotspot } from '../depiction/index.ts';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import type { View } from './useScene.ts';

const SCROLL_ms = 900; // how long a scroll to a station may last

/** On a phone: the next and the previous station of the loop, brought under the eye. A thumb may pan as well. */
export function HopBar({
  depiction,
  view,
  scroller,
}: {
  readonly depiction: Depiction;
  readonly view: View;
  readonly scroller: RefObject<HTMLDivElement | null>;
}) {
  const say = useSay();
  const store = useDeskStore();
  const still = useDesk((desk) => desk.still);
  const [at, setAt] = useState(0);
  const stations = depiction.hotspots.filter(({ prominent }) => prominent);
  const station = stations[at];
  const pressed = useRef(-Infinity);
  useEffect(() => {
    const box = scroller.current;
    if (!box) return;
    const find = (event: Event) => {
      if (event.timeStamp - pressed.current < SCROLL_ms) return; // the buttons do that themselves
      setAt(nearest(stations, view, box.scrollLeft + box.clientWidth / 2, box));
    };
    box.addEventListener('scroll', find, { passive: true });
    return () => box.removeEventListener('scroll', find);
  });
  function go(to: number, event: { readonly timeStamp: number }) {
    const next = stations[to];
    const box = scroller.current;
    if (!next || !box) return;
    pressed.current = event.timeStamp;
    setAt(to);
    store.send({ kind: 'point', pointed: { id: `part ${next.id}`, parts: [next.id], branches: [], held: true } });
    const x = view.x + (next.target.x + next.target.width / 2) * view.scale;
    box.scrollTo({ left: x - box.clientWidth / 2, behavior: still ? 'instant' : 'smooth' });
  }
  return (
    <div className="hop-bar">
      <button
        type="button"
        className="round"
        aria-label={say('stage.previous')}
        disabled={at === 0}
        onClick={(event) => go(at - 1, event)}
      >
        ←
      </button>
      <span aria-live="polite">
        {station && say('stage.hop', { hop: String(at + 1), hops: String(stations.length), station: station.name })}
      </span>
      <button
        type="button"
        className="round"
        aria-label={say('stage.next')}
        disabled={at >= stations.length - 1}
        onClick={(event) => go(at + 1, event)}
      >
        →
      </button>
    </div>
  );
}

/** The station under the middle of the window; at either end of the picture the first and the last count. */
function nearest(stations: readonly Hotspot[], view: View, middle: number, box: HTMLElement): number {
  if (box.scrollLeft <= 1) return 0;
  if (box.scrollLeft >= box.scrollWidth - box.clientWidth - 1) return stations.length - 1;
  const away = stations.map(({ target }) => Math.abs(view.x + (target.x + target.width / 2) * view.scale - middle));
  return away.indexOf(Math.min(...away));
}
