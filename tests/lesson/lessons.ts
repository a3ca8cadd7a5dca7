import { readdirSync, readFileSync } from 'node:fs';
import { printDiagnostics } from '../../src/installation/index.ts';
import { readLesson, type Lesson, type LessonReading, type LessonSurroundings } from '../../src/lesson/index.ts';
import { bakery } from '../scenario/bakery.ts';

const FOLDER = new URL('../../lessons/', import.meta.url);

/** Names of the lessons that ship. */
export const LESSONS: readonly string[] = readdirSync(FOLDER).filter((name) => name !== 'places');

/** The text of a shipped lesson's file and the Markdown beside it. */
export function written(id: string): { readonly text: string; readonly prose: Readonly<Record<string, string>> } {
  const folder = new URL(`${id}/`, FOLDER);
  const names = readdirSync(folder).filter((name) => name.endsWith('.md'));
  const prose = Object.fromEntries(names.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]));
  return { text: readFileSync(new URL('lesson.yaml', folder), 'utf8'), prose };
}

/** Reads a text as a lesson set in the bakery. */
export function readingOf(text: string, prose: LessonSurroundings['prose'] = {}): LessonReading {
  return readLesson(text, 'lessons/test/lesson.yaml', { id: 'test', place: 'bakery', build: bakery, prose });
}

/** A shipped lesson that must be right; what is wrong with it is printed if it is not. */
export function lessonNamed(id: string): Lesson {
  const { text, prose } = written(id);
  const reading = readLesson(text, `lessons/${id}/lesson.yaml`, { id, place: 'bakery', build: bakery, prose });
  if (!reading.ok) throw new Error(printDiagnostics(reading.diagnostics, text));
  return reading.lesson;
}
