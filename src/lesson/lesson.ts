import type { Zone } from '../body/index.ts';

/** What is claimed of a run. Times s from the fault; amperes and volts r.m.s. in the instant after the fault strikes or
 *  the hand touches (in ordinary work, where neither happens); a zone is the worst of the whole run. */
export type Claim =
  | { readonly kind: 'device'; readonly device: string; readonly operates: 'never' | { readonly within_s: number } }
  | {
      readonly kind: 'through';
      /** a branch, or a part for the largest current in it */
      readonly through: string;
      readonly above_A?: number;
      readonly below_A?: number;
    }
  | {
      readonly kind: 'touching';
      /** a terminal; its volts count above the floor */
      readonly touching: string;
      readonly above_V?: number;
      readonly below_V?: number;
    }
  | {
      readonly kind: 'person';
      readonly person: string;
      readonly above_A?: number;
      readonly below_A?: number;
      readonly reaches?: Zone;
      readonly stays_below?: Zone;
    };

/** A claim about a run that the solver proves or refutes. */
export interface Assertion {
  readonly claim: Claim;
  /** Changes for this claim only, upon what is given: "bonding jumper missing". */
  readonly with: readonly string[];
}

/** One answer of a prediction. Its claim holds exactly when the answer is right; the checker proves that. */
export interface Answer {
  readonly say: string;
  readonly right: boolean;
  /** said after the run to whoever chose it; like every text of a step, filled under the step's `given` */
  readonly because: string;
  readonly claim: Assertion;
}

interface Told {
  readonly title: string;
  /** prose with facts still to be filled */
  readonly text: string;
  /** conditions that hold: those of the lesson, then those of the step */
  readonly given: readonly string[];
  /** the part the picture turns to */
  readonly look?: string;
}

interface Asked {
  /** the question, one big sentence */
  readonly ask: string;
  readonly hints: readonly string[];
}

/** One step of a lesson. A prediction is always followed by the run that answers it. */
export type Step =
  | ({ readonly kind: 'show' } & Told)
  | ({ readonly kind: 'predict'; readonly answers: readonly Answer[] } & Told & Asked)
  | ({
      readonly kind: 'run';
      /** how long to look, s */
      readonly until_s: number;
      /** device or part to watch */
      readonly watch: string;
    } & Told)
  | ({ readonly kind: 'explain' } & Told)
  | ({
      readonly kind: 'make-safe';
      /** repairs to choose from */
      readonly repairs: readonly Repair[];
      readonly goal: readonly Assertion[];
    } & Told &
      Asked);

/** One repair to choose: a change of conditions, and what is said once it was tried; filled under the step's `given` and
 *  the change. */
export interface Repair {
  readonly change: string;
  readonly right: boolean;
  readonly because: string;
}

/** One kind of step. */
export type StepOf<K extends Step['kind']> = Extract<Step, { readonly kind: K }>;

/** A lesson as read from its folder: plain data; every name in it exists in the place. */
export interface Lesson {
  /** folder name, e.g. a-rod-is-not-a-wire */
  readonly id: string;
  readonly title: string;
  /** the misconception it removes */
  readonly removes: string;
  /** goes on from "Afterwards you can …" */
  readonly afterwards: string;
  readonly minutes: number;
  readonly place: string;
  readonly given: readonly string[];
  readonly steps: readonly Step[];
  readonly proves: readonly Assertion[];
}
