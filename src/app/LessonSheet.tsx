import { useId } from 'react';
import type { SnapshotFrom } from 'xstate';
import type { Build } from '../installation/index.ts';
import {
  fill,
  repairText,
  stepNow,
  type LessonEvent,
  type lessonMachine,
  type Step,
  type StepOf,
} from '../lesson/index.ts';
import { Outcome, Ways } from './Account.tsx';
import { Prose } from './Prose.tsx';
import { useSay, useVocabulary } from './useDesk.ts';

type Snapshot = SnapshotFrom<typeof lessonMachine>;

/** What a step tells and asks, and after the run what came of the answer. */
export function LessonSheet({
  snapshot,
  send,
  build,
}: {
  readonly snapshot: Snapshot;
  readonly send: (event: LessonEvent) => void;
  readonly build: Build;
}) {
  const vocabulary = useVocabulary();
  const step = stepNow(snapshot.context);
  if (!step) return null;
  const asked = step.kind === 'predict' || step.kind === 'make-safe' ? step : null;
  const title = asked ? fill(build, asked.ask, asked.given, vocabulary) : step.title;
  return (
    <>
      <h3 className="step-title" tabIndex={-1}>
        {title}
      </h3>
      {step.text !== '' && <Prose build={build} text={step.text} given={step.given} />}
      {asked && <Choices step={asked} snapshot={snapshot} send={send} build={build} />}
      {asked && <Hints step={asked} snapshot={snapshot} build={build} />}
      {step.kind === 'run' && <Watched step={step} snapshot={snapshot} build={build} />}
      {asked?.kind === 'make-safe' && <Tried step={asked} snapshot={snapshot} build={build} />}
    </>
  );
}

/** The answers of a prediction, or the repairs to choose from. */
function Choices({
  step,
  snapshot,
  send,
  build,
}: {
  readonly step: StepOf<'predict'> | StepOf<'make-safe'>;
  readonly snapshot: Snapshot;
  readonly send: (event: LessonEvent) => void;
  readonly build: Build;
}) {
  const vocabulary = useVocabulary();
  const group = useId();
  const { progress, choice } = snapshot.context;
  const key = String(progress.step);
  const committed = snapshot.matches('predicted') || snapshot.matches('repaired');
  const chosen = choice ?? progress.answers[key] ?? null;
  const texts =
    step.kind === 'predict'
      ? step.answers.map(({ say }) => fill(build, say, step.given, vocabulary))
      : step.repairs.map((repair) => repairText(build, repair, vocabulary));
  return (
    <fieldset className="answers" disabled={committed}>
      <legend className="visually-hidden">{fill(build, step.ask, step.given, vocabulary)}</legend>
      {texts.map((text, index) => (
        <label key={text} className="answer">
          <input
            type="radio"
            name={group}
            checked={chosen === index}
            onChange={() => send({ type: 'choose', choice: index })}
          />
          <span>{text}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Hints({
  step,
  snapshot,
  build,
}: {
  readonly step: StepOf<'predict'> | StepOf<'make-safe'>;
  readonly snapshot: Snapshot;
  readonly build: Build;
}) {
  const vocabulary = useVocabulary();
  const say = useSay();
  const { progress } = snapshot.context;
  const opened = step.hints.slice(0, progress.hints[String(progress.step)] ?? 0);
  return (
    <ul className="hints" aria-live="polite" aria-label={say('lesson.hint')}>
      {opened.map((hint) => (
        <li key={hint}>{fill(build, hint, step.given, vocabulary)}</li>
      ))}
    </ul>
  );
}

/** After the run: what the learner said, whether it was so, why, and what happened in numbers. */
function Watched({
  step,
  snapshot,
  build,
}: {
  readonly step: StepOf<'run'>;
  readonly snapshot: Snapshot;
  readonly build: Build;
}) {
  const say = useSay();
  const { lesson, progress } = snapshot.context;
  if (!snapshot.matches('watched'))
    return (
      <p className="lesson-running" role="status">
        {say('lesson.running')}
      </p>
    );
  const asked: Step | undefined = lesson.steps[progress.step - 1];
  const answer = progress.answers[String(progress.step - 1)];
  const made = asked?.kind === 'predict' && answer !== undefined ? asked.answers[answer] : undefined;
  return (
    <div role="status">
      {made && <Verdict right={made.right} because={made.because} given={step.given} build={build} said={made.say} />}
      <section className="sheet happened">
        <Outcome />
        <Ways brief />
      </section>
    </div>
  );
}

/** What came of a repair that was run. */
function Tried({
  step,
  snapshot,
  build,
}: {
  readonly step: StepOf<'make-safe'>;
  readonly snapshot: Snapshot;
  readonly build: Build;
}) {
  const say = useSay();
  const vocabulary = useVocabulary();
  const { progress } = snapshot.context;
  const key = String(progress.step);
  const repair = step.repairs[progress.answers[key] ?? -1];
  if (!repair || !(snapshot.matches('refused') || snapshot.matches('repaired'))) return null;
  const tries = progress.tried[key]?.length ?? 1;
  return (
    <div role="status">
      <p className={repair.right ? 'verdict right' : 'verdict wrong'}>
        {repair.right ? say('lesson.repair.works', { tries }) : say('lesson.repair.fails')}
      </p>
      <p className="quiet">{say('lesson.yours', { answer: repairText(build, repair, vocabulary) })}</p>
      <Prose build={build} text={repair.because} given={[...step.given, repair.change]} />
      <section className="sheet happened">
        <Outcome />
        <Ways brief />
      </section>
    </div>
  );
}

function Verdict({
  right,
  said,
  because,
  given,
  build,
}: {
  readonly right: boolean;
  readonly said: string;
  readonly because: string;
  readonly given: readonly string[];
  readonly build: Build;
}) {
  const say = useSay();
  const vocabulary = useVocabulary();
  return (
    <>
      <p className={right ? 'verdict right' : 'verdict wrong'}>
        {say(right ? 'lesson.right.long' : 'lesson.wrong.long')}
      </p>
      <p className="quiet">{say('lesson.yours', { answer: fill(build, said, given, vocabulary) })}</p>
      <Prose build={build} text={because} given={given} />
    </>
  );
}
