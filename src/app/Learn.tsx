import { useEffect, useState } from 'react';
import type { Conditions } from '../installation/index.ts';
import type { Lesson, Progress } from '../lesson/index.ts';
import { openRecords, type Kept } from '../records/index.ts';
import type { Theme } from '../scene/index.ts';
import { LessonPlayer } from './LessonPlayer.tsx';
import { LESSONS } from './lessons.ts';
import { useSay } from './useDesk.ts';

const records = openRecords(() => Date.now());

/** Learn: the list of lessons, each where it was left, and the lesson being played. */
export function Learn({
  lesson,
  theme,
  sound,
  still,
  onLesson,
  onExplore,
}: {
  /** The one being played, by its name; null for the list. */
  readonly lesson: string | null;
  readonly theme: Theme;
  readonly sound: boolean;
  readonly still: boolean;
  readonly onLesson: (lesson: string | null) => void;
  readonly onExplore: (place: string, conditions: Conditions) => void;
}) {
  const say = useSay();
  const [kept, setKept] = useState<readonly Kept[] | null>(null);
  useEffect(() => {
    void records.all().then(setKept);
  }, [lesson]);
  const playing = LESSONS.find(({ id }) => id === lesson);
  if (kept === null) return <main className="learn" aria-busy="true" />;
  const progressOf = ({ id }: Lesson) => kept.find(({ progress }) => progress.lesson === id)?.progress;
  if (playing)
    return (
      <LessonPlayer
        key={playing.id}
        lesson={playing}
        progress={progressOf(playing)}
        records={records}
        theme={theme}
        sound={sound}
        still={still}
        onLeave={() => onLesson(null)}
        onExplore={onExplore}
      />
    );
  return (
    <main className="learn">
      <h2>{say('lesson.all')}</h2>
      <ul className="lessons">
        {LESSONS.map((one) => (
          <li key={one.id}>
            <LessonCard lesson={one} progress={progressOf(one)} onOpen={() => onLesson(one.id)} />
          </li>
        ))}
      </ul>
    </main>
  );
}

function LessonCard({
  lesson,
  progress,
  onOpen,
}: {
  readonly lesson: Lesson;
  readonly progress: Progress | undefined;
  readonly onOpen: () => void;
}) {
  const say = useSay();
  const step = progress?.step ?? 0;
  const done = step >= lesson.steps.length;
  return (
    <article className="sheet lesson-card">
      <h3>{lesson.title}</h3>
      <p className="removes">“{lesson.removes}”</p>
      <p>{say('lesson.afterwards', { afterwards: lesson.afterwards })}</p>
      <p className="lesson-card-foot">
        <button type="button" className="go" onClick={onOpen}>
          {done ? say('lesson.done') : step > 0 ? say('lesson.resume', { step: step + 1 }) : say('lesson.begin')}
        </button>
        <span className="quiet">{say('lesson.minutes', { minutes: String(lesson.minutes) })}</span>
      </p>
    </article>
  );
}
