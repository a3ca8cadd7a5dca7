import { describe, expect, test } from 'vitest';
import { account, findings, ledger, telling, type Ledger, type WayKind } from '../../src/explain/index.ts';
import { compile, readInstallation } from '../../src/installation/index.ts';
import { run, type Timeline } from '../../src/scenario/index.ts';
import { runBakery } from '../scenario/bakery.ts';
import { manyRuns } from './walk.ts';

const FAULT = { 'line touches the case': 'solid' };

function struck(timeline: Timeline): number {
  return timeline.intervals.findIndex(({ because }) => because.kind === 'fault-strikes');
}

function ofFault(conditions: Record<string, string>): Ledger {
  const timeline = runBakery({ ...FAULT, ...conditions });
  const told = ledger(timeline, struck(timeline), 'north-america');
  if (told === null) throw new Error('no current goes home');
  return told;
}

function share(told: Ledger, kind: WayKind): number {
  return told.ways.reduce((sum, way) => sum + (way.kind === kind ? way.amperes : 0), 0) / told.total_A;
}

describe('in every interval of many runs', () => {
  const runs = manyRuns(300);
  const ledgers = runs.flatMap((timeline) =>
    timeline.intervals.flatMap((interval, index) => {
      const told = ledger(timeline, index, 'iec');
      return told === null ? [] : [{ timeline, interval, told }];
    }),
  );

  test('the ways home sum to the whole', () => {
    expect(ledgers.length).toBeGreaterThan(500);
    for (const { told } of ledgers) {
      const sum = told.ways.reduce((whole, { amperes }) => whole + amperes, 0);
      expect(Math.abs(sum - told.total_A)).toBeLessThanOrEqual(1e-9 * told.total_A);
    }
  });

  test('the whole of a fault is the fault current', () => {
    const faults = ledgers.filter(({ told }) => told.of === 'fault');
    expect(faults.length).toBeGreaterThan(100);
    for (const { interval, told } of faults) {
      const { re, im } = interval.fault?.amperes ?? { re: 0, im: 0 };
      expect(Math.abs(told.total_A - Math.hypot(re, im))).toBeLessThanOrEqual(1e-9 * told.total_A);
    }
  });

  test('no way carries less than nothing, no two have one name, and each says where it goes', () => {
    for (const { told } of ledgers) {
      expect(new Set(told.ways.map(({ name }) => name)).size).toBe(told.ways.length);
      for (const way of told.ways) {
        expect(way.amperes).toBeGreaterThanOrEqual(-1e-9 * told.total_A);
        // What only stands in for a load may start at that load; everything else passes something on its way home.
        const least = way.kind === 'other' ? 0 : way.name.startsWith('load:relief') ? 1 : 2;
        expect(way.hops.length, way.name).toBeGreaterThanOrEqual(least);
      }
    }
  });

  test('a device that is not fitted is no station, an open one carries nothing home', () => {
    for (const { interval, told } of ledgers) {
      const absent = interval.devices.filter(({ state }) => state === 'not fitted').map(({ device }) => device);
      for (const way of told.ways) expect(way.via.filter((part) => absent.includes(part))).toEqual([]);
    }
  });
});

test('with everything right a case fault goes home by the third wire and the bonding jumper', () => {
  const told = ofFault({});
  expect(share(told, 'protective')).toBeGreaterThan(0.99);
  expect(told.ways[0]?.text).toBe('Third wire');
  expect(told.ways[0]?.metal).toBe(true);
  expect(told.ways[0]?.hops).toEqual([
    'case',
    'cord',
    'outlet',
    'third wire',
    'service panel',
    'bonding jumper',
    'service neutral',
    'winding',
  ]);
});

test('a rod of its own sends the fault current through the soil, and no metal leads all the way', () => {
  const told = ofFault({ 'protective conductor to its own rod': 'yes' });
  expect(share(told, 'soil')).toBeGreaterThan(0.99);
  expect(told.ways.some(({ metal }) => metal)).toBe(false);
  expect(told.ways[0]?.text).toBe('Soil, from the mixer’s own ground rod');
  expect(told.ways[0]?.via).toContain('own rod');
});

test('a neutral linked to the case at the outlet is a second metal way home', () => {
  const told = ofFault({ 'neutral linked to the case': 'yes' });
  expect(share(told, 'neutral')).toBeGreaterThan(0.3);
  expect(share(told, 'protective')).toBeGreaterThan(0.3);
  expect(told.ways.find(({ kind }) => kind === 'neutral')?.hops).not.toContain('bonding jumper');
});

