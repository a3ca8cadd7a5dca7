import { Dialog } from './Dialog.tsx';
import type { Opened } from './openFile.ts';
import { useSay } from './useDesk.ts';

const MOST_SHOWN = 1000; // a page with more of them moves slowly

/** Everything that is wrong with a file, each with its line and caret; what was open stays open. */
export function FileDialog({
  opened,
  onClose,
}: {
  readonly opened: Extract<Opened, { ok: false }>;
  readonly onClose: () => void;
}) {
  const say = useSay();
  const { file, faults } = opened;
  const rest = faults.length - MOST_SHOWN;
  return (
    <Dialog heading={say('file.wrong', { file })} onClose={onClose} wide>
      <p>{say('file.errors', { count: faults.length, file })}</p>
      <ol className="diagnostics" tabIndex={0} aria-label={say('file.wrong', { file })}>
        {faults.slice(0, MOST_SHOWN).map((fault, index) => (
          <Fault key={index} printed={fault} />
        ))}
        {rest > 0 && <li>{say('file.rest', { rest, file })}</li>}
      </ol>
    </Dialog>
  );
}

/** One of them: what it says wraps, its line of the file with the carets under it does not. */
function Fault({ printed }: { readonly printed: string }) {
  const [head, line, carets, ...rest] = printed.split('\n');
  return (
    <li>
      <p>{head}</p>
      <pre>{`${line}\n${carets}`}</pre>
      {rest.map((more) => (
        <p key={more}>{more.trim()}</p>
      ))}
    </li>
  );
}
