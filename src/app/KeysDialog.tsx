import { Dialog } from './Dialog.tsx';
import { useSay } from './useDesk.ts';

const KEYS = [
  ['Space', 'desk.key.space'],
  ['1 … 9, 0', 'desk.key.digits'],
  ['U', 'desk.key.u'],
  ['C', 'desk.key.c'],
  ['N', 'desk.key.n'],
  ['Ctrl Z', 'desk.key.undo'],
  ['← →', 'desk.key.arrows'],
  ['Esc', 'desk.key.escape'],
  ['?', 'desk.key.help'],
] as const;

/** What the keys do. */
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
      <label className="check">
        <input type="checkbox" checked={on} onChange={(event) => onTurn(event.target.checked)} />
        <span>{say('desk.keys.on')}</span>
      </label>
    </Dialog>
  );
}
