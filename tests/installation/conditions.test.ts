import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balance, createSolver } from '../../src/electrics/index.ts';
import { initialConditions, setConditions, type Conditions } from '../../src/installation/index.ts';
import { bakeryText, built, solved } from './places.ts';

const bakery = built(bakeryText);
const solver = createSolver(bakery.network);

/** Any choice of an option for every condition of the bakery. */
const anyConditions: fc.Arbitrary<Conditions> = fc.record(
  Object.fromEntries(
    Object.entries(bakery.installation.conditions).map(([name, { options }]) => [name, fc.constantFrom(...options)]),
  ),
);
const anyOpen = fc.uniqueArray(fc.constantFrom(...bakery.devices.map(({ name }) => name)));
const anyLimbs = fc.record(
  Object.fromEntries(
    (bakery.people[0]?.limbs ?? []).map(({ branch }) => [branch, fc.double({ min: 300, max: 1e10, noNaN: true })]),
  ),
  { requiredKeys: [] },
);

describe('any combination of conditions', () => {
  test('has finite values, a finite solution, and balances', () => {
    fc.assert(
      fc.property(anyConditions, anyOpen, anyLimbs, (conditions, open, limbs) => {
        const limb_ohm = new Map(Object.entries(limbs).map(([at, ohm]) => [Number(at), Number(ohm)]));
        const values = bakery.values(conditions, new Set(open), limb_ohm);
        expect(values.impedance.re.every((ohm) => Number.isFinite(ohm) && ohm >= 1e-5 && ohm <= 1e10)).toBe(true);
        expect(values.impedance.im.every(Number.isFinite)).toBe(true);
        const solution = solver.solve(values);
        expect([...solution.amperes.re, ...solution.amperes.im].every(Number.isFinite)).toBe(true);
        const { kirchhoff, power } = balance(bakery.network, values, solution);
        expect(kirchhoff).toBeLessThan(1e-9);
        expect(power).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  test('gives the same values whatever was asked before', () => {
    fc.assert(
      fc.property(anyConditions, anyConditions, anyOpen, (one, other, open) => {
        const first = bakery.values(one, new Set(open));
        bakery.values(other, new Set(bakery.devices.map(({ name }) => name)));
        expect(bakery.values(one, new Set(open))).toEqual(first);
      }),
      { numRuns: 50 },
    );
  });

  test('leaves the structure alone: no condition adds or removes a branch', () => {
    expect(bakery.network.branches.length).toBe(bakery.branches.length);
    expect(bakery.values({}, new Set()).impedance.re.length).toBe(bakery.branches.length);
  });
});

describe('each condition changes exactly its own branches', () => {
  const base = bakery.values({}, new Set()).impedance.re;
  const changed = (conditions: Conditions, open: readonly string[] = []) => {
    const { re } = bakery.values(conditions, new Set(open)).impedance;
    return Object.fromEntries(
      bakery.branches.flatMap(({ name }, at) => (re[at] === base[at] ? [] : [[name, re[at]]])),
    ) as Record<string, number>;
  };
  const JOINT = 0.0005;
  const GAP = 1e9;

  test.each<[string, string, Record<string, unknown>]>([
    ['line touches the case', 'solid', { 'line touches the case': 0.01 }],
    ['line touches the case', '1 ohm', { 'line touches the case': 1 }],
    ['line touches the case', '100 ohm', { 'line touches the case': 100 }],
    ['protective conductor open', 'yes', { 'mixer run.protective.load – outlet.protective': GAP }],
    ['bonding jumper missing', 'yes', { 'bonding jumper': GAP }],
    ['service neutral open', 'yes', { 'drop.neutral': GAP }],
    [
      'line and neutral reversed',
      'yes',
      {
        'mixer run.line.load – outlet.line': GAP,
        'mixer run.neutral.load – outlet.neutral': GAP,
        'line and neutral reversed.line': JOINT,
        'line and neutral reversed.neutral': JOINT,
      },
    ],
    ['neutral linked to the case', 'yes', { 'neutral linked to the case': JOINT }],
    [
      'protective conductor to its own rod',
      'yes',
      { 'mixer run.protective.load – outlet.protective': GAP, 'protective conductor to its own rod': 0.02 },
    ],
    ['loose joint', 'yes', { 'mixer run.protective.load – outlet.protective': 2 + JOINT }],
    ['breaker oversized', 'yes', {}],
    ['breaker jammed', 'yes', {}],
    ['gfci fitted', 'yes', {}],
    ['mixer running', 'yes', { mixer: expect.closeTo(120 ** 2 / 750, 9) as unknown }],
    ['oven running', 'yes', { oven: expect.closeTo(240 ** 2 / 5000, 9) as unknown }],
    ['lamps on', 'yes', { lamps: 36 }],
    ['baker touches', 'the case', {}],
    ['baker wears', 'bare feet', {}],
  ])('%s: %s', (name, option, expected) => {
    expect(changed({ [name]: option })).toEqual(expected);
  });

  test('an open device opens all its poles', () => {
    expect(changed({}, ['main breaker'])).toEqual({ 'main breaker.a': GAP, 'main breaker.b': GAP });
    expect(changed({}, ['gfci'])).toEqual({ 'gfci.line': GAP, 'gfci.neutral': GAP });
  });

  test('a conductor that is both loose and off is off', () => {
    const place = 'mixer run.protective.load – outlet.protective';
    expect(changed({ 'loose joint': 'yes', 'protective conductor open': 'yes' })).toEqual({ [place]: GAP });
    expect(changed({ 'loose joint': 'yes', 'protective conductor to its own rod': 'yes' })[place]).toBe(GAP);
  });

  test('the current of a motor with a power factor lags while it runs', () => {
    const lagging = built(bakeryText.replace('power_W: 750,', 'power_W: 750, power_factor: 0.8,'));
    const at = lagging.branch('mixer');
    // 750 W at 120 V and power factor 0.8: |Z| = 15.36 Ω, R = 12.288 Ω, X = 9.216 Ω.
    expect(lagging.values({ 'mixer running': 'yes' }, new Set()).impedance.re[at]).toBeCloseTo(12.288, 9);
    expect(lagging.values({ 'mixer running': 'yes' }, new Set()).impedance.im[at]).toBeCloseTo(9.216, 9);
    expect(lagging.values({ 'mixer running': 'no' }, new Set()).impedance.im[at]).toBe(0);
  });

  test('what is unknown is refused by name', () => {
    const none = new Set<string>();
    expect(() => bakery.values({ 'loos joint': 'yes' }, none)).toThrow(/condition called "loos joint"/);
    expect(() => bakery.values({ 'loose joint': 'maybe' }, none)).toThrow(/"maybe"/);
    expect(() => bakery.values({}, new Set(['fuse']))).toThrow(/device called "fuse"/);
    expect(() => bakery.branch('mixer run')).toThrow(/branch called "mixer run"/);
    expect(() => bakery.node('mixer.lid')).toThrow(/terminal called "mixer.lid"/);
    expect(() => bakery.values({ toString: 'yes' }, none)).toThrow(RangeError);
  });
});

describe('choosing conditions by what somebody writes', () => {
  const choose = (...written: readonly string[]) => setConditions(bakery.installation, written);

  test('a bare name switches on; the rest stays as the place opens', () => {
    expect(choose('loose joint')).toEqual({
      ok: true,
      conditions: { ...initialConditions(bakery.installation), 'loose joint': 'yes' },
    });
  });

  test('a bare fault is its first kind, and options go after an equals sign', () => {
    expect(choose('line touches the case')).toMatchObject({ conditions: { 'line touches the case': 'solid' } });
    expect(choose('line touches the case = 1 ohm', 'mixer running=no')).toMatchObject({
      conditions: { 'line touches the case': '1 ohm', 'mixer running': 'no' },
    });
  });

  test('every mistake is told at once, with what was probably meant', () => {
    expect(choose('lose joint', 'baker wears=wet shoe', 'mixer running=yes', 'zebra')).toEqual({
      ok: false,
      problems: [
        { written: 'lose joint', message: 'there is no condition "lose joint"', instead: 'loose joint' },
        {
          written: 'baker wears=wet shoe',
          message: '"baker wears" has no option "wet shoe"; it has dry shoes, wet shoes, bare feet',
          instead: 'baker wears=wet shoes',
        },
        {
          written: 'zebra',
          message: 'there is no condition "zebra"',
          instead: expect.stringContaining('loose joint') as string,
        },
      ],
    });
  });

  test('names that every object has are no conditions', () => {
    expect(choose('constructor', '__proto__=yes')).toMatchObject({ ok: false });
  });
});

describe('devices of the bakery', () => {
  const device = (name: string) => {
    const found = bakery.devices.find((each) => each.name === name);
    if (found === undefined) throw new Error(name);
    return found;
  };

  test('the mixer breaker is 20 A by UL 489, or 40 A when oversized', () => {
    expect(device('mixer breaker').settings({})).toEqual({ family: 'ul489', rating_A: 20 });
    expect(device('mixer breaker').settings({ 'breaker oversized': 'yes' })).toEqual({ family: 'ul489', rating_A: 40 });
    expect(device('oven breaker').settings({ 'breaker oversized': 'yes' })).toEqual({ family: 'ul489', rating_A: 40 });
    expect(device('lamp breaker').settings({ 'breaker oversized': 'yes' })).toEqual({ family: 'ul489', rating_A: 15 });
  });

  test('only the mixer breaker can jam, and only the GFCI has to be fitted', () => {
    expect(device('mixer breaker').jammed({ 'breaker jammed': 'yes' })).toBe(true);
    expect(device('mixer breaker').jammed({})).toBe(false);
    expect(device('main breaker').jammed({ 'breaker jammed': 'yes' })).toBe(false);
    expect(device('mixer breaker').fitted({})).toBe(true);
    expect(device('gfci').fitted({})).toBe(false);
    expect(device('gfci').fitted({ 'gfci fitted': 'yes' })).toBe(true);
  });

  test('the GFCI compares its line with its neutral and opens both', () => {
    const { poles, residual } = device('gfci');
    expect(poles).toEqual([bakery.branch('gfci.line'), bakery.branch('gfci.neutral')]);
    expect(residual).toEqual([
      { branch: bakery.branch('gfci.line'), sign: 1 },
      { branch: bakery.branch('gfci.neutral'), sign: 1 },
    ]);
    // In ordinary work they cancel to the leakage of sound insulation.
    const { amperes } = solved(bakery).solution;
    const sum = (part: Float64Array) =>
      (residual ?? []).reduce((all, { branch, sign }) => all + sign * (part[branch] ?? NaN), 0);
    expect(Math.hypot(sum(amperes.re), sum(amperes.im))).toBeLessThan(1e-6);
  });
});

describe('the baker', () => {
  const baker = bakery.people[0];

  test('can touch the mixer and the sink and stands on the slab', () => {
    expect(
      baker?.limbs.map(({ limb, branch, node }) => [limb, bakery.branches[branch]?.name, bakery.network.nodes[node]]),
    ).toEqual([
      ['right hand', 'baker.right hand', 'mixer.case'],
      ['left hand', 'baker.left hand', 'sink.metal'],
      ['feet', 'baker.feet', 'slab.surface'],
    ]);
    expect(bakery.network.nodes[baker?.trunk ?? -1]).toBe('baker.trunk');
  });

  test('touches what the condition says, in the shoes that are worn: two side by side', () => {
    const limbs = (conditions: Conditions) => baker?.contacts(conditions).contacts;
    expect(limbs({})).toEqual([]);
    expect(limbs({ 'baker touches': 'the case' })).toEqual([
      { limb: 'right hand', outside_ohm: 0 },
      { limb: 'feet', outside_ohm: 30_000 },
    ]);
    expect(limbs({ 'baker touches': 'the case and the sink', 'baker wears': 'wet shoes' })).toEqual([
      { limb: 'right hand', outside_ohm: 0 },
      { limb: 'left hand', outside_ohm: 0 },
      { limb: 'feet', outside_ohm: 250, skin: 'water-wet' },
    ]);
    expect(limbs({ 'baker touches': 'the case', 'baker wears': 'bare feet' })?.[1]).toEqual({
      limb: 'feet',
      outside_ohm: 0,
    });
    expect(baker?.contacts({}).body).toMatchObject({ percentile: 50, skin: 'dry' });
  });

  test('touching nothing carries nothing, even where the case is live', () => {
    const live = solved(bakery, { 'line touches the case': 'solid', 'protective conductor open': 'yes' });
    expect(live.amperes('baker.right hand')).toBeLessThan(1e-7);
  });
});