test('with the third wire open the only way home is through the baker', () => {
  const told = ofFault({ 'protective conductor open': 'yes', 'baker touches': 'the case', 'baker wears': 'bare feet' });
  expect(share(told, 'person')).toBeGreaterThan(0.999);
  expect(told.ways[0]?.text).toBe('Through the baker, hand to feet');
  expect(told.ways[0]?.hops.slice(0, 3)).toEqual(['case', 'baker', 'concrete floor']);
});

test('what the ledger sends through the baker is what passes through the baker', () => {
  for (const rod of ['no', 'yes']) {
    const conditions = { ...FAULT, 'protective conductor to its own rod': rod };
    const timeline = runBakery({ ...conditions, 'baker touches': 'the case', 'baker wears': 'bare feet' });
    const told = ledger(timeline, struck(timeline), 'iec');
    const feels = findings(timeline).find(({ kind }) => kind === 'person-feels');
    const through = told?.ways.filter(({ kind }) => kind === 'person').reduce((sum, { amperes }) => sum + amperes, 0);
    if (feels?.kind !== 'person-feels') throw new Error('the baker feels nothing');
    // In phase with the fault and without what ordinary work already drives: a few parts in a thousand.
    expect(Math.abs((through ?? 0) / feels.body_A - 1)).toBeLessThan(0.01);
  }
});

test('in ordinary work the neutral brings home only what the lamps on the other leg do not share', () => {
  const timeline = runBakery();
  const told = ledger(timeline, 0, 'north-america');
  expect(told?.of).toBe('load');
  expect(told?.ways.map(({ kind }) => kind).slice(0, 2)).toEqual(['load', 'neutral']);
  expect(told?.ways.find(({ kind }) => kind === 'neutral')?.amperes).toBeCloseTo(750 / 120 - 400 / 120, 0);
});

test('a neutral linked to the case puts working current on the third wire', () => {
  const told = ledger(runBakery({ 'neutral linked to the case': 'yes' }), 0, 'north-america');
  expect(told?.ways.find(({ kind }) => kind === 'protective')?.amperes).toBeGreaterThan(1);
});

test('with the service neutral open what the fault takes over from the mixer is told apart from what comes home', () => {
  const told = ofFault({ 'service neutral open': 'yes' });
  expect(told.ways.map(({ name }) => name)).toContain('load:relief:mixer');
  expect(share(told, 'protective')).toBeLessThan(0.01);
});

test('an interval that does not exist is refused by number', () => {
  expect(() => ledger(runBakery(), 7, 'iec')).toThrow(/interval 7/);
});

test('a textbook circuit goes home by the impedances it passes', () => {
  const reading = readInstallation(
    `place: A textbook
region: iec
parts:
  supply: { kind: source, emf_V: 100 }
  load: { kind: impedance, resistance_ohm: 10 }
  lamp: { kind: impedance, between: [load.a, load.b], resistance_ohm: 40 }
  return: { kind: impedance, between: [load.b, supply.minus], resistance_ohm: 0.1 }
joins:
  - [supply.plus, load.a]
`,
    'textbook.yaml',
  );
  if (!reading.ok) throw new Error('the circuit is wrong');
  const told = ledger(run(compile(reading.installation), {}), 0, 'iec');
  expect(told?.ways.map(({ kind, text, hops }) => [kind, text, hops])).toEqual([
    ['other', 'Load, return', ['load', 'return', 'winding']],
    ['other', 'Lamp, return', ['lamp', 'return', 'winding']],
  ]);
  // 100 V over 8.1 ohm, the joint of one join and the least a winding has (10 µΩ); the load takes 40 of 50 parts.
  expect(told?.total_A).toBeCloseTo(100 / 8.10051, 6);
  expect(told?.ways[0]?.amperes).toBeCloseTo((0.8 * 100) / 8.10051, 6);
});

test('without a fault the ledger that is told is that of the touch, not of before it', () => {
  const timeline = runBakery({
    'neutral linked to the case': 'yes',
    'line and neutral reversed': 'yes',
    'bonding jumper missing': 'yes',
    'baker touches': 'the case',
    'baker wears': 'bare feet',
  });
  expect(telling(timeline)).toBeGreaterThan(0);
  const told = account(timeline, 'north-america').ledger;
  expect(told?.ways.find(({ kind }) => kind === 'person')?.amperes).toBeGreaterThan(0.05);
});
