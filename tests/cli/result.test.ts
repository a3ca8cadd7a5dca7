import { expect, test } from 'vitest';
import { z } from 'zod';
import { remedies } from '../../src/explain/index.ts';
import { resultOf } from '../../src/cli/result.ts';
import { manyRuns } from '../explain/walk.ts';
import { BAKERY, set, terminal } from './terminal.ts';

const published = JSON.parse(terminal(['schema', 'result']).out);
const schema = z.fromJSONSchema(published);

interface Result {
  readonly devices: readonly {
    readonly device: string;
    readonly operated: { readonly at_s: number; readonly operation: { readonly region: string } } | null;
  }[];
  readonly intervals: readonly {
    readonly start_s: number;
    readonly end_s: number | null;
    readonly branches: readonly { readonly name: string; readonly amperes: number; readonly degrees: number }[];
    readonly nodes: readonly { readonly name: string; readonly volts: number; readonly degrees: number }[];
    readonly people: readonly {
      readonly prospective_V: number;
      readonly touch_V: number;
      readonly letGo: boolean;
      readonly zone: string;
      readonly limbs_A: Readonly<Record<string, number>>;
    }[];
    readonly paths: {
      readonly total_A: number;
      readonly ways: readonly { readonly amperes: number; readonly branches: readonly string[] }[];
    } | null;
  }[];
  readonly findings: readonly { readonly kind: string }[];
  readonly words: { readonly headline: string; readonly story: readonly { readonly text: string }[] };
}

function json(...assignments: readonly string[]): Result {
  return JSON.parse(terminal(['run', BAKERY, ...set(...assignments), '--json']).out);
}

test('the published schema accepts what is printed, and nothing with a field more or less', () => {
  const result = json('line touches the case', 'loose joint', 'baker touches=the case and the sink');
  expect(schema.safeParse(result).error?.issues ?? []).toEqual([]);
  expect(schema.safeParse({ ...result, extra: 1 }).success).toBe(false);
  const { words: _, ...less } = result;
  expect(schema.safeParse(less).success).toBe(false);
  const [first, ...more] = result.intervals;
  expect(schema.safeParse({ ...result, intervals: [{ ...first, start_s: 'soon' }, ...more] }).success).toBe(false);
});

test('every run of many fits the schema, with every kind of finding among them', () => {
  const kinds = new Set<string>();
  for (const timeline of manyRuns(80)) {
    const result = JSON.parse(JSON.stringify(resultOf(timeline, 'x', 'iec', remedies(timeline))));
    expect(schema.safeParse(result).error?.issues ?? []).toEqual([]);
    for (const { kind } of result.findings) kinds.add(kind);
  }
  for (const file of ['harmonic-neutral', 'open-neutral-lamps', 'nuisance-trip', 'it-monitor']) {
    const result = JSON.parse(terminal(['run', `tests/reference/textbook/${file}.yaml`, '--json']).out);
    expect(schema.safeParse(result).error?.issues ?? [], file).toEqual([]);
    for (const { kind } of result.findings) kinds.add(kind);
  }
  const watched = terminal(['run', 'lessons/places/clinic.yaml', ...set('first fault in the lamp'), '--json']);
  for (const { kind } of JSON.parse(watched.out).findings) kinds.add(kind);
  const described = published.properties.findings.items;
  const known = (described.anyOf ?? described.oneOf).map(
    (one: { properties: { kind: { const: string } } }) => one.properties.kind.const,
  );
  expect([...kinds].toSorted()).toEqual(known.toSorted());
});

test('intervals tile the time from long before to without end', () => {
  const { intervals } = json('line touches the case', 'loose joint', 'baker touches=the case');
  expect(intervals[0]?.start_s).toBe(-1);
  expect(intervals.at(-1)?.end_s).toBeNull();
  for (const [index, { end_s }] of intervals.entries())
    if (index + 1 < intervals.length) expect(end_s).toBe(intervals[index + 1]?.start_s);
});

test('every branch and node is there with its angle, and the currents in the paths sum', () => {
  const { intervals } = json('line touches the case', 'baker touches=the case', 'baker wears=bare feet');
  const struck = intervals[1];
  expect(struck?.branches.find(({ name }) => name === 'line touches the case')?.amperes).toBeGreaterThan(400);
  expect(struck?.branches.find(({ name }) => name === 'baker.feet')?.amperes).toBeGreaterThan(0.005);
  expect(struck?.nodes.find(({ name }) => name === 'mixer.case')?.volts).toBeGreaterThan(25);
  for (const { degrees } of [...(struck?.branches ?? []), ...(struck?.nodes ?? [])])
    expect(Math.abs(degrees)).toBeLessThanOrEqual(180);
  const sum = struck?.paths?.ways.reduce((whole, { amperes }) => whole + amperes, 0);
  expect(sum).toBeCloseTo(struck?.paths?.total_A ?? 0, 6);
  expect(struck?.paths?.ways[0]?.branches).toContain('bonding jumper');
});

test('people have volts before and during the touch, amperes by limb, a zone, and whether they can let go', () => {
  const [, struck] = json(
    'line touches the case',
    'protective conductor open',
    'baker touches=the case and the sink',
  ).intervals;
  const [baker] = struck?.people ?? [];
  expect(baker?.prospective_V).toBeGreaterThan(baker?.touch_V ?? Infinity);
  expect(Object.keys(baker?.limbs_A ?? {}).toSorted()).toEqual(['feet', 'left hand', 'right hand']);
  expect(baker?.letGo).toBe(false);
  expect(baker?.zone).toMatch(/^AC-/);
});

test('a device that operated says when and why; one that did not says null', () => {
  const { devices } = json('line touches the case');
  const at = (name: string) => devices.find(({ device }) => device === name)?.operated;
  expect(at('mixer breaker')).toMatchObject({ operation: { region: 'magnetic' } });
  expect(at('main breaker')).toBeNull();
});

test('words and findings are the same story', () => {
  const { findings, words } = json('line touches the case', 'bonding jumper missing');
  expect(words.story).toHaveLength(findings.length);
  expect(words.headline).toMatch(/^Nothing opens/);
});

test.each(['installation', 'lesson', 'result', 'verdicts', 'repairs', 'sweep', 'population'])(
  'the schema of %s is JSON Schema that can be read again',
  (what) => {
    const { code, out } = terminal(['schema', what]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' });
  },
);
