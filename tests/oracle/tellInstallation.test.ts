import { expect, test } from 'vitest';
import { tellInstallation } from './tellInstallation.ts';

// Without end: `npm run soak -- --only tellings`. 3000201 once wanted an aluminium cable of 6 mm², which nobody makes.
test('whatever is built, all is said, judged and repaired without a gap', { timeout: 60_000 }, () => {
  const seeds = [3_000_201, ...Array.from({ length: 30 }, (_, k) => 20_000 + k)];
  expect(seeds.flatMap(tellInstallation)).toEqual([]);
});
