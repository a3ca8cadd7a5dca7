import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depict, type Depiction, type Ribbon } from '../../src/depiction/index.ts';
import { ribbonWidth_px } from '../../src/depiction/ribbons.ts';
import { anyConditions, anyMoment, pictured, runOf } from './pictured.ts';

const SOLID = { 'line touches the case': 'solid' };

function ribbonOf({ ribbons }: Depiction, id: string): Ribbon {
  const found = ribbons.find((ribbon) => ribbon.id === id);
  if (!found) throw new Error(`no ribbon ${id} among ${ribbons.map((ribbon) => ribbon.id).join(', ')}`);
  return found;
}

test('a ribbon runs in the direction in which its amperes count', () => {
  for (const { id, speed, inPhase_A } of pictured(0.005, SOLID).ribbons)
    expect(Math.sign(speed), id).toBe(Math.sign(inPhase_A));
});

test('in a fault the current leaves the winding on the line and comes home on everything else', () => {
  const picture = pictured(0.005, SOLID);
  const out = ['drop.a', 'main breaker.a', 'mixer run.line', 'cord.line', 'line touches the case'];
  const home = ['cord.protective', 'mixer run.protective', 'drop.neutral'];
  for (const id of out) expect(ribbonOf(picture, id).speed, id).toBeGreaterThan(0);
  for (const id of home) expect(ribbonOf(picture, id).speed, id).toBeLessThan(0);
});

test('the fault’s current is told from working, stray and body current', () => {
  const picture = pictured(0.005, { ...SOLID, 'baker touches': 'the case' });
  const kinds = {
    'mixer run.line': 'fault',
    'bonding jumper': 'fault',
    'drop.neutral': 'fault',
    'oven run.a': 'load',
    lamps: 'load',
    mixer: 'load',
    'service rod': 'stray',
    'transformer.x2 – pole rod': 'stray',
    'baker.right hand': 'person',
  };
  expect(Object.fromEntries(Object.keys(kinds).map((id) => [id, ribbonOf(picture, id).kind]))).toEqual(kinds);
});

test('a neutral linked to the case makes the protective conductor a working one: stray without any fault', () => {
  const picture = pictured(-0.5, { 'neutral linked to the case': 'yes' });
  for (const id of ['neutral linked to the case', 'mixer run.protective', 'bonding jumper'])
    expect(ribbonOf(picture, id).kind, id).toBe('stray');
  expect(ribbonOf(picture, 'mixer run.line').kind).toBe('load');
});

test('line and neutral reversed is still work', () => {
  const picture = pictured(-0.5, { 'line and neutral reversed': 'yes' });
  expect(ribbonOf(picture, 'line and neutral reversed.line').kind).toBe('load');
});

test('no ribbon lies on a way that is open', () => {
  const open = {
    'bonding jumper missing': ['bonding jumper'],
    'service neutral open': ['drop.neutral', 'drop.neutral.load – panel.neutral bar'],
    'protective conductor open': ['mixer run.protective', 'mixer run.protective.load – outlet.protective'],
    'protective conductor to its own rod': ['mixer run.protective', 'mixer run.protective.load – outlet.protective'],
  };
  for (const [condition, ways] of Object.entries(open)) {
    const ids = pictured(0.005, { ...SOLID, [condition]: 'yes' }).ribbons.map(({ id }) => id);
    expect(
      ids.filter((id) => ways.includes(id)),
      condition,
    ).toEqual([]);
  }
  const opened = pictured(0.5, SOLID).ribbons.map(({ id }) => id);
  expect(opened.filter((id) => /^mixer|^cord|^line touches|^gfci/.test(id))).toEqual([]);
});

test('a conductor that is open is drawn with its break, and a moved one ends in the air', () => {
  expect(
    pictured(-0.5, { 'service neutral open': 'yes' }).conductors.find(({ id }) => id === 'drop.neutral')?.broken,
  ).toBeDefined();
  const moved = pictured(-0.5, { 'protective conductor to its own rod': 'yes' }).conductors.map(({ id }) => id);
  expect(moved).toContain('protective conductor to its own rod');
  expect(moved).toContain('wire end, protective conductor to its own rod');
  expect(moved).not.toContain('mixer run.protective.load – outlet.protective');
});

test('the fault’s ribbon runs home within 0.6 s, hop by hop from the fault to the winding', () => {
  const picture = pictured(0.005, SOLID);
  const hops = ['cord.protective', 'mixer run.protective', 'bonding jumper', 'drop.neutral'].map(
    (id) => ribbonOf(picture, id).delay_s,
  );
  expect(hops).toEqual(hops.toSorted((a, b) => a - b));
  expect(new Set(hops).size).toBe(hops.length);
  for (const { delay_s, run_s, id } of picture.ribbons) expect(delay_s + run_s, id).toBeLessThan(0.6 + 1e-9);
  expect(ribbonOf(picture, 'oven run.a').delay_s).toBe(0);
});

test('an opened breaker’s ribbon empties away from the break in both directions', () => {
  const { drains } = pictured(0.5, SOLID);
  const drainOf = (id: string) => drains.find((drain) => drain.id === id);
  expect(drainOf('mixer breaker')?.delay_s).toBe(0);
  expect(drainOf('panel.a – mixer breaker.line')?.from).toBe('end');
  expect(drainOf('mixer run.line')?.from).toBe('start');
  expect(drainOf('cord.line')?.delay_s).toBeGreaterThan(drainOf('mixer run.line')?.delay_s ?? Infinity);
  expect(drainOf('drop.a')).toBeUndefined(); // the oven still works
});

test('a ribbon is 3 px wide at 1 mA, 2.2 px wider for every tenfold, never more than 14', () => {
  expect(ribbonWidth_px(0.001)).toBeCloseTo(3, 12);
  expect(ribbonWidth_px(0.01)).toBeCloseTo(5.2, 12);
  expect(ribbonWidth_px(1)).toBeCloseTo(9.6, 12);
  expect(ribbonWidth_px(400)).toBe(14);
});

test('below half a milliampere nothing is drawn', () => {
  fc.assert(
    fc.property(anyConditions, anyMoment, (conditions, time_s) => {
      for (const { amperes } of depict(runOf(conditions), time_s, 'north-america').ribbons)
        expect(amperes).toBeGreaterThanOrEqual(0.0005);
    }),
    { numRuns: 30, seed: 13 },
  );
});
