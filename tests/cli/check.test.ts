import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ohmward } from '../../src/cli/ohmward.ts';
import { bakeryText } from '../installation/places.ts';
import { LESSONS, written } from '../lesson/lessons.ts';
import { BAKERY, terminal } from './terminal.ts';

const shipped = LESSONS.map((id) => `lessons/${id}/lesson.yaml`);

test('everything that ships is right, and every claim is proven', () => {
  const { code, out, err } = terminal(['check', BAKERY, ...shipped]);
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(out).toMatch(/bakery\.yaml: The bakery, \d+ parts, \d+ conditions: fine/);
  expect(out).toMatch(/A rod is not a wire: (\d+) of \1 claims proven/);
});

/** The shipped lesson with its text changed, in a folder of its own beside a place. */
function lessonWith(change: (text: string) => string, place = bakeryText) {
  const { text, prose } = written('a-rod-is-not-a-wire');
  if (change(text) === text && place === bakeryText) throw new Error('nothing was changed');
  return {
    'x/mine/lesson.yaml': change(text),
    'x/mine/../places/bakery.yaml': place,
    ...Object.fromEntries(Object.entries(prose).map(([name, words]) => [`x/mine/${name}`, words])),
  };
}

test('a lesson that teaches a wrong result is not proven: exit code 1, the claim and what the solver finds', () => {
  const files = lessonWith((text) => text.replace('through: own rod, below_A: 5', 'through: own rod, below_A: 4'));
  const { code, out, err } = terminal(['check', 'x/mine/lesson.yaml'], files);
  expect(code).toBe(1);
  expect(out).toMatch(/16 of 17 claims proven/);
  expect(err.replaceAll('\u00a0', ' ')).toMatch(/proves\.1: not proven: own rod below 4 A .*the solver finds 4\.2\d A/);
});

test('a lesson with wrong names is printed with file, line, column, caret and what to write instead', () => {
  const files = lessonWith((text) => text.replace('watch: baker', 'watch: bakr').replace('the-hand.md', 'the-hant.md'));
  const { code, err } = terminal(['check', 'x/mine/lesson.yaml'], files);
  expect(code).toBe(1);
  expect(err).toMatch(/x\/mine\/lesson\.yaml:\d+:\d+ {2}unknown-name/);
  expect(err).toMatch(/\^{4}/);
  expect(err).toContain('write instead: baker');
  expect(err).toContain('write instead: the-hand.md');
});

test('wrong prose is printed under its own file', () => {
  const files = { ...lessonWith((text) => `${text}\n`), 'x/mine/the-rod.md': 'The {{ ohms of won rod }}.' };
  const { code, err } = terminal(['check', 'x/mine/lesson.yaml'], files);
  expect(code).toBe(1);
  expect(err).toMatch(/x\/mine\/the-rod\.md:1:5/);
  expect(err).toContain('write instead: {{ ohms of own rod }}');
});

test('a lesson whose place is not there, or is wrong, says so', () => {
  const nowhere = lessonWith((text) => text.replace('place: bakery', 'place: joinery'));
  expect(terminal(['check', 'x/mine/lesson.yaml'], nowhere)).toMatchObject({
    code: 1,
    err: expect.stringContaining('joinery.yaml'),
  });
  const broken = lessonWith((text) => text, bakeryText.replace('length_m: 30', 'length_m: -30'));
  expect(terminal(['check', 'x/mine/lesson.yaml'], broken)).toMatchObject({
    code: 1,
    err: expect.stringContaining('bakery.yaml'),
  });
});

test('one wrong file among good ones makes the whole check fail, and the good ones are still told', () => {
  const files = { 'x/bad.yaml': bakeryText.replace('length_m: 30', 'length_m: -30') };
  const { code, out, err } = terminal(['check', 'x/bad.yaml', BAKERY], files);
  expect(code).toBe(1);
  expect(out).toContain(`${BAKERY}: The bakery`);
  expect(err).toMatch(/x\/bad\.yaml:\d+:\d+ {2}out-of-range/);
});

test('running a wrong file prints what is wrong with it and ends with 1', () => {
  const files = { 'x/bad.yaml': bakeryText.replace('kind: meter', 'kind: metre') };
  const { code, out, err } = terminal(['run', 'x/bad.yaml', '--json'], files);
  expect(code).toBe(1);
  expect(out).toBe('');
  expect(err).toContain('write instead: kind: meter');
});

test('a file that cannot be read does not stop the check of the others', () => {
  const files = { 'x/bad.yaml': bakeryText.replace('length_m: 30', 'length_m: -30') };
  const { code, out, err } = terminal(['check', 'x/nowhere.yaml', 'x/bad.yaml', BAKERY], files);
  expect(code).toBe(2);
  expect(err).toContain('x/nowhere.yaml cannot be read');
  expect(err).toMatch(/x\/bad\.yaml:\d+:\d+ {2}out-of-range/);
  expect(out).toContain(`${BAKERY}: The bakery`);
});

const textbook = (join = '') =>
  `place: A textbook\nregion: iec\nparts:\n  supply: { kind: source, emf_V: 100 }\n  load: { kind: impedance, resistance_ohm: 10 }\njoins:\n  - [supply.plus, load.a]\n  - [supply.minus, load.b]\n${join}`;

test('a source that nothing joins to earth is fine, with a warning of what its volts to earth mean', () => {
  const { code, out } = terminal(['check', 'x/t.yaml'], { 'x/t.yaml': textbook() });
  expect(code).toBe(0);
  expect(out).toMatch(/warning: .* volts to earth mean little; write in joins: \[supply\.minus, earth\]/);
  const joined = terminal(['check', 'x/t.yaml', BAKERY], { 'x/t.yaml': textbook('  - [supply.minus, earth]\n') });
  expect(joined.code).toBe(0);
  expect(joined.out).not.toContain('warning');
});

test('the help tells what every join adds, and how to set another', () => {
  const { out } = terminal(['--help']);
  expect(out).toContain('joint of 0.5 milliohm');
  const join = /- \{ between: .*\}/.exec(out)?.[0] ?? '';
  const parts = '  panel: { kind: service-panel }\n  service rod: { kind: rod, resistance_ohm: 25 }\njoins:';
  const text = textbook(`  ${join}\n`).replace('joins:', parts);
  expect(terminal(['check', 'x/t.yaml'], { 'x/t.yaml': text })).toMatchObject({ code: 0, err: '' });
});

test('what the engine refuses is one line that says why, exit code 1, and no trace', () => {
  let err = '';
  const code = ohmward(['run', BAKERY], {
    read: (file) => readFileSync(file, 'utf8'),
    list: () => [],
    print: () => {
      throw new RangeError('solve: branch 3 carries no number');
    },
    complain: (text) => (err += text),
    columns: 100,
  });
  expect(code).toBe(1);
  expect(err).toBe('error: solve: branch 3 carries no number');
});
