import type { Answer, Lesson, Repair, Step } from './lesson.ts';
import type { Mark, Progress } from './progress.ts';

/** A lesson while it is played: what was done, and a choice that is not committed yet. */
export interface Playing {
  readonly lesson: Lesson;
  readonly progress: Progress;
  readonly choice: number | null;
}

/** The step that is shown; undefined once all are done. */
export function stepNow({ lesson, progress }: Playing): Step | undefined {
  return lesson.steps[progress.step];
}

/** What there is to choose from in a step. */
export function choicesOf(step: Step | undefined): readonly (Answer | Repair)[] {
  if (step?.kind === 'predict') return step.answers;
  return step?.kind === 'make-safe' ? step.repairs : [];
}

/** What is chosen and not committed yet. */
export function chosen(playing: Playing): Answer | Repair | undefined {
  return playing.choice === null ? undefined : choicesOf(stepNow(playing))[playing.choice];
}

/** Hints of this step that are still closed. */
export function hintsLeft(playing: Playing): number {
  const step = stepNow(playing);
  const all = step !== undefined && 'hints' in step ? step.hints.length : 0;
  return all - (playing.progress.hints[String(playing.progress.step)] ?? 0);
}

/** One hint more. */
export function hinted({ progress }: Playing): Pick<Playing, 'progress'> {
  const key = String(progress.step);
  return { progress: { ...progress, hints: { ...progress.hints, [key]: (progress.hints[key] ?? 0) + 1 } } };
}

/** Steps on or back. */
export function moved({ lesson, progress }: Playing, by: 1 | -1): Pick<Playing, 'progress' | 'choice'> {
  const step = Math.min(Math.max(progress.step + by, 0), lesson.steps.length);
  return { progress: { ...progress, step }, choice: null };
}

/** Commits the choice: a prediction is marked at once, a repair when it works. */
export function committed(playing: Playing): Pick<Playing, 'progress' | 'choice'> {
  const { progress, choice } = playing;
  const made = chosen(playing);
  if (made === undefined || choice === null) return { progress, choice };
  const key = String(progress.step);
  const tried = [...(progress.tried[key] ?? []), choice];
  const over = stepNow(playing)?.kind === 'predict' || made.right;
  const mark: Mark = {
    step: progress.step,
    right: made.right && tried.length === 1,
    hints: progress.hints[key] ?? 0,
    tries: tried.length,
  };
  return {
    progress: {
      ...progress,
      answers: { ...progress.answers, [key]: choice },
      tried: { ...progress.tried, [key]: tried },
      marks: over ? [...progress.marks, mark] : progress.marks,
    },
    choice: null,
  };
}
