import { describe, expect, test } from 'vitest';
import type { Conditions } from '../../src/installation/index.ts';
import { at } from '../../src/scenario/index.ts';
import type { Happening, Interval, Timeline } from '../../src/scenario/index.ts';
import { bakery, runBakery } from './bakery.ts';
import { broken } from './holds.ts';

const fault: Conditions = { 'line touches the case': 'solid' };
const hand: Conditions = { 'baker touches': 'the case', 'baker wears': 'bare feet' };

function told(conditions: Conditions, options?: Parameters<typeof runBakery>[1]): Timeline {
  const timeline = runBakery(conditions, options);
  expect(broken(timeline)).toEqual([]);
  return timeline;
}

function operated({ intervals }: Timeline): readonly Extract<Happening, { kind: 'device-operated' }>[] {
  return intervals.flatMap(({ because }) => (because.kind === 'device-operated' ? [because] : []));
}

function opened(timeline: Timeline): readonly string[] {
  return operated(timeline).map(({ device }) => device);
}

function kinds({ intervals }: Timeline): readonly string[] {
  return intervals.map(({ because }) => because.kind);
}

function last({ intervals }: Timeline): Interval {
  return intervals.at(-1)!;
}

function amperes({ solution }: Interval, branch: string): number {
  const index = bakery.branch(branch);
  return Math.hypot(solution.amperes.re[index]!, solution.amperes.im[index]!);
}

function volts({ solution }: Interval, one: string, other: string): number {
  const [a, b] = [bakery.node(one), bakery.node(other)];
  return Math.hypot(solution.volts.re[a]! - solution.volts.re[b]!, solution.volts.im[a]! - solution.volts.im[b]!);
}

function device(interval: Interval, name: string): Interval['devices'][number] {
  return interval.devices.find((moment) => moment.device === name)!;
}

function baker(interval: Interval): Interval['people'][number] {
  return interval.people[0]!;
}

describe('everything as it should be', () => {
  const timeline = told({});

  test('nothing happens, for ever', () => {
    expect(kinds(timeline)).toEqual(['begins']);
    expect(timeline.intervals[0]).toMatchObject({ start_s: -1, end_s: Infinity });
  });

  test('no current flows on the protective conductor, and the case stands at nothing', () => {
    expect(amperes(last(timeline), 'mixer run.protective')).toBeLessThan(1e-4);
    expect(volts(last(timeline), 'mixer.case', 'sink')).toBeLessThan(0.01);
  });

  test('a hand on the case feels nothing, so it stays', () => {
    const touching = told({ ...hand, 'baker touches': 'the case and the sink' });
    expect(kinds(touching)).toEqual(['begins', 'touches']);
    expect(baker(last(touching)).body_A).toBeLessThan(0.0005);
    expect(baker(last(touching)).touching).toEqual(['right hand', 'left hand', 'feet']);
  });
});

describe('line touches the case', () => {
  test('a bolted case fault opens the 20 A breaker in its magnetic region, within a cycle', () => {
    for (const tolerance of ['fast', 'middle', 'slow'] as const) {
      const timeline = told(fault, { tolerance });
      expect(kinds(timeline)).toEqual(['begins', 'fault-strikes', 'device-operated']);
      const [operation] = operated(timeline);
      expect(operation).toMatchObject({
        device: 'mixer breaker',
        operation: { region: 'magnetic', certain: true },
      });
      // One cycle of 60 Hz.
      expect(operation!.operation.at_s).toBeLessThanOrEqual(1 / 60);
      // 20 times the rating is where every UL 489 breaker of common make acts magnetically (from memory).
      expect(device(timeline.intervals[1]!, 'mixer breaker').amperes).toBeGreaterThan(400);
    }
  });

  test('after it has opened the fault carries nothing, and the lamps burn on', () => {
    const after = last(told(fault));
    expect(amperes(after, 'line touches the case')).toBeLessThan(1e-6);
    expect(amperes(after, 'lamps')).toBeGreaterThan(3);
  });

  test('through 1 ohm it opens too, but in seconds: the thermal part must do it', () => {
    const [operation] = operated(told({ 'line touches the case': '1 ohm' }));
    expect(operation).toMatchObject({ device: 'mixer breaker', operation: { region: 'thermal' } });
    expect(operation!.operation.at_s).toBeGreaterThan(1);
    expect(operation!.operation.at_s).toBeLessThan(20);
  });

  test('through 100 ohm no breaker ever opens', () => {
    expect(opened(told({ 'line touches the case': '100 ohm' }))).toEqual([]);
  });

  test('a jammed breaker stays shut, and what it should have done is kept', () => {
    const timeline = told({ ...fault, 'breaker jammed': 'yes' });
    expect(opened(timeline)).not.toContain('mixer breaker');
    expect(device(timeline.intervals[1]!, 'mixer breaker')).toMatchObject({
      state: 'jammed',
      operation: { region: 'magnetic' },
    });
    // Somebody further up must do it, later: the main breaker's bimetal at 469 A / 100 A.
    expect(opened(timeline)).toEqual(['main breaker']);
    expect(operated(timeline)[0]).toMatchObject({ operation: { region: 'thermal' } });
    expect(last(timeline).start_s).toBeGreaterThan(1);
  });

  test('a two-pole breaker opens both poles: with the main breaker open both legs are dead', () => {
    const dead = last(told({ ...fault, 'breaker jammed': 'yes' }));
    for (const pole of bakery.devices.find(({ name }) => name === 'main breaker')!.poles)
      expect(Math.hypot(dead.solution.amperes.re[pole]!, dead.solution.amperes.im[pole]!)).toBeLessThan(1e-6);
    expect(amperes(dead, 'lamps')).toBeLessThan(1e-6);
    expect(amperes(dead, 'oven')).toBeLessThan(1e-6);
  });

  test('an oversized breaker still opens on a solid fault, but only some of its make do so magnetically', () => {
    const timeline = told({ ...fault, 'breaker oversized': 'yes' });
    expect(operated(timeline)[0]).toMatchObject({ device: 'mixer breaker', operation: { certain: false } });
    const slow = told({ ...fault, 'breaker oversized': 'yes' }, { tolerance: 'slow' });
    expect(operated(slow)[0]).toMatchObject({ operation: { region: 'thermal' } });
  });

  test('a loose joint of 2 ohm keeps the fault below the magnetic band', () => {
    const [operation] = operated(told({ ...fault, 'loose joint': 'yes' }));
    expect(operation).toMatchObject({ device: 'mixer breaker', operation: { region: 'thermal' } });
  });
});

