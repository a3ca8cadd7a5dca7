import { describe, expect, test } from 'vitest';
import { initialTransition, transition } from 'xstate';
import { hintsLeft, lessonMachine, mark, type LessonEvent, type LessonInput } from '../../src/lesson/index.ts';
import { lessonNamed } from './lessons.ts';

const lesson = lessonNamed('a-rod-is-not-a-wire');

function play(events: readonly LessonEvent[], input: LessonInput = { lesson }) {
  let [snapshot] = initialTransition(lessonMachine, input);
  for (const event of events) [snapshot] = transition(lessonMachine, snapshot, event);
  return snapshot;
}

const next = { type: 'next' } as const;
const run = { type: 'run' } as const;
const ran = { type: 'ran' } as const;
const choose = (choice: number): LessonEvent => ({ type: 'choose', choice });
const predictRight = [next, choose(2), run];
const allRight = [...predictRight, ran, next, next, choose(2), run, ran, next, next, choose(2), run, next, next];

test('a lesson is played from end to end: show, predict, run, explain, repair', () => {
  const states = Array.from({ length: allRight.length + 1 }, (_, count) => play(allRight.slice(0, count)).value);
  expect(states.filter((state, index) => state !== states[index - 1])).toEqual([
    'telling',
    'predicting',
    'watching',
    'watched',
    'telling',
    'predicting',
    'watching',
    'watched',
    'telling',
    'repairing',
    'repaired',
    'telling',
    'done',
  ]);
  expect(mark(lesson, play(allRight).context.progress)).toMatchObject({ right: 3, of: 3, hints: 0 });
});

test('a prediction cannot be run before something is chosen', () => {
  expect(play([next, run]).value).toBe('predicting');
  expect(play([next, choose(9), run]).value).toBe('predicting');
  expect(play([next, choose(-1), run]).value).toBe('predicting');
});

test('a choice may be changed until it is run, and not after', () => {
  const committed = play([next, choose(0), choose(1), run, { type: 'back' }, choose(2), run]);
  expect(committed.context.progress.answers).toEqual({ 1: 1 });
  expect(committed.context.progress.marks).toEqual([{ step: 1, right: false, hints: 0, tries: 1 }]);
});

test('hints are counted, and end', () => {
  const hint = { type: 'hint' } as const;
  const one = play([next, hint]);
  expect(hintsLeft(one.context)).toBe(1);
  const spent = play([next, hint, hint, hint, choose(2), run]);
  expect(spent.context.progress.marks).toEqual([{ step: 1, right: true, hints: 2, tries: 1 }]);
});

test('a repair that is not enough may be tried again, and then is not marked as right', () => {
  const before = [...predictRight, ran, next, next, choose(2), run, ran, next, next];
  const refused = play([...before, choose(0), run]);
  expect(refused.value).toBe('refused');
  expect(refused.context.progress.marks).toHaveLength(2);
  const repaired = play([...before, choose(0), run, choose(3), run]);
  expect(repaired.value).toBe('repaired');
  expect(repaired.context.progress.marks.at(-1)).toEqual({ step: 7, right: false, hints: 0, tries: 2 });
  expect(mark(lesson, repaired.context.progress)).toMatchObject({ right: 2, of: 3 });
});

describe('after a reload', () => {
  test('the lesson goes on where it stopped', () => {
    for (let count = 0; count <= allRight.length; count += 1) {
      const stopped = play(allRight.slice(0, count));
      const progress = JSON.parse(JSON.stringify(stopped.context.progress));
      const again = play([], { lesson, progress });
      expect(again.context.progress).toEqual(stopped.context.progress);
      // A run that was watched is watched again; everything else stands as it stood.
      expect(again.value).toBe(stopped.value === 'watched' ? 'watching' : stopped.value);
    }
  });

  test('a lesson that has been changed meanwhile is begun again', () => {
    const { progress } = play(allRight).context;
    const shorter = { ...lesson, steps: lesson.steps.slice(0, 3) };
    expect(play([], { lesson: shorter, progress }).context.progress.step).toBe(0);
    const renamed = { ...lesson, id: 'another' };
    expect(play([], { lesson: renamed, progress }).context.progress.marks).toEqual([]);
  });

  test('beginning again forgets everything', () => {
    const again = play([...allRight, { type: 'restart' }]);
    expect(again.value).toBe('telling');
    expect(again.context.progress).toEqual({
      lesson: lesson.id,
      step: 0,
      answers: {},
      hints: {},
      tried: {},
      marks: [],
    });
  });
});

test('whatever is pressed, the step stays inside the lesson and no step is marked twice', () => {
  const events: readonly LessonEvent[] = [
    next,
    { type: 'back' },
    { type: 'hint' },
    run,
    ran,
    choose(0),
    choose(1),
    choose(2),
    choose(3),
  ];
  let seed = 7;
  for (let round = 0; round < 60; round += 1) {
    let [snapshot] = initialTransition(lessonMachine, { lesson });
    for (let press = 0; press < 80; press += 1) {
      seed = (seed * 16807) % 2147483647;
      [snapshot] = transition(lessonMachine, snapshot, events[seed % events.length] ?? next);
      const { step, marks } = snapshot.context.progress;
      expect(step >= 0 && step <= lesson.steps.length).toBe(true);
      expect(new Set(marks.map((one) => one.step)).size).toBe(marks.length);
      expect(snapshot.value).not.toBe('arriving');
      expect(hintsLeft(snapshot.context)).toBeGreaterThanOrEqual(0);
    }
  }
});

test('the marks say what was chosen and why it is right or not', () => {
  const result = mark(lesson, play([next, choose(0), run]).context.progress);
  expect(result.told).toEqual([
    expect.objectContaining({ step: 1, right: false, chosen: expect.stringMatching(/^It opens at once/) }),
  ]);
  expect(result.told[0]?.because).toContain('home');
});
