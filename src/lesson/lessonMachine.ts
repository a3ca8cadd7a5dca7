import { assign, setup } from 'xstate';
import { choicesOf, chosen, committed, hinted, hintsLeft, moved, stepNow, type Playing } from './playing.ts';
import type { Lesson } from './lesson.ts';
import { fits, freshProgress, type Progress } from './progress.ts';

/** What a learner does, and `ran`: the run was watched to its end. */
export type LessonEvent =
  | { readonly type: 'next' | 'back' | 'hint' | 'run' | 'ran' | 'restart' }
  /** an answer of a prediction, or a repair; may be changed until it is run */
  | { readonly type: 'choose'; readonly choice: number };

/** What the machine starts from: the lesson, and what was kept of it. Progress that does not fit the lesson is left out. */
export interface LessonInput {
  readonly lesson: Lesson;
  readonly progress?: Progress;
}

const back = { guard: 'hasBefore', target: 'arriving', actions: 'goBack' } as const;
const next = { target: 'arriving', actions: 'goOn' } as const;
const choose = { guard: 'exists', actions: 'choose' } as const;
const hint = { guard: 'hasHint', actions: 'openHint' } as const;

/** The player of one lesson, without a clock and without a screen: step it with `initialTransition` and `transition`. Its
 *  state says what may be done now; `context.progress` is what to keep.
 *
 *  - `telling`: a step that shows or explains; `next`
 *  - `predicting`: `choose`, `hint`, then `run`, which commits and goes on to the run; `predicted`: the same, committed
 *  - `watching`: the run plays, until `ran`; `watched`: the answer is told; `next`
 *  - `repairing`: `choose`, `hint`, then `run`; `refused`: the repair was not enough, `choose` again; `repaired`; `next`
 *  - `done`: all steps are behind; `back`, `restart` */
export const lessonMachine = setup({
  types: {} as { context: Playing; events: LessonEvent; input: LessonInput },
  guards: {
    isOver: ({ context }) => stepNow(context) === undefined,
    isPredict: ({ context }) => stepNow(context)?.kind === 'predict',
    isRun: ({ context }) => stepNow(context)?.kind === 'run',
    isRepair: ({ context }) => stepNow(context)?.kind === 'make-safe',
    isMarked: ({ context: { progress } }) => progress.marks.some(({ step }) => step === progress.step),
    hasChosen: ({ context }) => context.choice !== null,
    isRight: ({ context }) => chosen(context)?.right === true,
    exists: ({ context, event }) => event.type === 'choose' && event.choice in choicesOf(stepNow(context)),
    hasHint: ({ context }) => hintsLeft(context) > 0,
    hasBefore: ({ context }) => context.progress.step > 0,
  },
  actions: {
    goOn: assign(({ context }) => moved(context, 1)),
    goBack: assign(({ context }) => moved(context, -1)),
    openHint: assign(({ context }) => hinted(context)),
    choose: assign(({ event }) => (event.type === 'choose' ? { choice: event.choice } : {})),
    commit: assign(({ context }) => committed(context)),
    forget: assign(({ context }) => ({ progress: freshProgress(context.lesson), choice: null })),
  },
}).createMachine({
  id: 'lesson',
  context: ({ input: { lesson, progress } }) => ({
    lesson,
    progress: progress !== undefined && fits(lesson, progress) ? progress : freshProgress(lesson),
    choice: null,
  }),
  initial: 'arriving',
  on: { restart: { target: '.arriving', actions: 'forget' } },
  states: {
    arriving: {
      always: [
        { guard: 'isOver', target: 'done' },
        { guard: 'isRun', target: 'watching' },
        { guard: 'isPredict', target: 'predicting' },
        { guard: 'isRepair', target: 'repairing' },
        { target: 'telling' },
      ],
    },
    telling: { on: { next, back } },
    predicting: {
      always: { guard: 'isMarked', target: 'predicted' },
      on: { choose, hint, run: { guard: 'hasChosen', target: 'arriving', actions: ['commit', 'goOn'] }, back },
    },
    predicted: { on: { run: next, next, back } },
    watching: { on: { ran: 'watched', back } },
    watched: { on: { next, back } },
    repairing: {
      always: { guard: 'isMarked', target: 'repaired' },
      on: {
        choose,
        hint,
        run: [
          { guard: 'isRight', target: 'repaired', actions: 'commit' },
          { guard: 'hasChosen', target: 'refused', actions: 'commit' },
        ],
        back,
      },
    },
    refused: { on: { choose: { ...choose, target: 'repairing' }, hint, back } },
    repaired: { on: { next, back } },
    done: { on: { back } },
  },
});
