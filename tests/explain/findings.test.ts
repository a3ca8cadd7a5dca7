import { expect, test } from 'vitest';
import {
  account,
  findings,
  isSafe,
  ledger,
  remedies,
  story,
  type Finding,
  type FindingOf,
} from '../../src/explain/index.ts';
import { compile, installationSchema } from '../../src/installation/index.ts';
import { run, type Timeline } from '../../src/scenario/index.ts';
import { runBakery } from '../scenario/bakery.ts';
import { manyRuns } from './walk.ts';

const FAULT = { 'line touches the case': 'solid' };
const TOUCH = { 'baker touches': 'the case', 'baker wears': 'wet shoes' };

function only<K extends Finding['kind']>(found: readonly Finding[], kind: K): FindingOf<K> {
  const [first, ...more] = all(found, kind);
  if (first === undefined || more.length > 0) throw new Error(`${kind}: ${more.length + (first ? 1 : 0)} of them`);
  return first;
}

function all<K extends Finding['kind']>(found: readonly Finding[], kind: K): readonly FindingOf<K>[] {
  return found.filter((finding): finding is FindingOf<K> => finding.kind === kind);
}

function operated({ intervals }: Timeline): readonly string[] {
  return intervals.flatMap(({ because }) => (because.kind === 'device-operated' ? [because.device] : []));
}

const runs = manyRuns(300);

test('whoever is named as having operated did, when it is said, and nobody is left out', () => {
  expect(runs.flatMap(operated).length).toBeGreaterThan(60);
  for (const timeline of runs) {
    const told = all(findings(timeline), 'device-operated');
    expect(told.map(({ device }) => device)).toEqual(operated(timeline));
    for (const { device, at_s } of told) {
      const after = timeline.intervals.filter(({ start_s }) => start_s >= at_s);
      expect(after.every(({ devices }) => devices.find((one) => one.device === device)?.state === 'open')).toBe(true);
    }
  }
});

test('whoever is said to stay shut is shut to the end', () => {
  for (const timeline of runs) {
    const last = timeline.intervals.at(-1);
    for (const { device, because } of all(findings(timeline), 'device-stays-shut')) {
      const state = last?.devices.find((one) => one.device === device)?.state;
      expect(state).toBe(because === 'jammed' ? 'jammed' : because === 'not-fitted' ? 'not fitted' : 'closed');
    }
  }
});

test('findings stand in order of time', () => {
  for (const timeline of runs) {
    const times = findings(timeline).map(({ at_s }) => at_s);
    expect(times).toEqual(times.toSorted((one, other) => one - other));
  }
});

test('current goes home: a bolted case fault draws hundreds of amperes, and the 20 A breaker opens magnetically', () => {
  const found = findings(runBakery(FAULT));
  expect(only(found, 'fault-current').amperes).toBeGreaterThan(400);
  const opened = only(found, 'device-operated');
  expect(opened.device).toBe('mixer breaker');
  expect(opened.operation.region).toBe('magnetic');
  expect(opened.operation.certain).toBe(true);
  expect(only(found, 'fault-state').metal).toBeGreaterThan(0.99);
});

test('a rod alone opens nothing: under 5 A flows, the case stays live, the mixer works on', () => {
  const found = findings(runBakery({ ...FAULT, 'protective conductor to its own rod': 'yes' }));
  expect(only(found, 'fault-current').amperes).toBeLessThan(5);
  expect(all(found, 'device-operated')).toEqual([]);
  expect(only(found, 'live-metal').volts).toBeGreaterThan(90);
  expect(only(found, 'live-metal').until_s).toBe(Infinity);
  expect(only(found, 'fault-state').metal).toBe(0);
  expect(only(found, 'load-runs-on').part).toBe('mixer');
  expect(all(found, 'device-stays-shut').find(({ device }) => device === 'mixer breaker')?.because).toBe(
    'below-rating',
  );
});

test('a missing bonding jumper makes the panel and the other machine live too, not only the faulty one', () => {
  const found = findings(runBakery({ ...FAULT, 'bonding jumper missing': 'yes' }));
  expect(all(found, 'live-metal').map(({ part }) => part)).toEqual(['mixer', 'panel', 'oven']);
  expect(all(found, 'device-operated')).toEqual([]);
});

