import { expect, test } from 'vitest';
import type { Progress } from '../../src/lesson/index.ts';
import { openRecords } from '../../src/records/index.ts';

const progress: Progress = { lesson: 'a-rod', step: 2, answers: { '1': 0 }, hints: {}, tried: {}, marks: [] };

// Node has no IndexedDB: what a browser does that refuses to keep anything. Keeping itself is tested in the browser.
test('where nothing can be kept, progress lasts as long as the page, and that is said', async () => {
  const records = openRecords(() => 1764086400000);
  await records.save(progress);
  expect(records.lasting()).toBe(false);
  expect(await records.load('a-rod')).toEqual({ progress, at: 1764086400000 });
  expect(await records.all()).toHaveLength(1);
  await records.clear('a-rod');
  expect(await records.load('a-rod')).toBeUndefined();
});
