import { useEffect, useMemo, useRef, useState } from 'react';
import type { WordKey } from '../explain/index.ts';
import type { Theme } from '../scene/index.ts';
import { fetchDrawing, fetchSheets } from './drawings.ts';
import { fetchPlace, PLACE_TITLES, PLACES } from './places.ts';
import { useDesk, useSay } from './useDesk.ts';
import { before, drawLane, FRONTS, LANE, PLATE_y } from './yard.ts';

const ZOOM_ms = 380;
const LINES: Readonly<Record<string, WordKey>> = {
  bakery: 'yard.bakery',
  joinery: 'yard.joinery',
  office: 'yard.office',
  flat: 'yard.flat',
  clinic: 'yard.clinic',
  stall: 'yard.stall',
  pump: 'yard.pump',
  pontoon: 'yard.pontoon',
};

/** The whole lane, to choose a place from. It begins before the place that is open and draws back; what is chosen comes
 *  nearer while it is fetched. Escape, or another choice, turns the way at any moment. */
export function Yard({
  theme,
  still,
  onOpen,
}: {
  readonly theme: Theme;
  readonly still: boolean;
  readonly onOpen: (place: string) => void;
}) {
  const say = useSay();
  const here = useDesk((desk) => desk.place.id);
  const sheet = useMemo(() => drawLane(theme), [theme]);
  const [near, setNear] = useState<string | null>(still ? null : here);
  const [size, setSize] = useState({ width: 1, height: 1 });
  const host = useRef<HTMLDivElement>(null);
  const going = useRef<string | null>(null);

  useEffect(() => {
    const node = host.current;
    if (!node) return;
    const observer = new ResizeObserver(() => setSize({ width: node.clientWidth, height: node.clientHeight }));
    observer.observe(node);
    node.parentElement?.scrollTo({ left: middle(here) * node.clientWidth - node.parentElement.clientWidth / 2 });
    const timer = setTimeout(() => setNear((now) => (going.current === null ? null : now)), 60);
    return () => {
      observer.disconnect();
      clearTimeout(timer);
      going.current = null;
    };
  }, [here]);
  useEffect(() => {
    const leave = ({ key }: KeyboardEvent) => {
      if (key !== 'Escape') return;
      going.current = null;
      setNear(null);
    };
    addEventListener('keydown', leave);
    return () => removeEventListener('keydown', leave);
  }, []);

  async function go(place: string) {
    going.current = place;
    setNear(place);
    const seen = new Promise((resolve) => setTimeout(resolve, still ? 0 : ZOOM_ms));
    await Promise.all([fetchPlace(place), seen]);
    const drawing = PLACES[place]?.drawing;
    await fetchDrawing(drawing);
    if (drawing !== undefined) void fetchSheets(drawing).catch(() => {}); // the picture asks again and says what is wrong
    if (going.current === place) onOpen(place);
  }

  const front = near === null ? undefined : FRONTS.get(near);
  const { scale, x, y } = front && !still ? before(front, size) : { scale: 1, x: 0, y: 0 };
  return (
    <main className="yard" id="account">
      <header className="yard-head">
        <h2>{say('yard.heading')}</h2>
        <p>{say('yard.intro')}</p>
      </header>
      <div className="yard-window">
        <div className="yard-lane" ref={host} style={{ aspectRatio: `${LANE.width} / ${LANE.height}` }}>
          <div
            className={`yard-sheet ${front ? 'near' : ''}`}
            style={{
              transform: `translate(${x}px, ${y}px) scale(${scale})`,
              transitionDuration: `${still ? 0 : ZOOM_ms}ms`,
            }}
          >
            <img src={sheet} alt={say('yard.lane')} draggable={false} />
            <ol>
              {[...FRONTS].map(([place, box], index) => (
                <li key={place}>
                  <button
                    type="button"
                    className="yard-place"
                    aria-current={place === here ? 'true' : undefined}
                    style={{
                      left: share(box.x, LANE.width),
                      top: share(box.y, LANE.height),
                      width: share(box.width, LANE.width),
                      height: share(LANE.height - box.y, LANE.height),
                    }}
                    onClick={() => void go(place)}
                  >
                    <span
                      className={`yard-plate ${rowOf(index)}`}
                      style={{ top: share(PLATE_y[rowOf(index)] - box.y, LANE.height - box.y) }}
                    >
                      <strong>{PLACE_TITLES.get(place)}</strong>
                      <span>{say(LINES[place] ?? 'yard.lane')}</span>
                    </span>
                  </button>
                </li>
              ))}
            </ol>
          </div>
        </div>
      </div>
    </main>
  );
}

function rowOf(index: number): 'upper' | 'lower' {
  return index % 2 === 0 ? 'upper' : 'lower';
}

function share(units: number, whole: number): string {
  return `${(units / whole) * 100}%`;
}

function middle(place: string | null): number {
  const front = FRONTS.get(place ?? '');
  return front ? (front.x + front.width / 2) / LANE.width : 0;
}