describe('no metallic way home', () => {
  const rod: Conditions = { ...fault, 'protective conductor to its own rod': 'yes' };

  test('with only a 25 Ω rod the breaker never opens and the case stays near full line voltage', () => {
    const timeline = told(rod);
    expect(opened(timeline)).toEqual([]);
    // 120 V through 25 Ω and what the other electrodes add: under 120 / 25 = 4.8 A (Ohm's law).
    const current = amperes(last(timeline), 'line touches the case');
    expect(current).toBeGreaterThan(3.5);
    expect(current).toBeLessThan(4.8);
    expect(volts(last(timeline), 'mixer.case', 'earth')).toBeGreaterThan(100);
  });

  test('the mixer runs on meanwhile: the breaker does not care', () => {
    const without = amperes(last(told({})), 'mixer');
    expect(amperes(last(told(rod)), 'mixer')).toBeCloseTo(without, 0);
  });

  test('an open protective conductor leaves a hand on the case at nearly the whole voltage, and held', () => {
    const timeline = told({ ...fault, ...hand, 'protective conductor open': 'yes' });
    expect(opened(timeline)).toEqual([]);
    const held = baker(last(timeline));
    expect(held.prospective_V).toBeGreaterThan(115);
    expect(held).toMatchObject({ letGo: false, exposure_s: Infinity });
    expect(held.zone.startsWith('AC-4')).toBe(true);
    expect(kinds(timeline)).not.toContain('person-released');
  });

  test('a lifted bonding jumper leaves the fault without a metallic way home', () => {
    const timeline = told({ ...fault, 'bonding jumper missing': 'yes' });
    expect(opened(timeline)).toEqual([]);
    expect(amperes(last(timeline), 'line touches the case')).toBeLessThan(1);
    expect(volts(last(timeline), 'mixer.case', 'panel.neutral bar')).toBeGreaterThan(110);
    // Everything bonded to the bar comes alive with it.
    expect(volts(last(timeline), 'oven.case', 'panel.neutral bar')).toBeGreaterThan(110);
  });

  test('an open service neutral takes the metal out of the way home, too: only soil and the water pipe are left', () => {
    const timeline = told({ ...fault, 'service neutral open': 'yes' });
    const current = amperes(timeline.intervals[1]!, 'line touches the case');
    expect(current).toBeLessThan(100);
    expect(opened(timeline)).not.toContain('main breaker');
  });
});

