/** A claim about a run that the solver can prove or refute. Times s from the fault, amperes and volts r.m.s. in the first
 *  interval after it strikes. `with` changes conditions for this claim only ("third wire open=no"). */
export type Assertion =
  | {
      readonly device: string;
      readonly operates: 'never' | { readonly within_s: number };
      readonly with?: readonly string[];
    }
  | {
      readonly through: string;
      readonly above_A?: number;
      readonly below_A?: number;
      readonly with?: readonly string[];
    }
  | {
      readonly touching: string;
      readonly above_V?: number;
      readonly below_V?: number;
      readonly with?: readonly string[];
    }
  | {
      readonly person: string;
      readonly 'zone-at-least'?: string;
      readonly 'zone-below'?: string;
      readonly with?: readonly string[];
    };

/** One answer of a prediction. The claim is proven to hold exactly when the answer is right. */
export interface Answer {
  readonly say: string;
  readonly right: boolean;
  /** Markdown shown after the run to whoever chose it; numbers filled */
  readonly because: string;
  readonly claim: Assertion;
}

/** One step of a lesson. `given` are the conditions that hold while it is shown (the lesson's own unless it names others). */
export type Step =
  | {
      readonly kind: 'show';
      readonly title: string;
      readonly prose: string;
      readonly given: readonly string[];
      readonly look?: string;
    }
  | {
      readonly kind: 'predict';
      readonly title: string;
      /** the question, big */
      readonly ask: string;
      readonly prose: string;
      readonly given: readonly string[];
      readonly answers: readonly Answer[];
      readonly hints: readonly string[];
      readonly look?: string;
    }
  | {
      readonly kind: 'run';
      readonly title: string;
      readonly prose: string;
      readonly given: readonly string[];
      readonly until_s: number;
      readonly watch: string;
    }
  | {
      readonly kind: 'explain';
      readonly title: string;
      readonly prose: string;
      readonly given: readonly string[];
      readonly look?: string;
    }
  | {
      readonly kind: 'make-safe';
      readonly title: string;
      readonly ask: string;
      readonly prose: string;
      readonly given: readonly string[];
      /** conditions the learner may change */
      readonly repairs: readonly string[];
      readonly goal: readonly Assertion[];
      readonly hints: readonly string[];
    };

/** A lesson as read from its folder; every name in it has been looked up in the place. */
export interface Lesson {
  /** folder name, e.g. a-rod-is-not-a-wire */
  readonly id: string;
  readonly title: string;
  /** the misconception it removes */
  readonly removes: string;
  /** what the learner will be able to do, after "I can …" */
  readonly afterwards: string;
  readonly place: string;
  readonly given: readonly string[];
  readonly minutes: number;
  readonly steps: readonly Step[];
  readonly proves: readonly Assertion[];
}

/** One step's mark: predictions and repairs are marked, the rest is not. */
export interface Mark {
  readonly step: number;
  readonly right: boolean;
  /** hints opened before answering */
  readonly hints: number;
  /** tries used; 1 for a prediction */
  readonly tries: number;
}

/** What a learner has done in one lesson; plain JSON, so that records can keep it. */
export interface Progress {
  readonly lesson: string;
  readonly step: number;
  /** chosen answer by step index (as text key) */
  readonly answers: Readonly<Record<string, number>>;
  readonly hints: Readonly<Record<string, number>>;
  readonly marks: readonly Mark[];
  readonly done: boolean;
}
