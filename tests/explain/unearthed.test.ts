import { expect, test } from 'vitest';
import { tellVerdicts, verdicts, type Verdict } from '../../src/explain/index.ts';
import { initialConditions, type Build } from '../../src/installation/index.ts';
import { unearthed } from './unearthed.ts';

function all(build: Build): readonly Verdict[] {
  return verdicts(build, initialConditions(build.installation));
}

/** Of both faults, at the first machine. */
function second(build: Build, kind: Verdict['kind']): Verdict | undefined {
  return all(build).find((one) => one.kind === kind && one.part === 'first machine' && one.other !== undefined);
}

const PHASE_V = 400 / Math.sqrt(3);

test('a first fault passes only the charging current of all three lines, and the case stays far below 50 V', () => {
  const found = all(unearthed({ monitor: false }));
  const drawn = found.find(({ kind, part }) => kind === 'fault-to-metal' && part === 'first machine');
  // 3·ω·C·U0, closed form.
  expect(drawn?.value).toBeCloseTo(3 * 2 * Math.PI * 50 * 1e-7 * PHASE_V, 4);
  const first = found.find(({ clause }) => clause === 'touch.first');
  expect(first).toMatchObject({ part: 'first machine', holds: 'yes', limit: 50 });
  expect(first?.value).toBeLessThan(1);
});

test('a second fault on another line is driven by the volts between lines round both circuits: U/(2·Zs)', () => {
  const fault = second(unearthed(), 'second-fault');
  expect(fault?.other).toBe('second machine');
  expect((fault?.value ?? 0) / (400 / 2)).toBeCloseTo(1, 2);
  expect(second(unearthed(), 'loop')?.value).toBeCloseTo(2, 2);
});

test('where the neutral is distributed a fault of it on the other circuit draws least: U0/(2·Zs)', () => {
  const build = unearthed({ neutral: true });
  expect((second(build, 'second-fault')?.value ?? 0) / (PHASE_V / 2)).toBeCloseTo(1, 2);
  // IEC 60364-4-41 411.6.4: half the volts to neutral, not between lines; √3 less for the same device.
  const [withIt, without] = [second(build, 'loop'), second(unearthed(), 'loop')];
  expect((without?.limit ?? 0) / (withIt?.limit ?? 1)).toBeCloseTo(Math.sqrt(3), 6);
  // C 10 A surely opens at ten times its rating.
  expect(without?.limit).toBeCloseTo((0.95 * 400) / 100, 2);
});

test('the same two circuits may clear a second fault between lines and not one to neutral', () => {
  const long = { line: { resistance_ohm: 0.8 }, protective: { resistance_ohm: 0.8 } };
  expect(second(unearthed(long), 'disconnection')).toMatchObject({ holds: 'yes', limit: 0.4, clause: 'time.it' });
  // 125 A, and 72 A: C 10 A surely opens at 100 A at once, and may from 50 A on.
  const toNeutral = unearthed({ ...long, neutral: true });
  expect(second(toNeutral, 'disconnection')).toMatchObject({ holds: 'maybe', limit: 0.4 });
  expect(second(toNeutral, 'loop')).toMatchObject({ holds: 'maybe', clause: 'loop.it' });
  expect(second(toNeutral, 'case-volts')).toMatchObject({ holds: 'maybe' });
});

test('the case stands meanwhile at what its share of the loop drops', () => {
  // Equal wires all round: a quarter of the volts on each; the earth bar lies half way between both cases.
  expect((second(unearthed(), 'case-volts')?.value ?? 0) / 100).toBeCloseTo(1, 2);
});

test('cases on rods of their own are held to the times of TT, and no breaker keeps them', () => {
  const apart = unearthed({ rods_ohm: 20 });
  expect((second(apart, 'second-fault')?.value ?? 0) / (400 / 42)).toBeCloseTo(1, 2);
  expect(second(apart, 'loop')).toBeUndefined();
  expect(second(apart, 'disconnection')).toMatchObject({ holds: 'no', limit: 0.2, clause: 'time.it.apart' });
  expect(second(apart, 'case-volts')?.holds).toBe('no');
});

test('an insulation monitor tells the first fault; without one nobody does', () => {
  const monitor = (build: Build) => all(build).find(({ kind }) => kind === 'monitor');
  // IEC 61557-8, from memory: within 10 s.
  expect(monitor(unearthed())).toMatchObject({ part: 'winding', device: 'monitor', value: 10, holds: 'yes' });
  expect(monitor(unearthed({ monitor: false }))).toMatchObject({ value: Infinity, holds: 'no' });
});

test('both vocabularies tell the second fault and where the other one is', () => {
  const build = unearthed({ neutral: true });
  for (const words of ['iec', 'north-america'] as const) {
    const { rows, clauses } = tellVerdicts(build, all(build), words);
    const said = rows.map(({ what }) => what).join('\n');
    expect(said).toMatch(/second fault, in the second machine/);
    expect(said).toMatch(/Second fault ended by the first (circuit-)?breaker in/);
    expect(said).toMatch(/First fault told by the monitor within/);
    expect(clauses.join(' ')).toMatch(/411\.6\.4/);
  }
});
