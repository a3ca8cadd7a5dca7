import { lesson as rod } from '../../lessons/a-rod-is-not-a-wire/lesson.yaml?lesson';
import type { Lesson } from '../lesson/index.ts';

/** The lessons that come with the page, in the order in which they are best taken. */
export const LESSONS: readonly Lesson[] = [rod];
