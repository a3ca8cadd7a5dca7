import { memo, useEffect, useRef } from 'react';
import type { Hotspot } from '../depiction/index.ts';
import type { Condition } from '../installation/index.ts';
import { ConditionChoice } from './ConditionChoice.tsx';
import { useDesk, useSay } from './useDesk.ts';
import type { View } from './useScene.ts';

const WIDTH_px = 276;
const GAP_px = 10;

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
    const left = view.x + spot.target.x * view.scale;
    const right = left + spot.target.width * view.scale;
    const middle = view.y + (spot.target.y + spot.target.height / 2) * view.scale;
    const { clientWidth, clientHeight } = sheet;
    const beside = right + WIDTH_px + 2 * GAP_px < clientWidth ? right + GAP_px : left - WIDTH_px - GAP_px;
    const x = Math.max(GAP_px, Math.min(beside, clientWidth - WIDTH_px - GAP_px));
    const y = Math.max(GAP_px, Math.min(middle - node.offsetHeight / 2, clientHeight - node.offsetHeight - GAP_px));
    node.style.left = `${x}px`;
    node.style.top = `${y}px`;
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
