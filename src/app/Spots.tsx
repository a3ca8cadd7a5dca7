import { memo, useMemo, useRef, useState, type CSSProperties, type KeyboardEvent } from 'react';
import type { Depiction, Hotspot } from '../depiction/index.ts';
import { SpotCard } from './SpotCard.tsx';
import { useDesk, useSay } from './useDesk.ts';
import { usePointing } from './usePointing.ts';
import type { View } from './useScene.ts';

const LEAST_px = 32; // of a target that a finger must find

/** Everything in the picture that can be asked about: a button for each, in the order of the loop. Tab enters at one of
 *  them, arrow keys go on along the loop. */
export const Spots = memo(function Spots({
  depiction,
  view,
  open,
  onOpen,
}: {
  readonly depiction: Depiction;
  readonly view: View;
  readonly open: string | null;
  readonly onOpen: (id: string | null) => void;
}) {
  const say = useSay();
  const [entry, setEntry] = useState<string | null>(null);
  const bar = useRef<HTMLDivElement>(null);
  const spots = depiction.hotspots;
  const enter = spots.some(({ id }) => id === entry) ? entry : (spots[0]?.id ?? null);
  const opened = spots.find(({ id }) => id === open);

  function onKeyDown(event: KeyboardEvent) {
    const step = ARROWS[event.key];
    if (event.key === 'Escape' && open) onOpen(null);
    if (step === undefined) return;
    event.preventDefault();
    const buttons = [...(bar.current?.querySelectorAll<HTMLButtonElement>('.spot') ?? [])];
    const here = buttons.findIndex((button) => button === document.activeElement);
    const target = step === -Infinity ? 0 : step === Infinity ? buttons.length - 1 : here + step;
    buttons[(target + buttons.length) % buttons.length]?.focus();
  }

  return (
    <>
      <div className="spots" role="toolbar" aria-label={say('stage.label')} ref={bar} onKeyDown={onKeyDown}>
        {spots.map((spot) => (
          <Spot
            key={spot.id}
            spot={spot}
            view={view}
            enters={spot.id === enter}
            open={spot.id === open}
            onEnter={setEntry}
            onOpen={onOpen}
          />
        ))}
      </div>
      {opened && <SpotCard spot={opened} view={view} onClose={() => onOpen(null)} />}
    </>
  );
});

const ARROWS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
  Home: -Infinity,
  End: Infinity,
};

const Spot = memo(function Spot({
  spot,
  view,
  enters,
  open,
  onEnter,
  onOpen,
}: {
  readonly spot: Hotspot;
  readonly view: View;
  readonly enters: boolean;
  readonly open: boolean;
  readonly onEnter: (id: string) => void;
  readonly onOpen: (id: string | null) => void;
}) {
  const say = useSay();
  const covered = useDesk((desk) => desk.covered);
  const parts = useMemo(() => [spot.id], [spot.id]);
  const { lit, onClick, ...point } = usePointing(`part ${spot.id}`, parts);
  const { box, plate } = useMemo(() => placed(spot, view), [spot, view]);
  const detail = covered && spot.detail ? say('covered.number') : spot.detail;
  return (
    <button
      type="button"
      className={`spot${lit ? ' lit' : ''}${spot.prominent ? ' prominent' : ''}`}
      style={box}
      tabIndex={enters ? 0 : -1}
      aria-expanded={open}
      aria-label={detail ? `${spot.name}, ${detail}` : spot.name}
      {...point}
      onFocus={() => {
        onEnter(spot.id);
        point.onFocus();
      }}
      onClick={() => {
        onClick();
        onOpen(open ? null : spot.id);
      }}
    >
      <span className="plate" style={plate}>
        <b>{spot.name}</b>
        {detail && <small className={covered ? 'plate-covered' : ''}>{covered ? '' : detail}</small>}
      </span>
    </button>
  );
});

/** The button over its target, no smaller than a finger, and its plate where the drawing wants it. */
function placed(spot: Hotspot, view: View): { readonly box: CSSProperties; readonly plate: CSSProperties } {
  const width = Math.max(LEAST_px, spot.target.width * view.scale);
  const height = Math.max(LEAST_px, spot.target.height * view.scale);
  const left = view.x + (spot.target.x + spot.target.width / 2) * view.scale - width / 2;
  const top = view.y + (spot.target.y + spot.target.height / 2) * view.scale - height / 2;
  const area = spot.target.width * spot.target.height;
  return {
    // the smaller lies on top of the larger that holds it
    box: { left, top, width, height, zIndex: Math.round(1e6 / Math.sqrt(area + 1)) },
    plate: { left: view.x + spot.plate.x * view.scale - left, top: view.y + spot.plate.y * view.scale - top },
  };
}
