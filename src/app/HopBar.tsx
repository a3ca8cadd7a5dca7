import { useEffect, useState, type RefObject } from 'react';
import type { Depiction, Hotspot } from '../depiction/index.ts';
import { useSay } from './useDesk.ts';
import type { View } from './useScene.ts';

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
  const [at, setAt] = useState(0);
  const stations = depiction.hotspots.filter(({ prominent }) => prominent);
  const station = stations[at];
  useEffect(() => {
    const box = scroller.current;
    if (!box) return;
    const find = () => setAt(nearest(stations, view, box.scrollLeft + box.clientWidth / 2, box));
    find();
    box.addEventListener('scroll', find, { passive: true });
    return () => box.removeEventListener('scroll', find);
  });
  function go(to: number) {
    const next = stations[to];
    const box = scroller.current;
    if (!next || !box) return;
    const x = view.x + (next.target.x + next.target.width / 2) * view.scale;
    box.scrollTo({ left: x - box.clientWidth / 2, behavior: 'smooth' });
  }
  return (
    <div className="hop-bar">
      <button
        type="button"
        className="round"
        aria-label={say('stage.previous')}
        disabled={at === 0}
        onClick={() => go(at - 1)}
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
        onClick={() => go(at + 1)}
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
