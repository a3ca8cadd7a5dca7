import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveBody, totalImpedance_ohm } from '../../src/body/index.ts';
import type { Area, Body, Contact, Limb, Skin, SolvedBody } from '../../src/body/index.ts';
import type { Phasors } from '../../src/electrics/index.ts';

const apart: readonly Limb[] = ['right hand', 'left hand', 'right foot', 'left foot', 'seat', 'chest', 'back'];
const together: readonly Limb[] = ['right hand', 'left hand', 'feet', 'seat', 'chest', 'back'];
const areas: readonly Area[] = ['large', 'medium', 'small'];
const skins: readonly Skin[] = ['dry', 'water-wet', 'salt-wet'];
const percentiles = [5, 50, 95] as const;
const dry50: Body = { percentile: 50, skin: 'dry' };

const real = (...re: number[]): Phasors => ({ re: Float64Array.from(re), im: new Float64Array(re.length) });
const size = (phasors: Phasors, at: number): number => Math.hypot(phasors.re[at] ?? NaN, phasors.im[at] ?? NaN);
const largest = (phasors: Phasors): number => Math.max(0, ...phasors.re.map((_, at) => size(phasors, at)));

interface Situation {
  readonly body: Body;
  readonly contacts: readonly Contact[];
  readonly volts: Phasors;
  readonly impedance: Phasors;
}

/** A seeded source of chance, 0 to 1. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A person on a passive network: own and shared impedances of 0.01 Ω to 1 GΩ at any angle, 0.01 V to 10 kV, gloves to 100 MΩ; half of
 *  them tame (below 1 kΩ, tens to hundreds of volts) so that the skin's bend is met often. */
function anySituation(next: () => number): Situation {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  const count = pick([1, 2, 2, 2, 3, 3, 3, 3, 4, 5, 6, 7]);
  const tame = next() < 0.5;
  const from = count > together.length || next() < 0.3 ? apart : together;
  const chosen = [...from].sort(() => next() - 0.5).slice(0, count);
  const contacts = chosen.map((limb) => ({
    limb,
    outside_ohm: next() < 0.5 ? 0 : 10 ** (next() * (tame ? 4 : 9) - 1),
    ...(next() < 0.5 ? { skin: pick(skins) } : {}),
    ...(next() < 0.3 ? { area: pick(areas) } : {}),
  }));
  const impedance = { re: new Float64Array(count * count), im: new Float64Array(count * count) };
  const share = (places: readonly number[]): void => {
    const ohm = 10 ** (next() * (tame ? 5 : 11) - 2);
    const angle = next() < 0.5 ? 0 : (next() - 0.5) * Math.PI * 0.999;
    for (const row of places) {
      for (const column of places) {
        impedance.re[row * count + column]! += ohm * Math.cos(angle);
        impedance.im[row * count + column]! += ohm * Math.sin(angle);
      }
    }
  };
  const places = contacts.map((_, place) => place);
  for (const place of places) share([place]);
  if (next() < 0.5) share(places.slice(0, 2));
  if (next() < 0.3) share(places.slice(1));
  if (next() < 0.3) share(places);
  const volts = { re: new Float64Array(count), im: new Float64Array(count) };
  const common = next() < 0.3 ? 10 ** (next() * 4) : 0;
  for (const place of places) {
    const volt = next() < 0.1 ? 0 : 10 ** (tame ? next() * 3 + 0.5 : next() * 6 - 2);
    const angle = next() < 0.5 ? pick([0, Math.PI]) : next() * 2 * Math.PI;
    volts.re[place] = common + volt * Math.cos(angle);
    volts.im[place] = volt * Math.sin(angle);
  }
  const body = { percentile: pick(percentiles), skin: pick(skins), direct: next() < 0.2 };
  return { body, contacts, volts, impedance };
}

const solve = ({ body, contacts, volts, impedance }: Situation, start?: Phasors): SolvedBody =>
  solveBody(body, contacts, volts, impedance, undefined, start);

