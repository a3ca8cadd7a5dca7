import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compile, printDiagnostics, readInstallation } from '../../src/installation/index.ts';
import { bakeryText } from './places.ts';

/** Reads whatever it is given; an answer is an installation that compiles, or faults that can be printed. */
function answer(text: string): string {
  const reading = readInstallation(text, 'hostile.yaml');
  if (reading.ok) return `${compile(reading.installation).network.branches.length} branches`;
  expect(reading.diagnostics.length).toBeGreaterThan(0);
  const lines = text.split('\n').length;
  for (const { line, column, length } of reading.diagnostics) {
    expect(line).toBeGreaterThan(0);
    expect(line).toBeLessThanOrEqual(lines + 1);
    expect(column).toBeGreaterThan(0);
    expect(length).toBeGreaterThan(0);
  }
  return printDiagnostics(reading.diagnostics, text);
}

const nestedAliases = (width: number): string =>
  [
    'a0: &a0 [x]',
    ...Array.from({ length: 30 }, (_, at) => `a${at + 1}: &a${at + 1} [${Array(width).fill(`*a${at}`).join(', ')}]`),
  ].join('\n');

describe('a text made to harm is answered with what is wrong with it', () => {
  // Deep towers once ended the whole process inside the YAML library, before anything could be caught.
  test.each([
    ['a tower of brackets', '['.repeat(60_000), 'too-deep'],
    ['a closed tower of brackets', '['.repeat(2000) + ']'.repeat(2000), 'too-deep'],
    ['a tower of braces', '{a: '.repeat(15_000), 'too-deep'],
    ['a staircase of dashes', '- '.repeat(30_000), 'too-deep'],
    ['a staircase of questions', '? '.repeat(30_000), 'too-deep'],
    ['a staircase of keys', 'a: '.repeat(20_000), 'too-deep'],
    ['a staircase of lines', Array.from({ length: 300 }, (_, at) => `${' '.repeat(at)}a:`).join('\n'), 'too-deep'],
    ['a million aliases', `a: &a 1\nb: [${Array(1e6).fill('*a').join(',')}]`, 'too-large'],
    ['twenty thousand aliases', `a: &a 1\nb: [${Array(20_000).fill('*a').join(',')}]`, 'too-many-aliases'],
    ['aliases of aliases, ten wide', nestedAliases(10), 'too-many-aliases'],
    ['aliases of aliases, three wide', nestedAliases(3), 'too-many-aliases'],
    ['an alias of what holds it', 'parts: &a { x: *a }', 'missing-key'],
    ['brackets that only close', ']'.repeat(20_000), 'yaml-syntax'],
    ['commas alone', `[${','.repeat(20_000)}`, 'yaml-syntax'],
    ['quotes alone', '"'.repeat(20_000), 'yaml-syntax'],
    ['marks alone', '! '.repeat(20_000), 'yaml-syntax'],
    ['one name ten thousand times', 'k: 1\n'.repeat(10_000), 'duplicate-name'],
    ['seven thousand names', Array.from({ length: 7000 }, (_, at) => `k${at}: 1`).join('\n'), 'unknown-key'],
    ['a megabyte of brackets', ']'.repeat(1e6), 'too-large'],
    ['a megabyte of backslashes', `"${'\\q'.repeat(4e5)}"`, 'too-large'],
    [
      'four thousand joins of what is not there',
      `${bakeryText.split('\njoins:')[0] ?? ''}\njoins:\n${Array.from({ length: 4000 }, (_, at) => `  - [nopart${at}.a, zopart${at}.b]`).join('\n')}`,
      'unknown-name',
    ],
    ['digits without end', `place: ${'9'.repeat(60_000)}`, 'not-finite'],
    ['a name without end', `${'a'.repeat(60_000)}: 1`, 'too-deep'],
    ['names of what every object has', 'parts: { constructor: 5, toString: 5, __proto__: 5 }', 'wrong-type'],
    ['a lone surrogate', 'place: \ud800', 'missing-key'],
    ['nothing but zeros', '\u0000'.repeat(1000), 'wrong-type'],
  ])('%s', (_, text, code) => {
    const start = performance.now();
    const printed = answer(text);
    expect(printed).toContain(code);
    // Seconds on a busy machine; a text that is not refused in time takes minutes, or all memory.
    expect(performance.now() - start).toBeLessThan(10_000);
  });
});

test('the largest and smallest numbers a file may hold still compile to finite values', () => {
  for (const ohms of ['0', '1e-300', '1e10'])
    expect(
      answer(
        `place: x\nregion: iec\nparts:\n  s: { kind: source, emf_V: 1e-300, resistance_ohm: ${ohms} }\njoins:\n  - { between: [s.plus, s.minus], resistance_ohm: ${ohms} }`,
      ),
    ).toMatch(/branches$/);
});

test('any text at all is answered', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
      answer(text);
    }),
    { numRuns: 200 },
  );
});

const yamlish = fc.constantFrom(
  '{',
  '}',
  '[',
  ']',
  ': ',
  ', ',
  '- ',
  '? ',
  '\n',
  '  ',
  '"',
  "'",
  '|',
  '>',
  '#',
  '&a ',
  '*a',
  '!t ',
  '%',
  '@',
  '\t',
  'place',
  'region',
  'iec',
  'parts',
  'kind',
  'source',
  'emf_V',
  'joins',
  'conditions',
  'cable',
  'cores',
  'rod',
  'no',
  '1e999',
  '.nan',
  '-1',
  '0x1f',
  'null',
  '~',
  'true',
  's.plus',
  's.minus',
  'earth',
  'between',
  '---\n',
  '...\n',
  '<<: ',
);

test('any pile of YAML marks is answered', () => {
  fc.assert(
    fc.property(fc.array(yamlish, { maxLength: 60 }), (marks) => {
      answer(marks.join(''));
    }),
    { numRuns: 600 },
  );
});

test('the bakery with any piece cut out, doubled or overwritten is answered', () => {
  const place = fc.nat(bakeryText.length - 1);
  fc.assert(
    fc.property(
      place,
      fc.nat(40),
      fc.oneof(fc.constant(''), yamlish, fc.string({ maxLength: 5 })),
      (at, length, put) => {
        answer(bakeryText.slice(0, at) + put + bakeryText.slice(at + length));
      },
    ),
    { numRuns: 80 },
  );
});

const anyValue = fc.letrec<{ value: unknown }>((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    fc.constantFrom<unknown>(
      null,
      true,
      5,
      -1,
      1e308,
      Infinity,
      NaN,
      '',
      'earth',
      'no',
      '12 AWG Cu',
      's.plus',
      'cable',
    ),
    fc.array(tie('value'), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom('kind', 'between', 'cores', 'length_m', 'at', 'a b', '__proto__'), tie('value'), {
      maxKeys: 4,
    }),
  ),
})).value;

test('the bakery with any value in place of any other is answered', () => {
  const lines = bakeryText.split('\n');
  fc.assert(
    fc.property(fc.nat(lines.length - 1), anyValue, (at, value) => {
      const written = JSON.stringify(value, (_, inner: unknown) => (inner === Infinity ? 1e308 : inner)) ?? 'null';
      const changed = lines.map((line, index) => (index === at ? line.replace(/: .*$/, `: ${written}`) : line));
      answer(changed.join('\n'));
    }),
    { numRuns: 80 },
  );
});
