import { describe, expect, test } from 'vitest';
import type { Conditions } from '../../src/installation/index.ts';
import { breakerAfter, breakerOperation } from '../../src/protection/index.ts';
import { run } from '../../src/scenario/index.ts';
import type { Timeline } from '../../src/scenario/index.ts';
import { broken } from './holds.ts';
import { rig } from './rig.ts';

function told(build: Parameters<typeof run>[0], conditions: Conditions, options?: Parameters<typeof run>[2]): Timeline {
  const timeline = run(build, conditions, options);
  expect(broken(timeline)).toEqual([]);
  return timeline;
}

function kinds({ intervals }: Timeline): readonly string[] {
  return intervals.map(({ because }) =>
    because.kind === 'device-operated'
      ? because.device
      : because.kind === 'person-released'
        ? because.person
        : because.kind,
  );
}

describe('which comes first', () => {
  test('of two equal breakers in series either may open; here it is always the first in the file, and the other rests', () => {
    const timeline = told(rig(), { fault: 'solid' });
    expect(kinds(timeline)).toEqual(['begins', 'fault-strikes', 'first breaker']);
    expect(timeline.intervals.at(-1)!.devices[1]).toMatchObject({ state: 'closed', operation: { at_s: Infinity } });
  });

  test('of two breakers in series the smaller one opens, wherever it stands', () => {
    expect(kinds(told(rig({ first_A: 60 }), { fault: 'poor' }))).toEqual(['begins', 'fault-strikes', 'second breaker']);
    expect(kinds(told(rig({ second_A: 60 }), { fault: 'poor' }))).toEqual(['begins', 'fault-strikes', 'first breaker']);
  });
});

describe('what a breaker remembers', () => {
  const build = rig({ first_A: 60, second_A: 15, extra_ohm: 1.2 });

  test('heat stays when the current changes: the first breaker opens sooner after a fault than without it', () => {
    const after = told(build, { fault: 'poor' });
    expect(kinds(after)).toEqual(['begins', 'fault-strikes', 'second breaker', 'first breaker']);
    const first = build.devices.find(({ name }) => name === 'first breaker')!;
    const settings = first.settings({});
    if (settings.family !== 'ul489') throw new Error('the first breaker is a breaker');
    const [, during, alone] = after.intervals;
    const heat = breakerAfter(settings, { heat: 0 }, during!.devices[0]!.amperes, alone!.start_s).heat;
    const warm = breakerOperation(settings, { heat }, alone!.devices[0]!.amperes).at_s;
    const cold = breakerOperation(settings, { heat: 0 }, alone!.devices[0]!.amperes).at_s;
    expect(after.intervals[3]!.start_s - alone!.start_s).toBeCloseTo(warm, 6);
    expect(warm).toBeLessThan(0.95 * cold);
  });

  test('a breaker that has carried its load for long opens sooner than one that was idle', () => {
    const lit = rig({ load_ohm: 6.5, extra_ohm: 1e6 });
    const loaded = told(lit, { fault: 'poor' });
    const idle = told(lit, { fault: 'poor', 'load off': 'yes' });
    const now = loaded.intervals[1]!;
    const settings = lit.devices[0]!.settings({});
    if (settings.family !== 'ul489') throw new Error('the first breaker is a breaker');
    const cold = breakerOperation(settings, { heat: 0 }, now.devices[0]!.amperes).at_s;
    expect(now.end_s).toBeLessThan(0.8 * cold);
    expect(idle.intervals[1]!.end_s).toBeGreaterThan(now.end_s);
  });

  test('a bimetal that a huge current has bent opens although another breaker has just taken the current away', () => {
    const huge = rig({ first_A: 15, second_A: 15, extra_ohm: 1e6, source_ohm: 0.001, protective_ohm: 0.005 });
    const timeline = told(huge, { 'load off': 'yes', fault: 'solid' }, { tolerance: 'slow' });
    expect(kinds(timeline)).toEqual(['begins', 'fault-strikes', 'first breaker', 'second breaker']);
    expect(timeline.intervals[1]!.devices[1]!.amperes).toBeGreaterThan(3000);
    expect(timeline.intervals[2]!.devices[1]!.amperes).toBeLessThan(1e-3);
    expect(timeline.intervals[3]!.because).toMatchObject({ operation: { region: 'thermal' } });
  });

  test('a load it cannot carry for ever counts from cold at 0 s: 135 % opens a 20 A breaker within the hour', () => {
    // UL 489: at 135 % of its rating a breaker up to 50 A opens within 1 h.
    const overloaded = rig({ first_A: 1000, load_ohm: 120 / 27 - 0.13 });
    for (const tolerance of ['fast', 'middle', 'slow'] as const) {
      const timeline = told(overloaded, {}, { tolerance });
      expect(timeline.intervals[0]!.devices[1]!.amperes / 20).toBeGreaterThan(1.35);
      expect(timeline.intervals[0]!.devices[1]!.amperes / 20).toBeLessThan(1.36);
      expect(kinds(timeline)).toEqual(['begins', 'second breaker']);
      expect(timeline.intervals[1]!.start_s).toBeLessThan(3600);
      expect(timeline.intervals[1]!.start_s).toBeGreaterThan(10);
    }
  });
});

describe('two people', () => {
  const both: Conditions = { 'Ada touches': 'the machine', 'Ben touches': 'the machine' };

  test('with nothing wrong both touch, feel nothing and stay', () => {
    const timeline = told(rig(), both);
    expect(kinds(timeline)).toEqual(['begins', 'touches']);
    expect(timeline.intervals[1]!.because).toEqual({ kind: 'touches', person: 'Ada' });
    expect(timeline.intervals[1]!.snapshot.people).toEqual({ Ada: 'touching', Ben: 'touching' });
  });

  test('one may be able to let go while the other is held: impedances differ', () => {
    // The 5th percentile of impedance carries more.
    const timeline = told(rig({ slab_ohm: 200 }), { ...both, fault: 'poor', 'protective open': 'yes' });
    const [ada, ben] = timeline.intervals[1]!.people;
    expect(ben!.body_A).toBeGreaterThan(1.2 * ada!.body_A);
  });

  test('who lets go is away from then on, and the other is solved without them', () => {
    const timeline = told(rig({ slab_ohm: 40_000 }), { ...both, fault: 'poor', 'protective open': 'yes' });
    expect(kinds(timeline)).toEqual(['begins', 'fault-strikes', 'Ada', 'Ben']);
    expect(timeline.intervals.map(({ start_s }) => start_s)).toEqual([-1, 0, 0.5, 0.5]);
    expect(timeline.intervals[2]!.snapshot.people).toEqual({ Ada: 'released', Ben: 'touching' });
  });

  test('the fault told of is the first in the file, and of two faults both strike', () => {
    const timeline = told(rig(), { fault: 'poor', 'fault by water': 'damp' });
    expect(timeline.intervals[1]!.because).toEqual({ kind: 'fault-strikes', condition: 'fault' });
    expect(timeline.intervals[1]!.snapshot.defects).toEqual({ fault: 'struck', 'fault by water': 'struck' });
    expect(timeline.intervals[1]!.fault!.condition).toBe('fault');
  });
});
