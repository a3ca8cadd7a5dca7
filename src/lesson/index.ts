export type { Answer, Assertion, Lesson, Mark, Progress, Step } from './lesson.ts';