test('a jammed breaker leaves the fault to the main breaker, and is named', () => {
  const found = findings(runBakery({ ...FAULT, 'breaker jammed': 'yes' }));
  expect(only(found, 'device-stays-shut')).toMatchObject({ device: 'mixer breaker', because: 'jammed' });
  expect(all(found, 'device-operated').map(({ device }) => device)).toEqual(['main breaker']);
});

test('a GFCI misses what a breaker cannot see', () => {
  const conditions = { ...FAULT, ...TOUCH, 'protective conductor open': 'yes' };
  const without = all(findings(runBakery(conditions)), 'device-stays-shut').find(({ device }) => device === 'gfci');
  expect(without?.because).toBe('not-fitted');
  expect(without?.residual_A).toBeGreaterThan(0.03);
  const opened = only(findings(runBakery({ ...conditions, 'gfci fitted': 'yes' })), 'device-operated');
  expect(opened).toMatchObject({ device: 'gfci', operation: { region: 'residual', certain: true } });
});

test('a current that ends before a hand could try to open has not held anybody', () => {
  const quick = findings(runBakery({ ...FAULT, ...TOUCH }));
  expect(only(quick, 'person-feels').letGo).toBe(false);
  expect(all(quick, 'person-held')).toEqual([]);
  const slow = findings(runBakery({ ...FAULT, ...TOUCH, 'protective conductor open': 'yes' }));
  expect(only(slow, 'person-held').until_s).toBe(Infinity);
});

test('the open service neutral shows on both legs, long before any fault', () => {
  const legs = only(findings(runBakery({ 'service neutral open': 'yes' })), 'leg-volts');
  expect(legs.at_s).toBe(-1);
  // 120 V minus 10 % and plus 10 %: the two halves still sum to the whole winding, within the drop of the wires.
  expect(legs.low_V).toBeLessThan(108);
  expect(legs.high_V).toBeGreaterThan(132);
  expect(legs.low_V + legs.high_V).toBeGreaterThan(235);
});

test('a linked neutral is a stray current of the normal state, and trips a GFCI without any fault', () => {
  const found = findings(runBakery({ 'neutral linked to the case': 'yes', 'gfci fitted': 'yes' }));
  expect(only(found, 'stray-current').way).toBe('protective');
  expect(only(found, 'device-operated').device).toBe('gfci');
  expect(only(found, 'normal-state').stray_A).toBeGreaterThan(1);
});

test('a fault on reversed wires reaches the neutral side: no large current, but working current on the third wire', () => {
  const found = findings(runBakery({ ...FAULT, 'line and neutral reversed': 'yes' }));
  expect(only(found, 'fault-current').loop_ohm).toBeUndefined();
  expect(only(found, 'stray-current')).toMatchObject({ at_s: 0, way: 'protective' });
  expect(all(found, 'polarity-reversed')).toHaveLength(1);
});

test('the disconnection time is that of IEC 60364-4-41:2005 table 41.1 (TN): 0.8 s at 120 V', () => {
  const found = findings(runBakery({ ...FAULT, 'loose joint': 'yes' }));
  expect(only(found, 'disconnection')).toMatchObject({ limit_s: 0.8, nominal_V: 120 });
  expect(only(found, 'disconnection').opened_s).toBeGreaterThan(0.8);
});

test('putting the third wire back is what makes the rod’s fault safe; a GFCI does it too', () => {
  const told = all(
    remedies(runBakery({ ...FAULT, ...TOUCH, 'protective conductor to its own rod': 'yes' })),
    'made-safe-by',
  );
  expect(told.map(({ condition, option }) => `${condition}=${option}`)).toEqual([
    'protective conductor to its own rod=no',
    'gfci fitted=yes',
  ]);
  expect(told.map(({ device }) => device)).toEqual(['mixer breaker', 'gfci']);
});

test('where two ways home are broken no single repair is enough', () => {
  const broken = { 'protective conductor open': 'yes', 'service neutral open': 'yes', 'breaker jammed': 'yes' };
  const [told, ...more] = remedies(runBakery({ ...FAULT, ...TOUCH, ...broken }));
  expect(more).toEqual([]);
  expect(told).toMatchObject({ kind: 'none-alone', tried: 4 });
});

test('a run in which somebody comes to zone AC-4.1 is not safe, however soon the metal is dead', () => {
  const timeline = runBakery({ ...FAULT, ...TOUCH });
  expect(isSafe(timeline)).toBe(true);
  const intervals = timeline.intervals.map((interval) => ({
    ...interval,
    people: interval.people.map((person) => ({ ...person, zone: 'AC-4.1' as const })),
  }));
  expect(isSafe({ ...timeline, intervals })).toBe(false);
});

