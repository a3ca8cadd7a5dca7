import type { SnapshotFrom } from 'xstate';
import { hintsLeft, type LessonEvent, type lessonMachine } from '../lesson/index.ts';
import { useSay } from './useDesk.ts';

/** What can be done now, always at the foot of the sheet: back, a hint, and the one thing that goes on. */
export function LessonActions({
  snapshot,
  send,
}: {
  readonly snapshot: SnapshotFrom<typeof lessonMachine>;
  readonly send: (event: LessonEvent) => void;
}) {
  const say = useSay();
  const { progress, choice, lesson } = snapshot.context;
  const asks = snapshot.matches('predicting') || snapshot.matches('repairing') || snapshot.matches('refused');
  const left = hintsLeft(snapshot.context);
  const opened = (progress.hints[String(progress.step)] ?? 0) > 0;
  const last = progress.step === lesson.steps.length - 1;
  return (
    <div className="actions">
      <button type="button" className="other" disabled={progress.step === 0} onClick={() => send({ type: 'back' })}>
        {say('lesson.back')}
      </button>
      {asks && (
        <button type="button" className="other" disabled={left === 0} onClick={() => send({ type: 'hint' })}>
          {say(left === 0 ? 'lesson.hint.none' : opened ? 'lesson.hint.more' : 'lesson.hint')}
        </button>
      )}
      {asks ? (
        <button type="button" className="go" disabled={choice === null} onClick={() => send({ type: 'run' })}>
          {say('lesson.run')}
        </button>
      ) : snapshot.matches('watching') ? (
        <button type="button" className="go" onClick={() => send({ type: 'ran' })}>
          {say('lesson.skip')}
        </button>
      ) : (
        <button type="button" className="go" onClick={() => send({ type: 'next' })}>
          {say(last ? 'lesson.finish' : 'lesson.next')}
        </button>
      )}
    </div>
  );
}
