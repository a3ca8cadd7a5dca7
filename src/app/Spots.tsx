import { memo, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Depiction, Hotspot } from '../depiction/index.ts';
import { plateLines, placePlates, type PlacedPlate } from './placePlates.ts';
import { SpotCard } from './SpotCard.tsx';
import { useDesk, useSay } from './useDesk.ts';
import { isPointedAt, usePointer } from './usePointing.ts';
import type { View } from './useScene.ts';

const LEAST_px = 32; // of a target that a finger must find

/** Everything in the picture that can be asked about: a button for each, in the order of the loop. Tab enters at one of
 *  them, arrow keys go on along the loop. */
export const Spots = memo(function Spots({
  depiction,
  view,
  font_px,
  open,
  onOpen,
}: {
  readonly depiction: Depiction;
  readonly view: View;
  /** Size of the words on the plates. */
  readonly font_px: number;
  readonly open: string | null;
  readonly onOpen: (id: string | null) => void;
}) {
  const say = useSay();
  const [entry, setEntry] = useState<string | null>(null);
  const bar = useRef<HTMLDivElement>(null);
  const spots = depiction.hotspots;
  const enter = spots.some(({ id }) => id === entry) ? entry : (spots[0]?.id ?? null);
  const opened = spots.find(({ id }) => id === open);
  const pointed = useDesk((desk) => desk.pointed);
  const covered = useDesk((desk) => desk.covered);
  const parts = pointed?.parts;
  const plates = useMemo(() => placePlates(spots, view, view, font_px, parts), [spots, view, font_px, parts]);

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
      <div
        className="spots"
        role="toolbar"
        aria-label={say('stage.label')}
        ref={bar}
        style={{ '--plate': `${font_px}px` }}
        onKeyDown={onKeyDown}
      >
        {spots.map((spot) => (
          <Spot
            key={spot.id}
            spot={spot}
            view={view}
            plate={plates.get(spot.id)}
            lit={isPointedAt(pointed, `part ${spot.id}`, [spot.id])}
            covered={covered}
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
  plate,
  lit,
  covered,
  enters,
  open,
  onEnter,
  onOpen,
}: {
  readonly spot: Hotspot;
  readonly view: View;
  /** Where its plate stands all the time; without one it shows on approach. */
  readonly plate: PlacedPlate | undefined;
  readonly lit: boolean;
  readonly covered: boolean;
  readonly enters: boolean;
  readonly open: boolean;
  readonly onEnter: (id: string) => void;
  readonly onOpen: (id: string | null) => void;
}) {
  const say = useSay();
  const parts = useMemo(() => [spot.id], [spot.id]);
  const { onClick, ...point } = usePointer(`part ${spot.id}`, parts);
  const box = useMemo(() => target(spot, view), [spot, view]);
  const at = plate ?? { x: view.x + spot.plate.x * view.scale, y: view.y + spot.plate.y * view.scale, detail: true };
  const detail = covered && spot.detail ? say('covered.number') : spot.detail;
  return (
    <button
      type="button"
      className={`spot${lit ? ' lit' : ''}${plate ? ' prominent' : ''}`}
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
      <span className="plate" style={{ left: at.x - box.left, top: at.y - box.top }}>
        <b>{spot.name}</b>
        {(covered ? [detail].filter(Boolean) : plateLines(detail)).map((line) => (
          <small key={line} className={`${covered ? 'plate-covered' : ''}${at.detail ? '' : ' on-approach'}`}>
            {covered ? '' : line}
          </small>
        ))}
      </span>
    </button>
  );
});

/** The button over its target, no smaller than a finger. */
function target(
  { target: { x, y, width, height } }: Hotspot,
  view: View,
): {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly zIndex: number;
} {
  const wide = Math.max(LEAST_px, width * view.scale);
  const high = Math.max(LEAST_px, height * view.scale);
  return {
    left: view.x + (x + width / 2) * view.scale - wide / 2,
    top: view.y + (y + height / 2) * view.scale - high / 2,
    width: wide,
    height: high,
    // the smaller lies on top of the larger that holds it
    zIndex: Math.round(1e6 / Math.sqrt(width * height + 1)),
  };
}
