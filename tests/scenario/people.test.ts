import { describe, expect, test } from 'vitest';
import type { Body, Limb } from '../../src/body/index.ts';
import { byCurrent } from '../../src/body/impedance.ts';
import { limbsTo } from '../../src/body/person.ts';
import { createSolver } from '../../src/electrics/index.ts';
import { compile, installationSchema } from '../../src/installation/index.ts';
import type { Build } from '../../src/installation/index.ts';
import { at, run } from '../../src/scenario/index.ts';
import { steadyState } from '../../src/scenario/steadyState.ts';
import { electricsWrong } from './holds.ts';

/** 230 V behind 0.5 Ω, earthed through 1 Ω; one holds the line, and the other takes hold of that one (invented values). */
function bench(ada: object, ben: object, more: object = {}): Build {
  return compile(
    installationSchema.parse({
      place: 'A bench',
      region: 'iec',
      parts: {
        supply: { kind: 'source', emf_V: 230, resistance_ohm: 0.5 },
        electrode: { kind: 'impedance', between: ['supply.minus', 'earth'], resistance_ohm: 1, as: 'electrode' },
        'wet ground': { kind: 'floor', resistance_ohm: 200 },
        'dry boards': { kind: 'floor', resistance_ohm: 'dry wood' },
        Ada: { kind: 'person', 'right hand': 'supply.plus', 'held at': ['left hand'], ...ada },
        Ben: { kind: 'person', 'right hand': 'Ada.left hand', ...ben },
        ...more,
      },
    }),
  );
}

function limbs(build: Build, who = 0) {
  const timeline = run(build, {});
  const moment = at(timeline, 0.001).people[who];
  if (moment === undefined) throw new Error('nobody');
  return moment;
}

describe('somebody who takes hold of another', () => {
  test('is the way home when the other stands on dry boards and the helper on wet ground', () => {
    const build = bench({ feet: 'dry boards' }, { feet: 'wet ground' });
    const [ada, ben] = [limbs(build, 0), limbs(build, 1)];
    expect(ada.touching).toEqual(['right hand', 'feet']);
    expect(ben.touching).toEqual(['right hand', 'feet']);
    expect(ben.body_A).toBeGreaterThan(0.05);
    expect(ada.limbs_A['left hand']! / ben.body_A).toBeCloseTo(1, 6);
    expect(ada.body_A).toBeCloseTo(ada.limbs_A['left hand']! + ada.limbs_A.feet!, 9);
    // Heart: most of it crosses from hand to hand in the one, and goes down from the right hand in the other.
    expect(ada.heartFactor).toBeCloseTo(0.4, 1);
    expect(ben.heartFactor).toBeCloseTo(0.8, 6);
  });

  test('has two skins and three limbs in the way: less current than the other would have on the same ground', () => {
    const chain = limbs(bench({ feet: 'dry boards' }, { feet: 'wet ground' }), 1).body_A;
    const alone = limbs(bench({ feet: 'wet ground' }, { feet: 'dry boards' }), 0).body_A;
    expect(chain).toBeLessThan(0.7 * alone);
    expect(chain).toBeGreaterThan(0.2 * alone);
  });

  test('gets nothing in rubber gloves or from a dry floor', () => {
    const floor = limbs(bench({ feet: 'wet ground' }, { feet: 'dry boards' }), 1).body_A;
    expect(floor).toBeLessThan(0.001);
    const gloved = compile(
      installationSchema.parse({
        ...bench({ feet: 'dry boards' }, { feet: 'wet ground' }).installation,
        conditions: {
          'Ben wears': { kind: 'gloves', person: 'Ben', per_hand_ohm: { rubber: 'rubber glove of class 0', none: 0 } },
        },
      }),
    );
    expect(limbs(gloved, 1).body_A).toBeLessThan(0.0005);
    expect(at(run(gloved, { 'Ben wears': 'none' }), 0.001).people[1]!.body_A).toBeGreaterThan(0.05);
  });

  test('takes hold of the back as well, which has skin but no limb', () => {
    const hand = limbs(bench({ feet: 'dry boards' }, { feet: 'wet ground' }), 1).body_A;
    const back = limbs(
      bench({ feet: 'dry boards', 'held at': ['back'] }, { feet: 'wet ground', 'right hand': 'Ada.back' }),
      1,
    );
    expect(back.body_A).toBeGreaterThan(1.05 * hand);
  });
});

