import { useCallback, useEffect, useState } from 'react';
import { initialTransition, transition, type SnapshotFrom } from 'xstate';
import { lessonMachine, type Lesson, type LessonEvent, type Progress } from '../lesson/index.ts';
import type { Records } from '../records/index.ts';

/** A lesson being played: where it stands, and how it goes on. Everything done is kept at once. */
export interface LessonPlay {
  readonly snapshot: SnapshotFrom<typeof lessonMachine>;
  readonly send: (event: LessonEvent) => void;
  /** False once the browser has refused to keep progress. */
  readonly lasting: boolean;
}

/** Steps the machine of a lesson, purely; the only effect is that progress is kept. */
export function useLesson(lesson: Lesson, progress: Progress | undefined, records: Records): LessonPlay {
  const [snapshot, setSnapshot] = useState(
    () => initialTransition(lessonMachine, { lesson, ...(progress ? { progress } : {}) })[0],
  );
  const [lasting, setLasting] = useState(records.lasting());
  const send = useCallback(
    (event: LessonEvent) => setSnapshot((before) => transition(lessonMachine, before, event)[0]),
    [],
  );
  const made = snapshot.context.progress;
  useEffect(() => {
    void records.save(made).then(() => setLasting(records.lasting()));
  }, [records, made]);
  return { snapshot, send, lasting };
}
