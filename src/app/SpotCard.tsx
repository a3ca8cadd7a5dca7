import { memo, useEffect, useRef } from 'react';
import type { Hotspot } from '../depiction/index.ts';
import type { Condition } from '../installation/index.ts';
import { ConditionChoice } from './ConditionChoice.tsx';
import { useDesk, useSay } from './useDesk.ts';
import type { View } from './useScene.ts';

const WIDTH_px = 276;

/** What there is to say of one thing in the picture, and what may be the matter with it. */
export const SpotCard = memo(function SpotCard({
  spot,
  view,
  onClose,
}: {
  readonly spot: Hotspot;
  readonly view: View;
  readonly onClose: () => void;
}) {
  const say = useSay();
  const covered = useDesk((desk) => desk.covered);
  const installation = useDesk((desk) => desk.place.build.installation);
  const fixed = useDesk((desk) => desk.fixed);
  const card = useRef<HTMLDivElement>(null);
  const choices = fixed
    ? []
    : Object.entries(installation.conditions).filter(
        ([name, condition]) => name === spot.condition || concerns(condition, spot.id),
      );

  useEffect(() => {
    const node = card.current;
    const sheet = node?.parentElement;
    if (!node || !sheet) return;
    const x = view.x + (spot.target.x + spot.target.width / 2) * view.scale;
    const above = view.y + spot.target.y * view.scale;
    const below = view.y + (spot.target.y + spot.target.height) * view.scale;
    const { clientWidth, clientHeight } = sheet;
    const left = Math.max(8, Math.min(x - WIDTH_px / 2, clientWidth - WIDTH_px - 8));
    const fitsBelow = below + node.offsetHeight + 8 < clientHeight;
    const top = fitsBelow ? below + 8 : Math.max(8, Math.min(above, clientHeight) - node.offsetHeight - 8);
    node.style.left = `${left}px`;
    node.style.top = `${top}px`;
  });

  return (
    <div
      className="spot-card"
      ref={card}
      role="group"
      aria-label={spot.name}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onClose();
      }}
    >
      <div className="sheet-head">
        <h3>{spot.name}</h3>
        <button type="button" className="plain" onClick={onClose}>
          {say('app.close')}
        </button>
      </div>
      {spot.detail && <p>{covered ? say('covered.number') : spot.detail}</p>}
      <div className="chips">
        {choices.map(([name, condition]) => (
          <ConditionChoice key={name} name={name} condition={condition} />
        ))}
      </div>
    </div>
  );
});

/** Whether a condition acts on a part: names it, or one of its terminals. */
function concerns(condition: Condition, part: string): boolean {
  return Object.values(condition)
    .flat()
    .some((value) => typeof value === 'string' && (value === part || value.startsWith(`${part}.`)));
}
