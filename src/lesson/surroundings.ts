import type { Build } from '../installation/index.ts';

/** What a lesson is read with. */
export interface LessonSurroundings {
  /** name of the lesson's folder */
  readonly id: string;
  /** name of the place, as the lesson writes it, and the place itself */
  readonly place: string;
  readonly build: Build;
  /** the Markdown files of the folder by name */
  readonly prose: Readonly<Record<string, string>>;
}
