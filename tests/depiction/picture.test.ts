import fc from 'fast-check';
import { expect, test } from 'vitest';
import { abs, phasor, sub } from '../../src/electrics/index.ts';
import { depict } from '../../src/depiction/index.ts';
import { at } from '../../src/scenario/index.ts';
import { anyConditions, anyMoment, bakery, pictured, runOf } from './pictured.ts';

const SOLID = { 'line touches the case': 'solid' };
const NO_WIRE = { ...SOLID, 'protective conductor open': 'yes' };

test('hatched metal stands at 25 V or 50 V at least, and its volts above the floor are the solution’s', () => {
  const node = { mixer: 'mixer.case', oven: 'oven.case', panel: 'panel.earth bar', sink: 'sink.metal' };
  fc.assert(
    fc.property(anyConditions, anyMoment, (conditions, time_s) => {
      const timeline = runOf(conditions);
      const { solution } = at(timeline, time_s);
      const { halos } = depict(timeline, time_s, 'north-america');
      expect(halos.map(({ part }) => part).toSorted()).toEqual(Object.keys(node).toSorted());
      for (const { part, volts, level } of halos) {
        const metal = phasor(solution.volts, bakery.node(node[part as keyof typeof node]));
        const floor = phasor(solution.volts, bakery.node('slab.surface'));
        expect(volts).toBeCloseTo(abs(sub(metal, floor)), 9);
        expect(level).toBe(volts >= 50 ? '50' : volts >= 25 ? '25' : 'none');
      }
    }),
    { numRuns: 40, seed: 31 },
  );
});

test('with the third wire open the case is hatched and says its volts', () => {
  const picture = pictured(0.1, NO_WIRE);
  expect(picture.halos.find(({ part }) => part === 'mixer')?.level).toBe('50');
  expect(picture.hotspots.find(({ id }) => id === 'mixer')?.detail).toMatch(/^1\d\d\u00a0V above the floor/);
  expect(picture.twin.join(' ')).toMatch(/Mixer: 1\d\d\u00a0V above the floor/);
});

test('breaker, GFCI and bonding jumper look as they are', () => {
  const drawingOf = (id: string, picture: ReturnType<typeof pictured>) =>
    picture.parts.find((part) => part.id === id)?.drawing;
  expect(drawingOf('mixer breaker', pictured(0.005, SOLID))).toBe('parts/breaker-closed');
  expect(drawingOf('mixer breaker', pictured(0.5, SOLID))).toBe('parts/breaker-open');
  expect(drawingOf('mixer breaker', pictured(0.5, { ...SOLID, 'breaker jammed': 'yes' }))).toBe('parts/breaker-jammed');
  expect(drawingOf('gfci', pictured(-0.5))).toBe('parts/gfci-absent');
  expect(drawingOf('gfci', pictured(-0.5, { 'gfci fitted': 'yes' }))).toBe('parts/gfci-on');
  expect(
    drawingOf(
      'gfci',
      pictured(0.5, { ...NO_WIRE, 'gfci fitted': 'yes', 'baker touches': 'the case', 'baker wears': 'bare feet' }),
    ),
  ).toBe('parts/gfci-tripped');
  expect(drawingOf('bonding jumper', pictured(-0.5, { 'bonding jumper missing': 'yes' }))).toBe(
    'parts/bonding-jumper-missing',
  );
  expect(drawingOf('outlet, reversed', pictured(-0.5, { 'line and neutral reversed': 'yes' }))).toBe(
    'parts/outlet-reversed',
  );
});

test('lamps glow by their volts and the hook turns while the mixer runs', () => {
  const opacity = (id: string, picture: ReturnType<typeof pictured>) =>
    picture.parts.find((part) => part.id === id)?.opacity ?? -1;
  expect(opacity('lamp 1, lit', pictured(-0.5))).toBeGreaterThan(0.9);
  expect(opacity('lamp 1, lit', pictured(-0.5, { 'lamps on': 'no' }))).toBe(0);
  const dim = opacity(
    'lamp 1, lit',
    pictured(-0.5, { 'service neutral open': 'yes', 'mixer running': 'no', 'oven running': 'no' }),
  );
  expect(dim).toBeLessThan(0.5);
  expect(opacity('lamp 1, glare', pictured(-0.5))).toBe(0);
  const open = pictured(-0.5, { 'service neutral open': 'yes' });
  expect(opacity('lamp 1, glare', open)).toBeGreaterThan(0.4);
  expect(open.hotspots.find(({ id }) => id === 'lamps')?.detail).toMatch(/1[12]\d % of its rated volts/);
  const turning = (time_s: number) => pictured(time_s, SOLID).parts.find(({ id }) => id === 'mixer hook')?.turning;
  expect([turning(-0.5), turning(0.5)]).toEqual([true, false]);
});