test('a mat under both feet, shoes and gloves add up in the way of each', () => {
  const build = compile(
    installationSchema.parse({
      ...bench({ 'right foot': 'wet ground', 'left foot': 'dry boards' }, { feet: 'wet ground' }).installation,
      conditions: {
        'Ada wears': { kind: 'footwear', person: 'Ada', per_foot_ohm: { boots: 'antistatic shoe', shoes: 3000 } },
        'Ben wears': { kind: 'footwear', person: 'Ben', per_foot_ohm: { shoes: 3000 } },
        mat: { kind: 'mat', person: 'Ben', both_feet_ohm: { none: 0, rubber: 'rubber mat', cloth: 700 } },
        grip: {
          kind: 'gloves',
          person: 'Ada',
          per_hand_ohm: { bare: 0, damp: 'damp leather glove' },
          skin: { damp: 'water-wet' },
          area: { bare: 'small' },
        },
      },
    }),
  );
  const [ada, ben] = build.people;
  const chosen = { mat: 'cloth', grip: 'damp', 'Ada wears': 'shoes' };
  expect(ben!.contacts(chosen).contacts[1]).toEqual({ limb: 'feet', outside_ohm: 1500 + 700 });
  expect(ada!.contacts(chosen).contacts).toEqual([
    { limb: 'right hand', outside_ohm: 2000, skin: 'water-wet' },
    { limb: 'left hand', outside_ohm: 2000, skin: 'water-wet', held: true },
    { limb: 'right foot', outside_ohm: 3000 },
    { limb: 'left foot', outside_ohm: 3000 },
  ]);
  expect(ada!.contacts({}).contacts[0]).toEqual({ limb: 'right hand', outside_ohm: 0, area: 'small' });
  expect(ada!.contacts({}).contacts[2]!.outside_ohm).toBe(1e7);
});

/** Numbers from 0 up to 1, the same for the same seed. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return (state >>> 0) / 2 ** 32;
  };
}

/** Skin and limb of a body at this current, Ω, read off its curve. */
function limbAt(limb: Limb, { percentile, skin, area = 'large', direct = false }: Body, amperes: number): number {
  const { from_A, fixed_ohm, a, d, b } = byCurrent(limb, percentile, skin, area, direct);
  const side = limbsTo(limb) === 2 ? 2 : 1;
  const piece = from_A.findLastIndex((from) => amperes / side >= from);
  return (fixed_ohm[piece]! + a[piece]! / (d[piece]! + (b[piece]! * amperes) / side)) / side;
}

test('chains of people settle: 300 random ones, each limb again what its own current makes it', () => {
  const next = chance(3);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const ohms = (): number => 10 ** (next() * 6);
  let worst = 0;
  for (let trial = 0; trial < 300; trial += 1) {
    const body = (): object => ({
      percentile: pick([5, 50, 95]),
      skin: pick(['dry', 'water-wet', 'salt-wet']),
      area: pick(['large', 'large', 'medium', 'small']),
    });
    const heldAt = pick(['left hand', 'back', 'chest']);
    const build = bench(
      { ...body(), feet: 'first', 'held at': [heldAt] },
      { ...body(), 'right hand': `Ada.${heldAt}`, feet: 'second', 'held at': ['left hand'] },
      {
        first: { kind: 'floor', resistance_ohm: ohms() },
        second: { kind: 'floor', resistance_ohm: ohms() },
        supply: { kind: 'source', emf_V: 10 ** (1 + next() * 2.6), resistance_ohm: next() < 0.5 ? 0.1 : ohms() / 100 },
        Cas: {
          kind: 'person',
          ...body(),
          'left hand': 'Ben.left hand',
          'right hand': pick(['supply.minus', 'second.surface']),
        },
      },
    );
    const everybody = new Set(build.people.map(({ name }) => name));
    const solver = createSolver(build.network);
    const one = steadyState(build, solver, {}, new Set(), everybody);
    expect(electricsWrong(build.network, one.values, one.solution)).toEqual([]);
    for (const person of build.people) {
      const { contacts, body: of } = person.contacts({});
      const limbsOf = contacts.map(({ limb }) => person.limbs.find((each) => each.limb === limb)!);
      for (const [index, { branch }] of limbsOf.entries()) {
        const [re, im] = [one.solution.amperes.re[branch]!, one.solution.amperes.im[branch]!];
        const ohm = limbAt(person.limbs.find((each) => each.branch === branch)!.limb, of, Math.hypot(re, im));
        worst = Math.max(worst, Math.abs(one.limb_ohm.get(branch)! / (contacts[index]!.outside_ohm + ohm) - 1));
      }
    }
  }
  // What is seen from a limb includes the 10 GΩ it has while it touches nothing.
  expect(worst).toBeLessThan(2e-5);
});
