import { Suspense, useEffect, useMemo, useRef, useState } from 'react';
import type { Conditions } from '../installation/index.ts';
import { conditionsOf, stepNow, type Lesson, type Progress } from '../lesson/index.ts';
import type { Records } from '../records/index.ts';
import type { Theme } from '../scene/index.ts';
import { Covered } from './Covered.tsx';
import { openDesk, step as deskStep, type Deed, type Desk } from './desk.ts';
import { Picture, PictureToCome } from './lazyPicture.tsx';
import { LessonActions } from './LessonActions.tsx';
import { LessonDone } from './LessonDone.tsx';
import { LessonSheet } from './LessonSheet.tsx';
import { placeOf } from './places.ts';
import { afterFrame } from './afterFrame.ts';
import { createStore, type Store } from './store.ts';
import { DeskContext, useSay } from './useDesk.ts';
import { useLesson } from './useLesson.ts';
import { useKeys } from './useKeys.ts';

/** Plays one lesson: the picture of what is given, and beside it what is told, asked, answered and marked. */
export function LessonPlayer({
  lesson,
  progress,
  records,
  theme,
  sound,
  still,
  onLeave,
  onExplore,
}: {
  readonly lesson: Lesson;
  readonly progress: Progress | undefined;
  readonly records: Records;
  readonly theme: Theme;
  readonly sound: boolean;
  readonly still: boolean;
  readonly onLeave: () => void;
  readonly onExplore: (place: string, conditions: Conditions) => void;
}) {
  const say = useSay();
  const { snapshot, send, lasting } = useLesson(lesson, progress, records);
  const playing = snapshot.context;
  const step = stepNow(playing);
  const place = placeOf(lesson.place);
  const [store] = useState(() => createStore(openDesk(place, undefined, { still, fixed: true }), deskStep, afterFrame));
  const conditions = useMemo(() => givenNow(snapshot.context, place.build), [snapshot.context, place]);
  const state = snapshot.value;
  const asks = state === 'predicting' || state === 'repairing';
  const sheet = useRef<HTMLDivElement>(null);

  useEffect(() => store.send({ kind: 'still', still }), [store, still]);
  useStaging(store, conditions, state, still, () => send({ type: 'ran' }));
  useEffect(() => {
    sheet.current?.scrollTo({ top: 0 });
    window.scrollTo({ top: 0 }); // on a phone it is the page that scrolls
    sheet.current?.querySelector<HTMLElement>('.step-title')?.focus({ preventScroll: true });
  }, [playing.progress.step]);
  const tries = playing.progress.tried[String(playing.progress.step)]?.length ?? 0;
  useEffect(() => {
    // The answers stay above what came of one: on a low window the verdict would otherwise be out of sight.
    if (state === 'refused' || state === 'repaired')
      sheet.current?.querySelector('.verdict')?.scrollIntoView({ block: 'center' });
  }, [state, tries]);
  useKeys(
    { ' ': () => !asks && store.send({ kind: store.get().playhead.running ? 'pause' : 'run' }), escape: onLeave },
    true,
  );

  return (
    <DeskContext value={store}>
      <main className="lesson">
        <header className="lesson-head">
          <button type="button" className="plain" onClick={onLeave}>
            {say('lesson.all')}
          </button>
          <h2>{lesson.title}</h2>
          <p aria-label={say('lesson.step.long', stepOf(playing.progress.step, lesson))}>
            {say('lesson.step', stepOf(playing.progress.step, lesson))}
          </p>
        </header>
        <div className="lesson-stage">
          <Suspense fallback={<PictureToCome />}>
            <Picture theme={theme} sound={sound} profile={!asks} strip={!asks} hops={false} look={step?.look} />
          </Suspense>
          {asks && <Covered>{say('lesson.covered')}</Covered>}
        </div>
        <div className="lesson-sheet" ref={sheet}>
          <ol className="progress" aria-hidden="true">
            {lesson.steps.map((_, index) => (
              <li key={index} className={progressClass(index, playing.progress.step)} />
            ))}
          </ol>
          {step ? (
            <LessonSheet snapshot={snapshot} send={send} build={place.build} />
          ) : (
            <LessonDone
              lesson={lesson}
              progress={playing.progress}
              build={place.build}
              onAgain={() => send({ type: 'restart' })}
              onExplore={() => onExplore(lesson.place, conditions)}
            />
          )}
          {!lasting && <p className="not-kept">{say('lesson.kept.not')}</p>}
        </div>
        {step && <LessonActions snapshot={snapshot} send={send} />}
      </main>
    </DeskContext>
  );
}

/** What holds in a state of the lesson: what the step gives, and in a repair that was run the change too. */
function givenNow(playing: Parameters<typeof stepNow>[0], build: Desk['place']['build']): Conditions {
  const step = stepNow(playing) ?? playing.lesson.steps.at(-1);
  const given = step?.given ?? playing.lesson.given;
  const tried = playing.progress.answers[String(playing.progress.step)];
  const repair =
    step?.kind === 'make-safe' && tried !== undefined && playing.choice === null ? step.repairs[tried] : undefined;
  return conditionsOf(build, repair ? [...given, repair.change] : given);
}

/** Sets the picture up for each state: covered before an answer, running while it is watched, at the fault when it is told. */
function useStaging(
  store: Store<Desk, Deed>,
  conditions: Conditions,
  state: string,
  still: boolean,
  onRan: () => void,
): void {
  const ran = useRef(onRan);
  useEffect(() => {
    ran.current = onRan;
  });
  useEffect(() => {
    const covered = state === 'predicting' || state === 'predicted';
    const runs = state === 'watching' || state === 'refused' || state === 'repaired';
    if (state !== 'watched')
      store.send({ kind: 'stage', conditions, covered, shows: covered || runs ? 'before' : 'fault' });
    if (!runs) return;
    if (still) store.send({ kind: 'seek', time_s: 0 });
    else store.send({ kind: 'run' });
    if (state !== 'watching') return;
    if (!store.get().playhead.running) {
      const timer = setTimeout(() => ran.current(), 400);
      return () => clearTimeout(timer);
    }
    return store.subscribe(() => {
      if (!store.get().playhead.running) ran.current();
    });
  }, [store, conditions, state, still]);
}

function stepOf(step: number, { steps }: Lesson): { readonly step: string; readonly steps: string } {
  return { step: String(Math.min(step + 1, steps.length)), steps: String(steps.length) };
}

function progressClass(index: number, step: number): string {
  return index < step ? 'behind' : index === step ? 'here' : '';
}