/** What the network and the limbs say about the trunk, contact by contact: worst disagreement over the largest voltage in it. */
function disagreement({ contacts, volts, impedance }: Situation, solved: SolvedBody): number {
  const count = contacts.length;
  let scale = Number.MIN_VALUE;
  const trunk = contacts.map((_, row) => {
    const ohm = solved.limb_ohm[row] ?? NaN;
    let re = (volts.re[row] ?? NaN) - ohm * (solved.amperes.re[row] ?? NaN);
    let im = (volts.im[row] ?? NaN) - ohm * (solved.amperes.im[row] ?? NaN);
    scale = Math.max(scale, size(volts, row));
    for (let column = 0; column < count; column++) {
      const at = row * count + column;
      const [r = NaN, x = NaN] = [impedance.re[at], impedance.im[at]];
      const [a = NaN, b = NaN] = [solved.amperes.re[column], solved.amperes.im[column]];
      re -= r * a - x * b;
      im -= r * b + x * a;
      scale = Math.max(scale, Math.hypot(r, x) * Math.hypot(a, b));
    }
    return { re, im };
  });
  const first = trunk[0];
  return Math.max(0, ...trunk.map(({ re, im }) => (first ? Math.hypot(re - first.re, im - first.im) : 0))) / scale;
}

test('a body has one solution, found from any start: 50 000 seeded situations', () => {
  const next = chance(60_479);
  let [apart, wrong, leak, most, steps] = [0, 0, 0, 0, 0];
  for (let situations = 0; situations < 50_000; situations++) {
    const situation = anySituation(next);
    const solved = solve(situation);
    const whole = largest(solved.amperes);
    most = Math.max(most, solved.iterations);
    steps += solved.iterations;
    wrong = Math.max(wrong, disagreement(situation, solved));
    const sum = (parts: Float64Array): number => parts.reduce((total, part) => total + part, 0);
    if (whole > 0) leak = Math.max(leak, Math.hypot(sum(solved.amperes.re), sum(solved.amperes.im)) / whole);
    const reach = 10 ** (next() * 16 - 10);
    const anywhere = {
      re: solved.amperes.re.map(() => (next() - 0.5) * reach),
      im: solved.amperes.im.map(() => (next() - 0.5) * reach),
    };
    const again = solve(situation, anywhere);
    for (let at = 0; at < solved.limb_ohm.length; at++) {
      const difference = Math.hypot(
        (solved.amperes.re[at] ?? NaN) - (again.amperes.re[at] ?? NaN),
        (solved.amperes.im[at] ?? NaN) - (again.amperes.im[at] ?? NaN),
      );
      if (whole > 1e-12) apart = Math.max(apart, difference / whole);
      apart = Math.max(apart, Math.abs((again.limb_ohm[at] ?? NaN) / (solved.limb_ohm[at] ?? NaN) - 1));
    }
  }
  expect(apart).toBeLessThanOrEqual(1e-9);
  expect(wrong).toBeLessThanOrEqual(1e-11);
  expect(leak).toBeLessThanOrEqual(1e-12);
  expect(most).toBeLessThanOrEqual(20);
  expect(steps / 50_000).toBeLessThan(4);
}, 60_000);

