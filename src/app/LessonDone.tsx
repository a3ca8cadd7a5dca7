import type { Build } from '../installation/index.ts';
import { fill, mark, repairText, type Lesson, type Progress } from '../lesson/index.ts';
import { Prose } from './Prose.tsx';
import { useSay, useVocabulary } from './useDesk.ts';

/** The end of a lesson: how many were right, what was said, and where to go on. */
export function LessonDone({
  lesson,
  progress,
  build,
  onAgain,
  onExplore,
}: {
  readonly lesson: Lesson;
  readonly progress: Progress;
  readonly build: Build;
  readonly onAgain: () => void;
  readonly onExplore: () => void;
}) {
  const say = useSay();
  const vocabulary = useVocabulary();
  const result = mark(lesson, progress);
  return (
    <>
      <h3 className="step-title" tabIndex={-1}>
        {say('lesson.done')}
      </h3>
      <p className="headline">{say('lesson.marks', { right: String(result.right), of: String(result.of) })}</p>
      <p className="quiet">{say('lesson.marks.hints', { hints: result.hints })}</p>
      <p>{say('lesson.afterwards', { afterwards: lesson.afterwards })}</p>
      <ol className="told">
        {result.told.map(({ step, title, right, chosen, because }) => {
          const given = lesson.steps[step]?.given ?? lesson.given;
          const repair = lesson.steps[step]?.kind === 'make-safe';
          const answer = repair
            ? repairText(build, { change: chosen, right, because }, vocabulary)
            : fill(build, chosen, given, vocabulary);
          return (
            <li key={step}>
              <p className={right ? 'verdict right' : 'verdict wrong'}>
                {say(right ? 'lesson.right' : 'lesson.wrong')}: {title}
              </p>
              <p className="quiet">{say('lesson.yours', { answer })}</p>
              <Prose build={build} text={because} given={repair ? [...given, chosen] : given} />
            </li>
          );
        })}
      </ol>
      <p className="actions actions-done">
        <button type="button" className="other" onClick={onAgain}>
          {say('lesson.done.again')}
        </button>
        <button type="button" className="go" onClick={onExplore}>
          {say('lesson.done.explore')}
        </button>
      </p>
      <p className="quiet">{say('lesson.kept')}</p>
    </>
  );
}
