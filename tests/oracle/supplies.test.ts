import { expect, test } from 'vitest';
import { supplies } from './supplies.ts';

// A thousand and more: `npm run soak -- --only supplies`.
test('ngspice finds the same currents in 100 random installations over all supplies', { timeout: 30_000 }, () => {
  const { compared, wrong } = supplies(100, 3);
  expect(wrong).toEqual([]);
  expect(compared).toBeGreaterThan(500);
});