describe('the GFCI', () => {
  test('it opens though no third wire is there when somebody touches, before the heart is at risk', () => {
    const timeline = told({ ...fault, ...hand, 'protective conductor open': 'yes', 'gfci fitted': 'yes' });
    expect(opened(timeline)).toEqual(['gfci']);
    expect(baker(last(timeline)).zone).toBe('AC-2');
    expect(baker(last(timeline)).exposure_s).toBe(last(timeline).start_s);
  });

  test('it sees what does not come home: the current through the person, and of the running mixer nothing', () => {
    const { intervals } = told({ ...fault, ...hand, 'protective conductor open': 'yes', 'gfci fitted': 'yes' });
    expect(device(intervals[0]!, 'gfci').amperes).toBeGreaterThan(6);
    expect(device(intervals[0]!, 'gfci').residual_A).toBeLessThan(1e-5);
    expect(device(intervals[1]!, 'gfci').residual_A! / baker(intervals[1]!).body_A).toBeCloseTo(1, 3);
  });

  test('it does not open for a live case that nobody touches while nothing leads to earth', () => {
    expect(opened(told({ ...fault, 'protective conductor open': 'yes', 'gfci fitted': 'yes' }))).toEqual([]);
  });

  test('a neutral linked to the case trips it with no fault at all', () => {
    const timeline = told({ 'neutral linked to the case': 'yes', 'gfci fitted': 'yes' });
    expect(kinds(timeline)).toEqual(['begins', 'device-operated']);
    expect(opened(timeline)).toEqual(['gfci']);
    expect(timeline.intervals[0]).toMatchObject({ start_s: -1, end_s: last(timeline).start_s });
    expect(last(timeline).start_s).toBeGreaterThan(0);
  });

  test('one that is not fitted opens nothing, but says when it would have', () => {
    const timeline = told({ ...fault, ...hand, 'protective conductor open': 'yes' });
    expect(device(timeline.intervals[1]!, 'gfci')).toMatchObject({
      state: 'not fitted',
      operation: { region: 'residual' },
    });
    expect(opened(timeline)).toEqual([]);
  });

  test('on a solid fault the breaker is first: 25 ms is the shortest a GFCI takes', () => {
    expect(opened(told({ ...fault, 'gfci fitted': 'yes' }))).toEqual(['mixer breaker']);
    expect(opened(told({ ...fault, 'gfci fitted': 'yes', 'breaker jammed': 'yes' }))).toEqual(['gfci']);
  });
});

describe('the person', () => {
  test('dry shoes on concrete with a rod of its own: somebody feels it, lets go after half a second, and is not hurt', () => {
    const timeline = told({ ...fault, 'protective conductor to its own rod': 'yes', 'baker touches': 'the case' });
    expect(kinds(timeline)).toEqual(['begins', 'fault-strikes', 'person-released']);
    expect(last(timeline).start_s).toBe(0.5);
    expect(last(timeline).snapshot.people).toEqual({ baker: 'released' });
    expect(last(timeline).conditions['baker touches']).toBe('nothing');
    expect(baker(last(timeline))).toMatchObject({ touching: [], body_A: 0, zone: 'AC-2', exposure_s: 0.5 });
  });

  test('bare feet carry more than wet shoes, wet shoes more than dry ones', () => {
    const body = (wears: string): number =>
      baker(
        told({ ...fault, 'protective conductor open': 'yes', 'baker touches': 'the case', 'baker wears': wears })
          .intervals[1]!,
      ).body_A;
    expect(body('bare feet')).toBeGreaterThan(body('wet shoes'));
    expect(body('wet shoes')).toBeGreaterThan(5 * body('dry shoes'));
  });

  test('a hand on the sink makes it worse than feet on concrete in dry shoes', () => {
    const at_sink = told({ ...fault, 'protective conductor open': 'yes', 'baker touches': 'the case and the sink' });
    const held = baker(at_sink.intervals[1]!);
    expect(held.body_A).toBeGreaterThan(0.05);
    expect(held.limbs_A['left hand']).toBeGreaterThan(10 * held.limbs_A.feet!);
    expect(held.letGo).toBe(false);
  });

  test('zones are reached while the current flows, in order, and each begins an interval with the same solution', () => {
    const { intervals } = told({ ...fault, ...hand, 'protective conductor open': 'yes' });
    const zones = intervals.slice(1).map((interval) => baker(interval).zone);
    expect(zones).toEqual(['AC-2', 'AC-3', 'AC-4.1', 'AC-4.2']);
    for (const interval of intervals.slice(2)) {
      expect(interval.because.kind).toBe('zone-reached');
      expect(interval.solution).toBe(intervals[1]!.solution);
    }
  });

  test('even a breaker that opens at once leaves the case at tens of volts meanwhile', () => {
    const struck = told({ ...fault, ...hand }).intervals[1]!;
    expect(baker(struck).prospective_V).toBeGreaterThan(25);
    expect(baker(struck).prospective_V).toBeLessThan(75);
    expect(baker(last(told({ ...fault, ...hand }))).zone).toBe('AC-2');
  });
});

