import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { BAKERY, set, terminal } from './terminal.ts';

const FAULT = ['run', BAKERY, ...set('line touches the case')];

test('run tells the outcome, why, the story, the ledger, the remedies and the cautions', () => {
  const { code, out, err } = terminal([
    ...FAULT,
    ...set('protective conductor to its own rod', 'baker touches=the case'),
  ]);
  expect(code).toBe(0);
  expect(err).toBe('');
  const plain = out.replaceAll('\u00a0', ' ');
  const blocks = plain.split('\n\n').map((block) => block.split('\n')[0]);
  expect(blocks).toEqual([
    'The bakery',
    expect.stringMatching(/^Nothing opens/),
    'The story, in order of time',
    expect.stringMatching(/^Where 4\.\d+ A goes home$/),
    'What would have made it safe',
    expect.stringMatching(/^Before anybody acts on this/),
  ]);
  expect(plain).toContain('Soil, from the mixer’s own ground rod');
  expect(plain).toContain('Isolate, lock off and prove dead');
  expect(plain).not.toMatch(/undefined|NaN|∞|\{\{| {3,}$/m);
});

test.each([
  ['with everything right', []],
  ['with a rod', ['protective conductor to its own rod']],
  ['with the service neutral open', ['service neutral open']],
  ['through 100 Ω', ['line touches the case=100 ohm']],
])('the column of the ledger adds up %s', (_, more) => {
  const { out } = terminal([...FAULT, ...set(...more, 'baker touches=the case', 'baker wears=bare feet')]);
  const lines = out.split('\n');
  const heading = lines.findIndex((line) => line.startsWith('Where '));
  const rule = lines.findIndex((line) => line.includes('───'));
  const amperes = (line = '') => Number(/ ([\d.]+) A$/.exec(line)?.[1] ?? 0);
  const rows = lines.slice(heading + 1, rule).map(amperes);
  const total = amperes(lines[rule + 1]);
  const decimals = /\.(\d+) A$/.exec(lines[rule + 1] ?? '')?.[1]?.length ?? 0;
  expect(total).toBeGreaterThan(0);
  const sum = rows.reduce((whole, row) => whole + row, 0);
  // Each row is rounded to the last place by itself.
  expect(Math.abs(sum - total)).toBeLessThanOrEqual((rows.length / 2 + 0.5) * 10 ** -decimals);
});

test('the vocabulary is that of the file unless another is asked for', () => {
  expect(terminal(FAULT).out).toContain('third wire');
  const iec = terminal([...FAULT, '--vocabulary', 'iec']).out;
  expect(iec).toContain('protective conductor');
  expect(iec).not.toContain('third wire');
});

test('a slow breaker opens later than a fast one', () => {
  const opened = (tolerance: string) => {
    const { out } = terminal([
      'run',
      BAKERY,
      ...set('line touches the case=1 ohm'),
      '--tolerance',
      tolerance,
      '--json',
    ]);
    return JSON.parse(out).intervals.find(
      (interval: { because: { kind: string } }) => interval.because.kind === 'device-operated',
    ).start_s;
  };
  expect(opened('fast')).toBeLessThan(opened('middle'));
  expect(opened('middle')).toBeLessThan(opened('slow'));
});

test('what happens after --until is not told', () => {
  const soon = JSON.parse(
    terminal(['run', BAKERY, ...set('line touches the case=1 ohm'), '--until', '1', '--json']).out,
  );
  expect(soon.until_s).toBe(1);
  expect(soon.devices.every((device: { operated: unknown }) => device.operated === null)).toBe(true);
});

test('lines fit the terminal', () => {
  for (const columns of [60, 80, 110]) {
    const { out } = terminal([...FAULT, ...set('loose joint', 'baker touches=the case')], {}, columns);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(columns);
  }
});

test.each([
  [[], 0, /ohmward run FILE/],
  [['--help'], 0, /Exit codes/],
  [['run', BAKERY, '--help'], 0, /Exit codes/],
])('%j prints the help', (args, code, text) => {
  const ended = terminal(args);
  expect(ended.code).toBe(code);
  expect(ended.out).toMatch(text);
});

test.each([
  [['frob'], /no command "frob"/],
  [['run'], /exactly one file/],
  [['run', BAKERY, BAKERY], /exactly one file/],
  [['run', BAKERY, '--frob'], /--frob/],
  [['run', 'no-such-file.yaml'], /no-such-file\.yaml cannot be read/],
  [['run', BAKERY, '--set', 'loose jont'], /write instead: --set "loose joint"/],
  [['run', BAKERY, '--set', 'loose joint=perhaps'], /has no option "perhaps"/],
  [['run', BAKERY, '--tolerance', 'sloppy'], /fast, middle, slow/],
  [['run', BAKERY, '--vocabulary', 'french'], /north-america, iec/],
  [['run', BAKERY, '--until=-3'], /above zero/],
  [['run', BAKERY, '--until', 'soon'], /above zero/],
  [['check'], /at least one file/],
  [['check', BAKERY, '--json'], /--json belongs to/],
  [['schema', 'moon'], /installation, lesson, result/],
  [['--json'], /belongs to|what is to be done/],
])('%j is wrong use: exit code 2, the reason and a hint', (args, reason) => {
  const { code, out, err } = terminal(args);
  expect(code).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(reason);
  expect(err).toContain('ohmward --help');
});

test('the program itself runs in Node, without a browser, and hands its exit code on', () => {
  const node = (...args: readonly string[]) =>
    spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...args], { encoding: 'utf8' });
  const fine = node(...FAULT);
  expect(fine.stderr).toBe('');
  expect(fine.status).toBe(0);
  expect(fine.stdout).toContain('opens in');
  expect(node('run', 'package.json').status).toBe(1);
  expect(node('frob').status).toBe(2);
});

