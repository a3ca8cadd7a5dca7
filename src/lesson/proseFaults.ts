import { termKeys } from '../explain/index.ts';
import { nearest, setConditions, type Build, type Diagnostic } from '../installation/index.ts';
import { askings, FACTS, type Fact } from './fact.ts';
import type { LessonFile } from './lessonFile.ts';
import { branchesOf } from './measure.ts';
import type { LessonSurroundings } from './surroundings.ts';

/** `{{ … }}` in the Markdown of a lesson and in its sentences that ask nothing known, each where it stands. */
export function proseFaults(
  lesson: LessonFile,
  file: string,
  { build, prose }: LessonSurroundings,
): readonly Diagnostic[] {
  const used = [...new Set(lesson.steps.flatMap(({ text }) => (text === undefined ? [] : [text])))];
  const folder = file.includes('/') ? file.slice(0, file.lastIndexOf('/') + 1) : '';
  return [
    ...used.flatMap((name) => textFaults(build, prose[name] ?? '', `${folder}${name}`)),
    ...sentences(lesson).flatMap((sentence) => textFaults(build, sentence, file)),
  ];
}

function sentences({ steps, removes, afterwards }: LessonFile): readonly string[] {
  const asked = steps.flatMap((step) => {
    if (step.kind === 'predict')
      return [step.ask, ...step.hints, ...step.answers.flatMap(({ say, because }) => [say, because])];
    if (step.kind === 'make-safe') return [step.ask, ...step.hints, ...step.repairs.map(({ because }) => because)];
    return [];
  });
  return [removes, afterwards, ...asked];
}

function textFaults(build: Build, text: string, file: string): readonly Diagnostic[] {
  return askings(text).flatMap(({ start, end, fact }) => {
    const fault = factFault(build, fact);
    if (fault === undefined) return [];
    const before = text.slice(0, start);
    const line = before.split('\n').length;
    const column = start - before.lastIndexOf('\n');
    const path = text.slice(start, end);
    return [{ code: 'unknown-name', file, line, column, length: end - start, path, ...fault } satisfies Diagnostic];
  });
}

function factFault(
  build: Build,
  fact: Fact | undefined,
): { readonly message: string; readonly instead: string } | undefined {
  if (fact === undefined)
    return {
      message: `asks nothing that is known; there are ${FACTS.join(', ')}`,
      instead: '{{ amperes of mixer breaker }}',
    };
  const setting = setConditions(build.installation, fact.with);
  const problem = setting.ok ? undefined : setting.problems[0];
  if (problem !== undefined)
    return { message: problem.message, instead: problem.instead ?? 'a condition of the place' };
  const known = subjectsOf(build, fact);
  if (known === undefined || known.includes(fact.subject)) return undefined;
  return {
    message: `the place has no "${fact.subject.slice(0, 60)}" of which to ask ${fact.kind}`,
    instead: `{{ ${fact.kind} of ${nearest(fact.subject, known) ?? known[0] ?? ''} }}`,
  };
}

/** What may be asked about; undefined if the subject is fine as it is. */
function subjectsOf(build: Build, { kind, subject }: Fact): readonly string[] | undefined {
  switch (kind) {
    case 'amperes':
    case 'ohms':
    case 'loop':
      return branchesOf(build, subject).length > 0 ? undefined : build.branches.map(({ name }) => name);
    case 'volts':
      return build.network.nodes.slice(1);
    case 'rating':
    case 'multiple':
    case 'opening':
      return build.devices.map(({ name }) => name);
    case 'shock':
    case 'touch':
    case 'effect':
      return build.people.map(({ name }) => name);
    case 'name':
    case 'supply':
      return Object.keys(build.installation.parts);
    case 'word':
      return termKeys();
    default:
      return kind satisfies never;
  }
}