describe('a hand and the other hand', () => {
  const hands = (volts: number, source_ohm: number, body: Body, outside_ohm = 0): SolvedBody =>
    solveBody(
      body,
      [
        { limb: 'right hand', outside_ohm },
        { limb: 'left hand', outside_ohm: 0 },
      ],
      real(volts, 0),
      real(source_ohm, 0, 0, 0),
    );
  const voltage = fc.double({ min: 0, max: 2000, noNaN: true });
  const anyBody = fc.record({ percentile: fc.constantFrom(...percentiles), skin: fc.constantFrom(...skins) });

  test('meet the tabled impedance at any touch voltage', () => {
    fc.assert(
      fc.property(voltage, anyBody, (volts, body) => {
        const { amperes, touch_V, limb_ohm } = hands(volts, 0, body);
        const ohm = (limb_ohm[0] ?? NaN) + (limb_ohm[1] ?? NaN);
        expect(ohm / totalImpedance_ohm(volts, body)).toBeCloseTo(1, 9);
        expect(touch_V).toBeCloseTo(volts, 9);
        expect((amperes.re[0] ?? NaN) * ohm).toBeCloseTo(volts, 9);
      }),
      { numRuns: 1000, seed: 5 },
    );
  });

  test('carry more at a higher voltage and less through a glove', () => {
    fc.assert(
      fc.property(
        voltage,
        voltage,
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        anyBody,
        (one, other, glove, body) => {
          const [low, high] = [Math.min(one, other), Math.max(one, other)];
          const current = (volts: number, outside: number): number => size(hands(volts, 10, body, outside).amperes, 0);
          expect(current(low, 0)).toBeLessThanOrEqual(current(high, 0) * (1 + 1e-12));
          expect(current(high, glove)).toBeLessThanOrEqual(current(high, 0) * (1 + 1e-12));
        },
      ),
      { numRuns: 1000, seed: 6 },
    );
  });

  test('carry no less when wetter, and no less in a person of lower percentile', () => {
    fc.assert(
      fc.property(voltage, (volts) => {
        const current = (percentile: 5 | 50 | 95, skin: Skin): number =>
          size(hands(volts, 0, { percentile, skin }).amperes, 0);
        for (const percentile of percentiles) {
          expect(current(percentile, 'water-wet')).toBeGreaterThanOrEqual(current(percentile, 'dry') * (1 - 1e-12));
          expect(current(percentile, 'salt-wet')).toBeGreaterThanOrEqual(
            current(percentile, 'water-wet') * (1 - 1e-12),
          );
        }
        for (const skin of skins) {
          expect(current(5, skin)).toBeGreaterThanOrEqual(current(50, skin));
          expect(current(50, skin)).toBeGreaterThanOrEqual(current(95, skin));
        }
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  test('behind 1 GΩ get 120 nA and no touch voltage to speak of', () => {
    const { amperes, prospective_V, touch_V } = hands(120, 1e9, dry50);
    expect(amperes.re[0]).toBeCloseTo(120 / (1e9 + 3250), 15);
    expect(prospective_V).toBe(120);
    expect(touch_V).toBeLessThan(3);
  });

  test('behind 0.01 Ω get all the voltage', () => {
    const { touch_V, iterations } = hands(120, 0.01, dry50);
    expect(touch_V).toBeCloseTo(120, 2);
    expect(iterations).toBeLessThan(10);
  });
});

test('dry shoes keep nearly all of the prospective voltage off the body', () => {
  const { touch_V, prospective_V, limb_ohm } = solveBody(
    dry50,
    [
      { limb: 'right hand', outside_ohm: 0 },
      { limb: 'feet', outside_ohm: 1e6 },
    ],
    real(120, 0),
    real(0, 0, 0, 0),
  );
  expect(prospective_V).toBe(120);
  expect(touch_V).toBeCloseTo((120 * 2437.5) / (1e6 + 2437.5), 6);
  // Hand to both feet at this small current: three quarters of 3250 Ω.
  expect(limb_ohm[0]).toBeCloseTo(1625, 9);
  expect(limb_ohm[1]).toBeCloseTo(1e6 + 812.5, 6);
});

test('prospective voltage is between the things touched, touch voltage between the skins, whatever all of them share', () => {
  const volts = { re: Float64Array.of(1060, 1000), im: Float64Array.of(580, 500) };
  const { amperes, limb_ohm, prospective_V, touch_V } = solveBody(
    { percentile: 95, skin: 'dry' },
    [
      { limb: 'right hand', outside_ohm: 2000 },
      { limb: 'left hand', outside_ohm: 3000 },
    ],
    volts,
    real(0, 0, 0, 0),
  );
  expect(prospective_V).toBeCloseTo(100, 9);
  const inside_ohm = (limb_ohm[0] ?? NaN) - 2000 + (limb_ohm[1] ?? NaN) - 3000;
  expect(touch_V).toBeCloseTo((100 * inside_ohm) / (inside_ohm + 5000), 9);
  expect(inside_ohm).toBeCloseTo(totalImpedance_ohm(touch_V, { percentile: 95, skin: 'dry' }), 6);
  expect(size(amperes, 0)).toBeCloseTo(touch_V / inside_ohm, 12);
});

test('one wet hand counts as wet, the rest of the person stays dry', () => {
  const { limb_ohm } = solveBody(
    dry50,
    [
      { limb: 'right hand', outside_ohm: 0, skin: 'salt-wet' },
      { limb: 'left hand', outside_ohm: 0 },
    ],
    real(5, 0),
    real(0, 0, 0, 0),
  );
  expect(limb_ohm[0]).toBeCloseTo(1300 / 2, 9);
  expect(limb_ohm[1]).toBeCloseTo(3250 / 2, 9);
});

test('both hands on one case share what goes to the feet', () => {
  const { amperes } = solveBody(
    dry50,
    (['right hand', 'left hand', 'feet'] as const).map((limb) => ({ limb, outside_ohm: 0 })),
    real(120, 120, 0),
    real(1, 1, 0, 1, 1, 0, 0, 0, 30),
  );
  expect(amperes.re[0]).toBeCloseTo(amperes.re[1] ?? NaN, 12);
  expect(amperes.re[2]).toBeCloseTo(-2 * (amperes.re[0] ?? NaN), 12);
});

test('a current a quarter turn behind is as large as one in phase', () => {
  const contacts: readonly Contact[] = [
    { limb: 'right hand', outside_ohm: 0 },
    { limb: 'feet', outside_ohm: 100 },
  ];
  const turned = { re: new Float64Array(2), im: Float64Array.of(120, 0) };
  const straight = solveBody(dry50, contacts, real(120, 0), real(1, 0, 0, 1));
  const quarter = solveBody(dry50, contacts, turned, real(1, 0, 0, 1));
  expect(quarter.amperes.im[0]).toBeCloseTo(straight.amperes.re[0] ?? NaN, 12);
  expect(quarter.amperes.re[0]).toBeCloseTo(0, 12);
});

test('one contact alone carries nothing, nor does none', () => {
  const one = solveBody(dry50, [{ limb: 'feet', outside_ohm: 500 }], real(120), real(10));
  expect(one.amperes.re[0]).toBe(0);
  expect(one).toMatchObject({ prospective_V: 0, touch_V: 0, iterations: 0 });
  expect(one.limb_ohm[0]).toBe(500 + 3250 / 4);
  expect(solveBody(dry50, [], real(), real()).amperes.re).toHaveLength(0);
});

test('a contact through nothing but air is no contact', () => {
  const { amperes, limb_ohm, touch_V } = solveBody(
    dry50,
    [
      { limb: 'right hand', outside_ohm: 0 },
      { limb: 'left hand', outside_ohm: Infinity },
      { limb: 'feet', outside_ohm: 0 },
    ],
    real(0, 500, 0),
    real(1, 0, 0, 0, 1, 0, 0, 0, 1),
  );
  expect([...amperes.re]).toEqual([0, 0, 0]);
  expect(limb_ohm[1]).toBe(Infinity);
  expect(touch_V).toBe(0);
});

test.each([
  [
    'eight contacts',
    () =>
      solveBody(
        dry50,
        [...apart, 'feet' as const].map((limb) => ({ limb, outside_ohm: 0 })),
        real(1, 2, 3, 4, 5, 6, 7, 8),
        real(),
      ),
    'at most 7',
  ],
  ['a glove below zero', () => solveBody(dry50, [{ limb: 'feet', outside_ohm: -1 }], real(1), real(1)), 'feet: -1'],
  [
    'too few impedances',
    () => solveBody(dry50, [{ limb: 'feet', outside_ohm: 1 }], real(1), real()),
    '1 contacts need',
  ],
  [
    'a voltage that is not a number',
    () =>
      solveBody(
        dry50,
        [
          { limb: 'feet', outside_ohm: 1 },
          { limb: 'left hand', outside_ohm: 1 },
        ],
        real(NaN, 0),
        real(1, 0, 0, 1),
      ),
    'must be finite',
  ],
  ['a negative touch voltage', () => totalImpedance_ohm(-1, dry50), '-1 V'],
])('%s is refused by name', (_, act, words) => {
  expect(act).toThrow(RangeError);
  expect(act).toThrow(words);
});
