import type { Build } from '../installation/index.ts';
import { conditionSentence, type Vocabulary } from '../explain/index.ts';
import { judge, type Judgement } from './claim.ts';
import type { Assertion, Lesson, Repair, StepOf } from './lesson.ts';

/** One thing a lesson teaches, held against the solver. */
export interface Proof {
  /** where in the file, e.g. `steps.2.answers.0.claim` */
  readonly at: string;
  readonly assertion: Assertion;
  /** whether the solver must agree with the claim; a wrong answer's claim must be refuted */
  readonly expected: boolean;
  /** true if the solver says what the lesson says */
  readonly holds: boolean;
  /** what was found: "4.34 A", "never" */
  readonly value: string;
}

/** Proves everything a lesson teaches: its own claims, that each answer is right exactly when its claim holds, and that
 *  the right repairs, and only they, reach the goal, which is not reached without them. */
export function prove(lesson: Lesson, build: Build): readonly Proof[] {
  return [
    ...lesson.proves.map((assertion, index) => proof(build, `proves.${index}`, lesson.given, assertion, true)),
    ...lesson.steps.flatMap((step, index) => {
      const at = `steps.${index}`;
      if (step.kind === 'predict')
        return step.answers.map(({ claim, right }, answer) =>
          proof(build, `${at}.answers.${answer}.claim`, step.given, claim, right),
        );
      return step.kind === 'make-safe' ? repairProofs(build, at, step) : [];
    }),
  ];
}

/** A repair as one sentence, in the words of a vocabulary. */
export function repairText({ installation }: Build, { change }: Repair, vocabulary: Vocabulary): string {
  const [name = '', option] = change.split('=').map((half) => half.trim());
  const made = installation.conditions[name];
  return conditionSentence(name, option ?? made?.options[1] ?? '', vocabulary, made);
}

/** Whether one repair reaches the goal of a step. */
export function repairWorks(build: Build, step: StepOf<'make-safe'>, change: string): boolean {
  return step.goal.every((goal) => judge(build, [...step.given, change], goal).holds);
}

function proof(build: Build, at: string, given: readonly string[], assertion: Assertion, expected: boolean): Proof {
  const { holds, found } = judge(build, given, assertion);
  return { at, assertion, expected, holds: holds === expected, value: found };
}

function repairProofs(build: Build, at: string, step: StepOf<'make-safe'>): readonly Proof[] {
  const attempts = [
    { at: `${at}.goal`, change: undefined, right: false },
    ...step.repairs.map(({ change, right }, repair) => ({ at: `${at}.repairs.${repair}`, change, right })),
  ];
  return attempts.flatMap(({ at: place, change, right }): Proof[] => {
    const given = change === undefined ? step.given : [...step.given, change];
    const judged = step.goal.map((assertion): readonly [Assertion, Judgement] => [
      assertion,
      judge(build, given, assertion),
    ]);
    const [assertion, first] = judged.find(([, { holds }]) => !holds) ?? judged[0] ?? [];
    if (assertion === undefined || first === undefined) return [];
    const reached = judged.every(([, { holds }]) => holds);
    return [{ at: place, assertion, expected: right, holds: reached === right, value: first.found }];
  });
}
