import { expect, test } from 'vitest';
import { printDiagnostics, type Diagnostic } from '../../src/installation/index.ts';
import { isLesson, placeNamed } from '../../src/lesson/index.ts';
import { bakeryText } from '../installation/places.ts';
import { LESSONS, lessonNamed, readingOf, written } from './lessons.ts';

const SMALL = `lesson: A small one
removes: Something wrong.
afterwards: say what is right.
minutes: 2
place: bakery
given: [line touches the case]
steps:
  - { kind: show, title: Look, text: look.md, look: mixer }
  - kind: predict
    title: What opens?
    ask: What opens?
    answers:
      - { say: Nothing, claim: { device: mixer breaker, operates: never }, because: 'No.' }
      - { say: The breaker, right: true, claim: { device: mixer breaker, operates: { within_s: 1 } }, because: 'Yes.' }
  - { kind: run, title: Run, until_s: 10, watch: mixer breaker }
proves:
  - { touching: mixer.case, above_V: 25 }
`;
const PROSE = { 'look.md': 'The mixer stands at {{ volts of mixer.case }}.' };

function wrong(
  change: (text: string) => string,
  prose: Readonly<Record<string, string>> = PROSE,
): readonly Diagnostic[] {
  const text = change(SMALL);
  if (text === SMALL && prose === PROSE) throw new Error('nothing was changed');
  const reading = readingOf(text, prose);
  if (reading.ok) throw new Error('it was read without complaint');
  return reading.diagnostics;
}

test.each(LESSONS)('%s is read without complaint', (id) => {
  expect(lessonNamed(id).id).toBe(id);
});

test('a small lesson is read as it is written', () => {
  const reading = readingOf(SMALL, PROSE);
  if (!reading.ok) throw new Error(printDiagnostics(reading.diagnostics, SMALL));
  expect(reading.lesson.steps.map(({ kind }) => kind)).toEqual(['show', 'predict', 'run']);
  expect(reading.lesson.steps[0]).toMatchObject({
    given: ['line touches the case'],
    text: PROSE['look.md'],
    look: 'mixer',
  });
  expect(JSON.parse(JSON.stringify(reading.lesson))).toEqual(reading.lesson);
});

