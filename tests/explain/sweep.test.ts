import { expect, test } from 'vitest';
import { anybody, crowdTouches, exposedMetal, numbersOf, sweep } from '../../src/explain/index.ts';
import { withValue } from '../../src/explain/sweep/value.ts';
import { valuesOf } from '../../src/explain/sweep/sweep.ts';
import { compile } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { bakery, usual } from '../scenario/bakery.ts';

const FAULT = { ...usual, 'line touches the case': 'solid' };

test('the longer the run, the less a fault draws and the later it is ended', () => {
  const axis = { path: 'mixer run.length_m', from: 5, to: 205, steps: 9 };
  const points = [...sweep(bakery.installation, FAULT, [axis])];
  expect(points.map(({ values }) => values[0])).toEqual(valuesOf(axis));
  for (const [index, point] of points.entries()) {
    const before = points[index - 1];
    if (before === undefined) continue;
    expect(point.fault_A).toBeLessThan(before.fault_A);
    expect(point.opens_s).toBeGreaterThanOrEqual(before.opens_s);
  }
  expect(points[0]?.safe).toBe(true);
  expect(points.at(-1)?.safe).toBe(false);
});

test('a point of a sweep is the run of the file with that number in it', () => {
  const [point] = [
    ...sweep(bakery.installation, FAULT, [{ path: 'own rod.resistance_ohm', from: 7, to: 7, steps: 1 }]),
  ];
  const parts = { ...bakery.installation.parts };
  const rod = parts['own rod'];
  if (rod?.kind !== 'rod') throw new Error('the own rod is a rod');
  const edited = compile({ ...bakery.installation, parts: { ...parts, 'own rod': { ...rod, resistance_ohm: 7 } } });
  const { intervals } = run(edited, FAULT);
  const opened = intervals.find(({ because }) => because.kind === 'device-operated');
  expect(point?.opens_s).toBe(opened?.start_s);
});

test('a map has a point for every crossing, the second value fastest', () => {
  const points = [
    ...sweep(bakery.installation, FAULT, [
      { path: 'mixer run.length_m', from: 10, to: 20, steps: 2 },
      { path: 'mixer breaker.rating_A', from: 15, to: 60, steps: 3 },
    ]),
  ];
  expect(points.map(({ values }) => values.join(' '))).toEqual([
    '10 15',
    '10 37.5',
    '10 60',
    '20 15',
    '20 37.5',
    '20 60',
  ]);
});

test('every number of the file can be named, and is found where it is named', () => {
  const numbers = numbersOf(bakery.installation);
  expect(numbers.find(({ path }) => path === 'mixer run.length_m')?.value).toBe(12);
  expect(numbers.find(({ path }) => path === 'line touches the case.resistance_ohm.1 ohm')?.value).toBe(1);
  for (const { path, value } of numbers)
    expect(withValue(bakery.installation, path, value)).toEqual(bakery.installation);
});

test.each([
  ['mixer run.lengthm', 5, /leads to no number/],
  ['nobody.length_m', 5, /leads to no number/],
  ['mixer run', 5, /leads to no number/],
  ['mixer run.length_m.more', 5, /leads to no number/],
  ['mixer run.length_m', -1, /zero or more/],
  ['mixer run.length_m', NaN, /zero or more/],
])('%s cannot be %d', (path, value, reason) => {
  expect(() => withValue(bakery.installation, path, value)).toThrow(reason);
});

test('steps that are none, and more points than anybody waits for, are refused', () => {
  const axis = { path: 'mixer run.length_m', from: 1, to: 2, steps: 0 };
  expect(() => [...sweep(bakery.installation, FAULT, [axis])]).toThrow(/one step or more/);
  const many = { ...axis, steps: 1000 };
  expect(() => [...sweep(bakery.installation, FAULT, [many, many])]).toThrow(/too many/);
});

test('where nothing ends the fault many of a crowd come to fibrillation; where a breaker ends it at once next to nobody', () => {
  const grave = (conditions: Readonly<Record<string, string>>) => {
    const exposed = exposedMetal(bakery, { ...FAULT, ...conditions });
    if (exposed === undefined) throw new Error('nothing strikes');
    const outcome = [...crowdTouches(exposed.source, anybody(exposed), 20_000, 5)].at(-1);
    const shares = outcome?.zones ?? [];
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    return shares.reduce((sum, { zone, share }) => (zone.startsWith('AC-4') ? sum + share : sum), 0);
  };
  expect(grave({ 'protective conductor open': 'yes' })).toBeGreaterThan(0.1);
  expect(grave({})).toBeLessThan(0.001);
});

test('a crowd is the same for the same seed, however it is counted, and its quantiles rise', () => {
  const exposed = exposedMetal(bakery, { ...FAULT, 'protective conductor open': 'yes' });
  if (exposed === undefined) throw new Error('nothing strikes');
  const who = anybody(exposed);
  const [first] = [...crowdTouches(exposed.source, who, 60_000, 3)];
  expect(first?.people).toBe(50_000);
  expect([...crowdTouches(exposed.source, who, 50_000, 3)]).toEqual([first]);
  const amperes = first?.quantiles.map((quantile) => quantile.amperes) ?? [];
  expect(amperes).toEqual(amperes.toSorted((one, other) => one - other));
  expect(exposedMetal(bakery, usual)).toBeUndefined();
});
