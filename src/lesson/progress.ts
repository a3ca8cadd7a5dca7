import type { Lesson } from './lesson.ts';

/** One marked step; what is only shown or told is not marked. */
export interface Mark {
  readonly step: number;
  readonly right: boolean;
  /** hints opened before */
  readonly hints: number;
  /** 1 for a prediction; for a repair how many were tried */
  readonly tries: number;
}

/** What a learner has done in one lesson: plain data, so that it can be kept. */
export interface Progress {
  readonly lesson: string;
  /** index of the step shown; the number of steps once all are done */
  readonly step: number;
  /** chosen answer or repair, by the step's index as text */
  readonly answers: Readonly<Record<string, number>>;
  /** hints opened, by the step's index as text */
  readonly hints: Readonly<Record<string, number>>;
  /** repairs tried, by the step's index as text */
  readonly tried: Readonly<Record<string, readonly number[]>>;
  readonly marks: readonly Mark[];
}

/** Nothing done yet. */
export function freshProgress({ id }: Lesson): Progress {
  return { lesson: id, step: 0, answers: {}, hints: {}, tried: {}, marks: [] };
}

/** Whether kept progress fits a lesson as it is now: a lesson that was changed is begun again. */
export function fits(lesson: Lesson, progress: Progress): boolean {
  const answered = Object.entries({ ...progress.answers }).every(([step, answer]) => {
    const asked = lesson.steps[Number(step)];
    if (asked?.kind === 'predict') return asked.answers[answer] !== undefined;
    return asked?.kind === 'make-safe' && asked.repairs[answer] !== undefined;
  });
  return progress.lesson === lesson.id && progress.step >= 0 && progress.step <= lesson.steps.length && answered;
}

/** A whole lesson's marks: how many of the marked steps are right, and what is said of each. */
export interface Result {
  readonly right: number;
  readonly of: number;
  readonly hints: number;
  readonly told: readonly {
    readonly step: number;
    readonly title: string;
    readonly right: boolean;
    readonly hints: number;
    readonly tries: number;
    /** what the learner chose, and why it is right or not; numbers still to be filled */
    readonly chosen: string;
    readonly because: string;
  }[];
}

/** Marks a lesson: one point for a right prediction and for a repair that works at the first try. */
export function mark(lesson: Lesson, { answers, marks }: Progress): Result {
  const asked = lesson.steps.filter(({ kind }) => kind === 'predict' || kind === 'make-safe');
  const told = marks.flatMap((one) => {
    const step = lesson.steps[one.step];
    const choice = answers[String(one.step)];
    if (step === undefined || choice === undefined) return [];
    const answer = step.kind === 'predict' ? step.answers[choice] : undefined;
    const repair = step.kind === 'make-safe' ? step.repairs[choice] : undefined;
    const said = { chosen: answer?.say ?? repair?.change ?? '', because: answer?.because ?? repair?.because ?? '' };
    return [{ ...one, title: step.title, ...said }];
  });
  return {
    right: marks.filter((one) => one.right).length,
    of: asked.length,
    hints: marks.reduce((sum, { hints }) => sum + hints, 0),
    told,
  };
}
