import { Dialog } from './Dialog.tsx';
import type { Opened } from './openFile.ts';
import { useSay } from './useDesk.ts';

/** Everything that is wrong with a file, each with its line and caret; what was open stays open. */
export function FileDialog({
  opened,
  onClose,
}: {
  readonly opened: Extract<Opened, { ok: false }>;
  readonly onClose: () => void;
}) {
  const say = useSay();
  return (
    <Dialog heading={say('file.wrong', { file: opened.file })} onClose={onClose} wide>
      <p>{say('file.errors', { count: opened.count, file: opened.file })}</p>
      <pre className="diagnostics" tabIndex={0}>
        {opened.printed}
      </pre>
    </Dialog>
  );
}
