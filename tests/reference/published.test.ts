import { describe, expect, test } from 'vitest';
import { departure } from './published.ts';
import { subjects } from './subjects.ts';

describe.each(subjects)('$subject', ({ rows }) => {
  test.each(rows)('$what ($source)', (row) => {
    expect(departure(row), `${row.computed()} against ${row.printed} ${row.unit}`).toBeLessThanOrEqual(row.within);
  });
});

test('no figure is printed twice and each says where it stands and why its tolerance is enough', () => {
  const all = subjects.flatMap(({ rows }) => rows);
  expect(new Set(all.map(({ what, source }) => `${what} ${source}`)).size).toBe(all.length);
  for (const { what, source, because, within } of all) {
    expect(source, what).toMatch(/\w{3}/);
    expect(because, what).toMatch(/\w{3}/);
    expect(within, what).toBeLessThanOrEqual(0.15);
  }
});
