/** Lessons: read and proven against the solver, played without a clock, marked. */
export type { Lesson, Step, StepOf } from './lesson.ts';
export { isLesson, placeNamed, readLesson } from './readLesson.ts';
export type { LessonReading } from './readLesson.ts';
export type { LessonSurroundings } from './surroundings.ts';
export { lessonJsonSchema } from './lessonFile.ts';
export { prove, repairText, repairWorks } from './prove.ts';
export type { Proof } from './prove.ts';
export { claimText } from './claim.ts';
export { lessonMachine } from './lessonMachine.ts';
export type { LessonEvent, LessonInput } from './lessonMachine.ts';
export { hintsLeft, stepNow } from './playing.ts';
export { mark } from './progress.ts';
export type { Progress } from './progress.ts';
export { fill } from './fact.ts';
export { conditionsOf } from './runs.ts';
export { readProse } from './prose.ts';
export type { Span } from './prose.ts';