test('what is called a remedy is one: run again with it, nothing is dangerous any more', () => {
  const unsafe = runs.filter((timeline) => !isSafe(timeline)).slice(0, 60);
  let tried = 0;
  for (const timeline of unsafe) {
    for (const { condition, option } of all(remedies(timeline), 'made-safe-by')) {
      const after = runBakery({ ...timeline.conditions, [condition]: option }, { tolerance: timeline.tolerance });
      const worst = after.intervals.flatMap(({ people }) => people.map(({ zone }) => zone));
      expect(worst.filter((zone) => zone.startsWith('AC-4'))).toEqual([]);
      tried += 1;
    }
  }
  expect(tried).toBeGreaterThan(20);
});

test('a current that heat alone ends is not called large, though metal leads all the way home', () => {
  const why = (conditions: Readonly<Record<string, string>>) =>
    account(runBakery({ ...FAULT, ...conditions }), 'north-america').why.join(' ');
  expect(why({})).toContain('so the current is large');
  expect(why({ 'loose joint': 'yes' })).not.toContain('large');
  expect(why({ 'loose joint': 'yes' })).toContain('holds the current down');
  const jammed = why({ 'breaker jammed': 'yes' });
  expect(jammed).not.toContain('large');
  expect(jammed).toContain('if it could open');
});

test('the headline names every metal that stays live, the panel too', () => {
  const { headline } = account(runBakery({ ...FAULT, 'bonding jumper missing': 'yes' }), 'iec');
  expect(headline).toContain('mixer');
  expect(headline).toContain('with it the distribution board and the oven');
});

test('between which two places a body has the most volts is told: hand to hand, where the hands see more than the feet', () => {
  const both = { 'baker touches': 'the case and the sink', 'baker wears': 'bare feet' };
  const told = only(findings(runBakery({ ...FAULT, ...both, 'protective conductor open': 'yes' })), 'person-feels');
  expect(told.across?.toSorted()).toEqual(['left hand', 'right hand']);
  const live = only(findings(runBakery({ ...FAULT, ...both, 'protective conductor open': 'yes' })), 'live-metal');
  expect(told.touch_V).toBeGreaterThan(live.volts);
  // One hand and the feet: there is nothing to choose between.
  const one = only(findings(runBakery({ ...FAULT, ...TOUCH, 'protective conductor open': 'yes' })), 'person-feels');
  expect(one.across).toBeUndefined();
});

test('a breaker too large meets the fault and leaves its cable unguarded, which is said', () => {
  const told = only(remedies(runBakery({ ...FAULT, 'breaker oversized': 'yes' })), 'already-safe');
  expect(told.oversized).toEqual({ device: 'mixer breaker', rating_A: 40, built_A: 20 });
});

test('where no repair helps, not even all at once, the fault itself is to blame and not the number of defects', () => {
  const build = compile(
    installationSchema.parse({
      place: 'The bench',
      region: 'north-america',
      parts: {
        source: { kind: 'source', emf_V: 120, resistance_ohm: 0.2 },
        breaker: { kind: 'breaker', rating_A: 20 },
        machine: { kind: 'appliance', power_W: 100, voltage_V: 120 },
      },
      joins: [
        ['source.minus', 'earth'],
        ['source.plus', 'breaker.line'],
        ['breaker.load', 'machine.line'],
        ['source.minus', 'machine.neutral'],
        ['source.minus', 'machine.case'],
      ],
      conditions: {
        fault: { kind: 'insulation-fault', between: ['machine.line', 'machine.case'], resistance_ohm: { poor: 1 } },
        oversized: { kind: 'setting', device: 'breaker', rating_A: 40 },
      },
    }),
  );
  const told = remedies(run(build, { fault: 'poor', oversized: 'yes' }));
  expect(only(told, 'none-alone')).toMatchObject({ tried: 1, together: false });
  expect(story(build, told, 'iec').at(-1)?.text).toContain('the fault itself has to be mended');
});

test('the row of the other leg names every load it goes through', () => {
  const timeline = runBakery({});
  const way = ledger(timeline, 0, 'north-america')?.ways.find(({ text }) => text.startsWith('Through the other leg'));
  expect(way?.text).toBe('Through the other leg: oven and lamps');
});
