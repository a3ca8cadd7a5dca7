import { expect, test } from 'vitest';
import { canLetGo, dalzielFibrillation_A, zone } from '../../src/body/index.ts';

test('a hand lets go at 5 mA and is held above', () => {
  expect(canLetGo(0)).toBe(true);
  expect(canLetGo(0.005)).toBe(true);
  expect(canLetGo(0.00501)).toBe(false);
});

test('Dalziel says nothing outside 8 ms to 5 s', () => {
  expect([0.0079, 5.1, NaN].map((time_s) => dalzielFibrillation_A(time_s))).toEqual([null, null, null]);
  expect(dalzielFibrillation_A(0.008)).not.toBeNull();
  expect(dalzielFibrillation_A(5)).not.toBeNull();
});

test('at 5 s Dalziel’s limit is already a fibrillation zone of IEC 60479-1, so the two are not interchangeable', () => {
  expect(zone(dalzielFibrillation_A(5) ?? NaN, 5)).toBe('AC-4.2');
});