test.each([
  [['verdicts', BAKERY, '--json'], 'verdicts'],
  [['repairs', BAKERY, ...set('line touches the case', 'loose joint'), '--json'], 'sets'],
  [['sweep', BAKERY, '--value', 'mixer run.length_m', '--from', '5', '--to', '9', '--steps', '3', '--json'], 'points'],
  [['population', BAKERY, ...set('line touches the case'), '--people', '1000', '--json'], 'outcome'],
])('%j answers as data', (args, key) => {
  const { code, out, err } = terminal(args);
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toHaveProperty(key);
});

test.each([80, 110])('verdicts, repairs, a sweep and a population are told in whole words at %d columns', (columns) => {
  for (const args of [
    ['verdicts', BAKERY],
    ['repairs', BAKERY, ...set('line touches the case', 'loose joint', 'breaker oversized')],
    ['sweep', BAKERY, '--value', 'mixer run.length_m', '--from', '5', '--to', '9', '--steps', '3'],
    ['population', BAKERY, ...set('line touches the case'), '--people', '1000'],
  ]) {
    const { code, out } = terminal(args, {}, columns);
    expect(code).toBe(0);
    expect(out).not.toMatch(/undefined|NaN|∞|[{}]/);
  }
});

test.each([
  [['sweep', BAKERY], /needs one --value/],
  [['sweep', BAKERY, '--value', 'mixer run.length_m', '--from', '5'], /needs its own --from and --to/],
  [['sweep', BAKERY, '--value', 'nothing.here', '--from', '5', '--to', '6'], /leads to no number/],
  [['sweep', BAKERY, '--value', 'mixer run.length_m', '--from=-5', '--to', '6'], /zero or more/],
  [['sweep', BAKERY, '--value', 'x', '--from', '1', '--to', '2', '--steps', '1.5'], /whole number/],
  [['population', BAKERY], /nothing strikes/],
  [['population', BAKERY, '--people', '0'], /whole number from 1/],
  [['verdicts', BAKERY, '--until', '3'], /--until belongs to: ohmward run/],
])('%j is refused with the reason', (args, reason) => {
  const { code, err } = terminal(args);
  expect(code).toBe(2);
  expect(err).toMatch(reason);
});
