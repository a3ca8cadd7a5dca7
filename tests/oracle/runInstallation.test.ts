import { expect, test } from 'vitest';
import { runInstallation } from './runInstallation.ts';

// A million: `npm run soak -- --only installations --minutes 120`.
test(
  'two thousand installations by chance, half of them silly, run by the laws or are refused by a name',
  { timeout: 120_000 },
  () => {
    const came = Array.from({ length: 2000 }, (_, k) => runInstallation(10_000 + k));
    expect(came.flatMap(({ wrong }) => wrong)).toEqual([]);
    expect(came.filter(({ refused }) => refused).length).toBeLessThan(20);
  },
);
