import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { LESSON_NAMES } from '../../src/app/lessonNames.ts';
import { LESSONS } from '../../src/app/lessons.ts';

test('links know exactly the lessons that come with the page, and those are all there are', () => {
  expect(LESSONS.map(({ id }) => id)).toEqual(LESSON_NAMES);
  const folders = readdirSync(new URL('../../lessons', import.meta.url)).filter((name) => name !== 'places');
  expect(LESSON_NAMES.toSorted()).toEqual(folders.toSorted());
});
