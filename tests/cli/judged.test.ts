import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { BAKERY, set, terminal } from './terminal.ts';

const FLAT = 'lessons/places/flat.yaml';
const OPEN = set('line touches the case', 'protective conductor open');

/** What a command prints under its own schema. */
const ASKED: readonly (readonly [what: string, args: readonly string[]])[] = [
  ['verdicts', [BAKERY]],
  ['verdicts', [BAKERY, ...OPEN, '--vocabulary', 'iec']],
  ['verdicts', [FLAT]],
  ['verdicts', ['tests/reference/textbook/it-second-fault.yaml']],
  ['repairs', [BAKERY]],
  ['repairs', [BAKERY, ...OPEN]],
  ['sweep', [BAKERY, ...OPEN, '--value', 'mixer run.length_m', '--from', '5', '--to', '50', '--steps', '3']],
  ['population', [BAKERY, ...OPEN, '--people', '1000']],
  ['population', [BAKERY, ...set('line touches the case'), '--people', '1000']],
];

describe.each(ASKED)('what %s prints of %s', (what, args) => {
  const { code, out } = terminal([what, ...args, '--json']);
  const printed: Readonly<Record<string, unknown>> = JSON.parse(out);
  const schema = z.fromJSONSchema(JSON.parse(terminal(['schema', what]).out));

  test('is as its published schema says', () => {
    expect(code).toBe(0);
    expect(schema.safeParse(printed).error?.issues ?? []).toEqual([]);
  });

  test('has no field more, and none less', () => {
    expect(schema.safeParse({ ...printed, extra: 1 }).success).toBe(false);
    for (const key of Object.keys(printed)) {
      const { [key]: _, ...less } = printed;
      expect(schema.safeParse(less).success, key).toBe(false);
    }
  });
});

test('a device that never opens is null in JSON, and a limit that is not there is absent', () => {
  const { verdicts } = JSON.parse(terminal(['verdicts', BAKERY, ...OPEN, '--json']).out);
  const never = verdicts.find(
    (one: { kind: string; value: unknown }) => one.kind === 'disconnection' && one.value === null,
  );
  expect(never).toMatchObject({ unit: 's', holds: 'no' });
  expect(verdicts.find((one: { kind: string }) => one.kind === 'fault-to-metal')).not.toHaveProperty('limit');
});

test('the help names every schema and what each exit code means', () => {
  const { out } = terminal(['--help']);
  for (const what of ['installation', 'lesson', 'result', 'verdicts', 'repairs', 'sweep', 'population'])
    expect(terminal(['schema', what]).code, what).toBe(0);
  expect(out).toMatch(/result \(of run\),\s+verdicts, repairs, sweep or population/);
  for (const code of [0, 1, 2]) expect(out).toMatch(new RegExp(`^ {2}${code} {2}\\S`, 'm'));
});

test('the exit codes are as the help says: an answer is fine however bad it is', () => {
  expect(terminal(['verdicts', BAKERY, ...OPEN]).code).toBe(0);
  expect(terminal(['repairs', BAKERY, ...OPEN]).code).toBe(0);
  expect(terminal(['verdicts', 'x.yaml'], { 'x.yaml': 'place: 3' }).code).toBe(1);
  expect(terminal(['population', BAKERY]).code).toBe(2);
  expect(terminal(['repairs', 'nowhere.yaml']).code).toBe(2);
  expect(terminal(['schema', 'everything']).code).toBe(2);
});
