import { expect, test } from 'vitest';
import { campaign } from './anyCase.ts';
import { bakery } from './bakery.ts';

const CASES = 100_000;

/** Fixed, so that a failure comes back; `npm run soak` draws others. */
const FIRST = 20_251_125;

test(
  '1e5 random conditions and values: Kirchhoff and power within 1e-9 of the largest, nothing thrown, no NaN',
  {
    timeout: 240_000,
  },
  () => {
    const wrong = campaign(bakery);
    const found: string[] = [];
    for (let seed = FIRST; seed < FIRST + CASES && found.length < 10; seed += 1) found.push(...wrong(seed));
    expect(found).toEqual([]);
  },
);
