import { expect, test } from 'vitest';
import type { Sounding } from '../../src/depiction/index.ts';
import { newlyHeard } from '../../src/sound/heard.ts';

const sounds: readonly Sounding[] = [
  { id: '1 contact', kind: 'contact', time_s: 0, caption: 'a spark cracks' },
  { id: '2 breaker', kind: 'breaker', time_s: 0.01, caption: 'the breaker snaps open' },
];
const moment = (time_s: number) => ({ sounds, time_s });

test('a sound is heard once, when its moment is passed', () => {
  const before = newlyHeard(null, moment(-0.5)).heard;
  const struck = newlyHeard(before, moment(0.001));
  expect(struck.sound?.kind).toBe('contact');
  expect(newlyHeard(struck.heard, moment(0.002)).sound).toBeUndefined();
  expect(newlyHeard(struck.heard, moment(0.01)).sound?.kind).toBe('breaker');
});

test('a jump over several sounds lets the last be heard, a jump back none', () => {
  const before = newlyHeard(null, moment(-0.5)).heard;
  const jumped = newlyHeard(before, moment(5));
  expect(jumped.sound?.kind).toBe('breaker');
  expect(newlyHeard(jumped.heard, moment(-0.5)).sound).toBeUndefined();
});

test('opening a picture is silent', () => {
  expect(newlyHeard(null, moment(5)).sound).toBeUndefined();
});

test('another run begins anew', () => {
  const { heard } = newlyHeard(null, moment(5));
  expect(newlyHeard(heard, { sounds: sounds.slice(0, 1), time_s: 5 }).sound?.kind).toBe('contact');
});
