import { Dialog } from './Dialog.tsx';
import { Swatch, type SwatchForm } from './Swatch.tsx';
import { useSay } from './useDesk.ts';

const FORMS: readonly SwatchForm[] = ['load', 'fault', 'stray', 'person'];

const KEYS = [
  ['Space', 'desk.key.space'],
  ['1 … 9, 0', 'desk.key.digits'],
  ['U', 'desk.key.u'],
  ['C', 'desk.key.c'],
  ['N', 'desk.key.n'],
  ['F', 'desk.key.f'],
  ['Ctrl Z', 'desk.key.undo'],
  ['← →', 'desk.key.arrows'],
  ['PgUp PgDn', 'keys.hops'],
  ['Esc', 'desk.key.escape'],
  ['?', 'desk.key.help'],
] as const;

/** What the keys do, and how the picture is read. */
export function KeysDialog({
  on,
  onTurn,
  onClose,
}: {
  readonly on: boolean;
  readonly onTurn: (on: boolean) => void;
  readonly onClose: () => void;
}) {
  const say = useSay();
  return (
    <Dialog heading={say('keys.heading')} onClose={onClose}>
      <dl className="keys">
        {KEYS.map(([key, word]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{say(word)}</dd>
          </div>
        ))}
      </dl>
      <h3>{say('legend.heading')}</h3>
      <ul className="legend">
        {FORMS.map((form) => (
          <li key={form}>
            <Swatch form={form} />
            <span>
              <b>{say(`kind.${form}`)}</b>: {say(`legend.${form}`)}
            </span>
          </li>
        ))}
        <li>
          <svg width="36" height="13" aria-hidden="true">
            <rect className="hazard-ground" width="36" height="13" rx="2" />
            <path className="legend-hatch" d="M-2 13L8 0M8 13L18 0M18 13L28 0M28 13L38 0" />
          </svg>
          <span>{say('legend.hatch')}</span>
        </li>
      </ul>
      <label className="check">
        <input type="checkbox" checked={on} onChange={(event) => onTurn(event.target.checked)} />
        <span>{say('desk.keys.on')}</span>
      </label>
    </Dialog>
  );
}