describe('defects that need no fault', () => {
  test('reversed polarity with the load off: the mixer stands at line voltage inside and its case does not', () => {
    const { intervals } = told({ 'line and neutral reversed': 'yes', 'mixer running': 'no' });
    expect(intervals).toHaveLength(1);
    expect(volts(intervals[0]!, 'mixer.neutral', 'earth')).toBeGreaterThan(115);
    expect(volts(intervals[0]!, 'mixer.line', 'earth')).toBeLessThan(5);
    expect(volts(intervals[0]!, 'mixer.case', 'earth')).toBeLessThan(5);
  });

  test('reversed polarity hides a fault of the line terminal: no current leaves, nothing opens', () => {
    const timeline = told({ ...fault, 'line and neutral reversed': 'yes', 'mixer running': 'no' });
    expect(opened(timeline)).toEqual([]);
  });

  test('reversed polarity and a neutral linked to the case is a short circuit that waits for no fault', () => {
    const timeline = told({ 'line and neutral reversed': 'yes', 'neutral linked to the case': 'yes' });
    expect(kinds(timeline)).toEqual(['begins', 'device-operated']);
    expect(operated(timeline)[0]).toMatchObject({ device: 'mixer breaker', operation: { region: 'magnetic' } });
  });

  test('and with the third wire off it makes the case live without any fault', () => {
    const live = told({
      'line and neutral reversed': 'yes',
      'neutral linked to the case': 'yes',
      'protective conductor open': 'yes',
      'baker touches': 'the case',
    });
    expect(kinds(live)).toEqual(['begins', 'touches', 'person-released']);
    expect(baker(live.intervals[1]!).prospective_V).toBeGreaterThan(115);
  });

  test('an open service neutral lifts 120 V lamps above their voltage when the mixer pulls less on the other leg', () => {
    const lamps = (conditions: Conditions): number => volts(last(told(conditions)), 'lamps.line', 'lamps.neutral');
    const mixer = (conditions: Conditions): number => volts(last(told(conditions)), 'mixer.line', 'mixer.neutral');
    expect(lamps({})).toBeGreaterThan(114);
    expect(lamps({})).toBeLessThan(122);
    const open: Conditions = { 'service neutral open': 'yes' };
    expect(lamps(open)).toBeGreaterThan(130);
    expect(mixer(open)).toBeLessThan(110);
    expect(mixer({ ...open, 'lamps on': 'no' })).toBeLessThan(100);
  });

  test('an open service neutral lets the soil and the water pipe carry what the neutral carried', () => {
    const { intervals } = told({ 'service neutral open': 'yes' });
    expect(amperes(intervals[0]!, 'water pipe')).toBeGreaterThan(0.5);
  });

  test('a neutral linked to the case puts normal current on the protective conductor', () => {
    const { intervals } = told({ 'neutral linked to the case': 'yes' });
    expect(amperes(intervals[0]!, 'mixer run.protective')).toBeGreaterThan(1);
  });
});

describe('the timeline', () => {
  const timeline = told({ ...fault, ...hand, 'protective conductor open': 'yes' });

  test('a moment is in the interval that begins at or before it', () => {
    expect(at(timeline, -5)).toBe(timeline.intervals[0]);
    expect(at(timeline, -0.001)).toBe(timeline.intervals[0]);
    expect(at(timeline, 0)).toBe(timeline.intervals[1]);
    expect(at(timeline, timeline.intervals[2]!.start_s)).toBe(timeline.intervals[2]);
    expect(at(timeline, 1e9)).toBe(last(timeline));
  });

  test('snapshots are plain data', () => {
    for (const { snapshot } of timeline.intervals) expect(JSON.parse(JSON.stringify(snapshot))).toEqual(snapshot);
    expect(timeline.intervals[0]!.snapshot.people).toEqual({ baker: 'away' });
    expect(timeline.intervals[0]!.snapshot.defects).toEqual({ 'line touches the case': 'absent' });
    expect(timeline.intervals[1]!.snapshot.people).toEqual({ baker: 'touching' });
  });

  test('a toggle that is taken back gives the same bits', () => {
    const before = runBakery(fault).intervals;
    runBakery({ ...fault, ...hand, 'service neutral open': 'yes', 'oven running': 'no' });
    expect(runBakery(fault).intervals).toStrictEqual(before);
  });

  test('beyond the horizon nothing is looked for', () => {
    const early = told({ 'line touches the case': '1 ohm' }, { horizon_s: 1 });
    expect(opened(early)).toEqual([]);
    expect(last(early).end_s).toBe(Infinity);
  });

  test('a condition or a horizon that does not exist is refused by name', () => {
    expect(() => runBakery({ 'oven on fire': 'yes' })).toThrow(/oven on fire/);
    expect(() => runBakery({ 'mixer running': 'perhaps' })).toThrow(/perhaps/);
    expect(() => runBakery({}, { horizon_s: NaN })).toThrow(/horizon/);
  });
});