test('who is held looks held, who lets go starts back, who touches nothing stands by', () => {
  const wet = { ...NO_WIRE, 'baker touches': 'the case', 'baker wears': 'wet shoes' };
  expect(pictured(-0.5, wet).person).toMatchObject({ pose: 'away', reaction: 'calm' });
  expect(pictured(0.1, wet).person).toMatchObject({ pose: 'held', reaction: 'held' });
  expect(pictured(0.1, { ...wet, 'baker touches': 'the case and the sink' }).person.pose).toBe('held both');
  const dry = { ...SOLID, 'breaker jammed': 'yes', 'baker touches': 'the case' };
  expect(pictured(0.1, dry).person).toMatchObject({ pose: 'hand', reaction: 'startled' });
  expect(pictured(2, dry).person).toMatchObject({ pose: 'startle' });
});

test('the volts spent in the winding, going out and coming home add up to the 120 V it gives', () => {
  for (const conditions of [
    SOLID,
    { ...SOLID, 'protective conductor to its own rod': 'yes' },
    { ...SOLID, 'line touches the case': '100 ohm' },
    {},
  ]) {
    const timeline = runOf(conditions);
    const { solution } = at(timeline, 0.001);
    const { profile } = depict(timeline, 0.001, 'north-america');
    const [first, terminal, last] = [profile.out[0], profile.out[1], profile.home.at(-1)];
    const live = phasor(solution.volts, bakery.node('transformer.x1'));
    const back = phasor(solution.volts, bakery.node('transformer.x2'));
    const winding_V = abs({ re: live.re - back.re, im: live.im - back.im });
    expect((terminal?.volts ?? 0) - (last?.volts ?? 0)).toBeCloseTo(winding_V, 1);
    // In phase with the terminals: the winding's own reactance turns its EMF by two degrees at most.
    expect((first?.volts ?? 0) - (last?.volts ?? 0)).toBeGreaterThan(119.8);
    expect((first?.volts ?? 0) - (last?.volts ?? 0)).toBeLessThanOrEqual(120 + 1e-9);
    expect(profile.title).toContain('120');
    expect(profile.out.length).toBeGreaterThan(5);
    expect(profile.home.length).toBeGreaterThan(5);
  }
});

test('the staircase goes out to the right and comes home to the left, aligned with the drawing', () => {
  const { profile } = pictured(0.001, SOLID);
  const [out, home] = [profile.out.map(({ x }) => x), profile.home.map(({ x }) => x)];
  expect(out).toEqual(out.toSorted((a, b) => a - b));
  expect(home).toEqual(home.toSorted((a, b) => b - a));
  expect(out[1]).toBe(237); // the bushing of the transformer
});

test('a hand on the case meets what the bracket says', () => {
  const timeline = runOf({ ...SOLID, 'baker touches': 'the case' });
  const { touch } = depict(timeline, 0.001, 'north-america').profile;
  const { volts } = at(timeline, 0.001).solution;
  const [hand, floor] = [phasor(volts, bakery.node('mixer.case')), phasor(volts, bakery.node('slab.surface'))];
  expect(Math.abs((touch?.to_V ?? 0) - (touch?.from_V ?? 0))).toBeCloseTo(
    abs({ re: hand.re - floor.re, im: hand.im - floor.im }),
    0,
  );
});

test('once the breaker has opened, nothing is spent in its circuit', () => {
  expect(pictured(0.5, SOLID).profile).toMatchObject({ out: [], home: [], ticks: [] });
});

test('an arc burns only while the fault carries current', () => {
  expect(pictured(-0.5, SOLID).spark).toBeUndefined();
  expect(pictured(0.005, SOLID).spark).toBeDefined();
  expect(pictured(0.5, SOLID).spark).toBeUndefined();
});

test('every sound has a caption and comes when its cause does', () => {
  const { sounds } = pictured(0, SOLID);
  expect(sounds.map(({ kind }) => kind)).toEqual(['contact', 'breaker']);
  expect(sounds.map(({ time_s }) => time_s)).toEqual([0, runOf(SOLID).intervals.at(-1)?.start_s]);
  for (const { caption } of sounds) expect(caption.length).toBeGreaterThan(5);
});

test('the two vocabularies name the same things in their own words', () => {
  const timeline = runOf(SOLID);
  const name = (vocabulary: 'north-america' | 'iec') =>
    depict(timeline, 0.001, vocabulary).hotspots.find(({ id }) => id === 'gfci')?.name;
  expect([name('north-america'), name('iec')]).toEqual(['GFCI', 'RCD']);
});

test('a picture costs nothing twice: the same interval is depicted once', () => {
  const timeline = runOf(SOLID);
  expect(depict(timeline, 0.002, 'iec').ribbons).toBe(depict(timeline, 0.008, 'iec').ribbons);
});
