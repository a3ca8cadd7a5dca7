import type { Diagnostic } from '../installation/index.ts';
import { readDocument, shapeDiagnostics } from '../installation/index.ts';
import type { Lesson, Step } from './lesson.ts';
import { lessonSchema, type LessonFile } from './lessonFile.ts';
import { lessonFaults } from './lessonNames.ts';
import { proseFaults } from './proseFaults.ts';
import type { LessonSurroundings } from './surroundings.ts';

/** What came of reading a lesson: the lesson, or everything that is wrong, in the file itself and in its prose. */
export type LessonReading =
  { readonly ok: true; readonly lesson: Lesson } | { readonly ok: false; readonly diagnostics: readonly Diagnostic[] };

/** Reads a lesson from YAML and the Markdown beside it. Whatever they hold it answers, with all faults at once.
 *  @param file the name to print before line and column */
export function readLesson(text: string, file: string, surroundings: LessonSurroundings): LessonReading {
  const document = readDocument(text, file);
  if (document.sound === 'nothing') return { ok: false, diagnostics: document.diagnostics };
  const result = lessonSchema.safeParse(document.value);
  const found = result.success
    ? [...lessonFaults(result.data, document, surroundings), ...proseFaults(result.data, file, surroundings)]
    : shapeDiagnostics(lessonSchema, document);
  const diagnostics = [
    ...document.diagnostics,
    ...found.filter((fault) => fault.file !== file || document.believes(fault)),
  ];
  if (result.success && diagnostics.length === 0) return { ok: true, lesson: lessonOf(result.data, surroundings) };
  const ordered = diagnostics.toSorted(
    (one, two) =>
      Number(one.file !== file) - Number(two.file !== file) || one.line - two.line || one.column - two.column,
  );
  return { ok: false, diagnostics: ordered };
}

/** Whether a text is meant to be a lesson rather than an installation. */
export function isLesson(text: string): boolean {
  const { value } = readDocument(text, '');
  return typeof value === 'object' && value !== null && ('lesson' in value || 'steps' in value);
}

/** The place a lesson is set in, or undefined if its text does not say one; for fetching the place before reading. */
export function placeNamed(text: string): string | undefined {
  const { value } = readDocument(text, '');
  if (typeof value !== 'object' || value === null || !('place' in value)) return undefined;
  return typeof value.place === 'string' ? value.place : undefined;
}

function lessonOf(file: LessonFile, { id, prose }: LessonSurroundings): Lesson {
  const { lesson: title, removes, afterwards, minutes, place, given, proves } = file;
  const steps = file.steps.map((step) => stepOf(step, given, prose));
  return { id, title, removes, afterwards, minutes, place, given, steps, proves };
}

function stepOf(
  step: LessonFile['steps'][number],
  given: readonly string[],
  prose: Readonly<Record<string, string>>,
): Step {
  const told = {
    title: step.title,
    text: step.text === undefined ? '' : (prose[step.text] ?? ''),
    given: [...given, ...step.given],
    ...(step.look === undefined ? {} : { look: step.look }),
  };
  switch (step.kind) {
    case 'show':
    case 'explain':
      return { kind: step.kind, ...told };
    case 'predict':
      return { kind: 'predict', ...told, ask: step.ask, hints: step.hints, answers: step.answers };
    case 'run':
      return { kind: 'run', ...told, until_s: step.until_s, watch: step.watch };
    case 'make-safe':
      return { kind: 'make-safe', ...told, ask: step.ask, hints: step.hints, repairs: step.repairs, goal: step.goal };
    default:
      return step satisfies never;
  }
}