const faults: readonly (readonly [string, (text: string) => string, Partial<Diagnostic>])[] = [
  [
    'a kind of step that does not exist',
    (text) => text.replace('kind: run', 'kind: measure'),
    { code: 'unknown-kind', line: 15, instead: expect.stringMatching(/^kind: /) },
  ],
  [
    'a condition the place does not have',
    (text) => text.replace('[line touches', '[line tuoches'),
    { code: 'unknown-name', line: 6, column: 9, instead: 'line touches the case' },
  ],
  [
    'an option a condition does not have',
    (text) => text.replace('the case]', 'the case=sold]'),
    { code: 'unknown-name', line: 6, instead: 'line touches the case=solid' },
  ],
  [
    'a file that is not in the folder',
    (text) => text.replace('look.md', 'lok.md'),
    { code: 'unknown-name', line: 8, instead: 'look.md' },
  ],
  [
    'a part that does not exist',
    (text) => text.replace('look: mixer', 'look: mixr'),
    { code: 'unknown-name', line: 8, instead: 'mixer' },
  ],
  [
    'a device that does not exist',
    (text) => text.replace('watch: mixer breaker', 'watch: mixer braker'),
    { code: 'unknown-name', line: 15, instead: 'mixer breaker' },
  ],
  [
    'a claim on a device that does not exist',
    (text) => text.replace('device: mixer breaker, operates: never', 'device: mixer, operates: never'),
    { code: 'unknown-name', line: 13 },
  ],
  [
    'a terminal that does not exist',
    (text) => text.replace('mixer.case', 'mixer.cas'),
    { code: 'unknown-name', line: 17, instead: 'mixer.case' },
  ],
  [
    'a claim without its measure',
    (text) => text.replace(', above_V: 25', ''),
    { code: 'missing-key', line: 17, instead: '{ touching: mixer.case, above_V: 50 }' },
  ],
  [
    'a claim with the measure of another',
    (text) => text.replace('above_V: 25', 'above_A: 25'),
    { code: 'missing-key', line: 17 },
  ],
  [
    'two subjects in one claim',
    (text) => text.replace('{ touching', '{ person: baker, touching'),
    { code: 'missing-key', line: 17 },
  ],
  [
    'a measure without its unit',
    (text) => text.replace('above_V', 'above'),
    { code: 'unit-missing', line: 17, instead: expect.stringMatching(/^above_/) },
  ],
  [
    'two right answers',
    (text) => text.replace('say: Nothing,', 'say: Nothing, right: true,'),
    { code: 'wrong-target', line: 12 },
  ],
  [
    'no right answer',
    (text) => text.replace('right: true, ', ''),
    { code: 'wrong-target', line: 12, message: expect.stringContaining('0 right') },
  ],
  [
    'a prediction that nothing answers',
    (text) => text.replace(/ {2}- \{ kind: run.*\n/, ''),
    { code: 'wrong-target', line: 9 },
  ],
  [
    'a key nobody knows',
    (text) => text.replace('minutes: 2', 'minuts: 2'),
    { code: 'unknown-key', line: 4, instead: 'minutes: 2' },
  ],
  ['a number that is none', (text) => text.replace('until_s: 10', 'until_s: 1e999'), { code: 'not-finite', line: 15 }],
  ['a negative time', (text) => text.replace('until_s: 10', 'until_s: -10'), { code: 'out-of-range', line: 15 }],
  [
    'another place than the one it is read with',
    (text) => text.replace('place: bakery', 'place: joinery'),
    { code: 'unknown-name', line: 5, instead: 'place: bakery' },
  ],
];

test.each(faults)('%s is refused where it stands, with what to write instead', (_, change, expected) => {
  const [first] = wrong(change);
  expect(first).toMatchObject({ file: 'lessons/test/lesson.yaml', ...expected });
  expect(first?.instead).not.toBe('');
});

test('text that is not YAML is said to be none', () => {
  const diagnostics = wrong((text) => text.replace('given: [', 'given: [['));
  expect(diagnostics.map(({ code }) => code)).toContain('yaml-syntax');
});

test('all faults of a file are told at once, and printed with a caret', () => {
  const text = SMALL.replace('tuoches', '').replace('look: mixer', 'look: mixr').replace('mixer.case', 'mixer.cas');
  const reading = readingOf(text, PROSE);
  expect(reading.ok ? [] : reading.diagnostics.map(({ line }) => line)).toEqual([8, 17]);
  expect(reading.ok ? '' : printDiagnostics(reading.diagnostics, text)).toMatch(/\^\^\^\^/);
});

test.each([
  ['asks nothing', '{{ volts mixer.case }}', '{{ amperes of mixer breaker }}'],
  ['asks a thing that does not exist', '{{ voltage of mixer.case }}', '{{ amperes of mixer breaker }}'],
  ['asks of a terminal that does not exist', '{{ volts of mixer.caes }}', '{{ volts of mixer.case }}'],
  ['asks under a condition that does not exist', '{{ volts of mixer.case | loose jont }}', 'loose joint'],
  ['uses a trade word that does not exist', '{{ word of bondd }}', '{{ word of bond }}'],
])('prose that %s is refused in its own file', (_, asking, instead) => {
  const diagnostics = wrong((text) => text, { 'look.md': `One line.\nTwo: ${asking} and on.` });
  expect(diagnostics).toEqual([
    expect.objectContaining({ file: 'lessons/test/look.md', line: 2, column: 6, length: asking.length, instead }),
  ]);
});

test('a million nested aliases and a megabyte of text are answered, not suffered', () => {
  const bomb = `a0: &a0 [x]\n${Array.from({ length: 40 }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}, *a${i}]`).join('\n')}`;
  for (const text of [bomb, `lesson: ${'x'.repeat(1e6)}`, '[['.repeat(1e5), '']) expect(readingOf(text).ok).toBe(false);
});

test('a lesson is told from a place, and says where it is set', () => {
  const { text } = written('a-rod-is-not-a-wire');
  expect(isLesson(text)).toBe(true);
  expect(placeNamed(text)).toBe('bakery');
  expect(isLesson(bakeryText)).toBe(false);
  expect(placeNamed('lesson: [')).toBeUndefined();
});
