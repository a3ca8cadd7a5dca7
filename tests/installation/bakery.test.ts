import { expect, test } from 'vitest';
import { initialConditions, type Part } from '../../src/installation/index.ts';
import { bakeryText, built, solved } from './places.ts';

const bakery = built(bakeryText);
const off = { 'mixer running': 'no', 'oven running': 'no', 'lamps on': 'no' };
const solid = { 'line touches the case': 'solid' };

test('the bakery has every part, device, person and condition of Kestrel Yard', () => {
  expect(Object.keys(bakery.installation.parts)).toEqual([
    'transformer',
    'pole rod',
    'drop',
    'meter',
    'panel',
    'main breaker',
    'bonding jumper',
    'service rod',
    'water pipe',
    'sink',
    'mixer breaker',
    'gfci',
    'mixer run',
    'outlet',
    'cord',
    'mixer',
    'own rod',
    'oven breaker',
    'oven run',
    'oven',
    'lamp breaker',
    'lamp run',
    'lamps',
    'slab',
    'baker',
  ]);
  expect(
    Object.entries(bakery.installation.conditions).map(([name, { options, group }]) => [name, group, ...options]),
  ).toEqual([
    ['line touches the case', 'fault', 'no', 'solid', '1 ohm', '100 ohm'],
    ['protective conductor open', 'path', 'no', 'yes'],
    ['bonding jumper missing', 'path', 'no', 'yes'],
    ['service neutral open', 'path', 'no', 'yes'],
    ['line and neutral reversed', 'path', 'no', 'yes'],
    ['neutral linked to the case', 'path', 'no', 'yes'],
    ['protective conductor to its own rod', 'path', 'no', 'yes'],
    ['loose joint', 'path', 'no', 'yes'],
    ['breaker oversized', 'device', 'no', 'yes'],
    ['breaker jammed', 'device', 'no', 'yes'],
    ['gfci fitted', 'device', 'no', 'yes'],
    ['mixer running', 'load', 'no', 'yes'],
    ['oven running', 'load', 'no', 'yes'],
    ['lamps on', 'load', 'no', 'yes'],
    ['baker touches', 'person', 'nothing', 'the case', 'the case and the sink'],
    ['baker wears', 'person', 'dry shoes', 'wet shoes', 'bare feet'],
  ]);
  expect(initialConditions(bakery.installation)).toMatchObject({
    'line touches the case': 'no',
    'mixer running': 'yes',
    'oven running': 'yes',
    'lamps on': 'yes',
    'baker touches': 'nothing',
  });
});

test('every loop of the bakery reaches the source', () => {
  expect(bakery.unreached).toEqual([]);
});

test('a solid fault with everything right drives more than 20 times the rating of the 20 A breaker', () => {
  expect(solved(bakery, solid).amperes('mixer breaker')).toBeGreaterThan(430);
});

// The closed forms below take lengths, temperatures and ratings from the file and ohms from the tables:
// NEC chapter 9 table 8, Ω/kft at 75 °C, with note 2 for temperature; table 9, X in PVC, Ω/kft.
const part = <Kind extends Part['kind']>(name: string, kind: Kind): Extract<Part, { kind: Kind }> => {
  const found = bakery.installation.parts[name];
  if (found?.kind !== kind) throw new Error(`${name} is no ${kind}`);
  return found as Extract<Part, { kind: Kind }>;
};
const run = (name: string, dc_ohm_kft: number, x_ohm_kft: number, alpha: number) => {
  const { length_m = NaN, temperature_C = NaN } = part(name, 'cable');
  const kft = length_m / 304.8;
  return { r: dc_ohm_kft * (1 + alpha * (temperature_C - 75)) * kft, x: x_ohm_kft * kft };
};
const {
  rating_VA,
  resistance_percent = NaN,
  reactance_percent = NaN,
} = part('transformer', 'centre-tapped-transformer');
const half_ohm = 120 ** 2 / rating_VA;
const winding = { r: 1.5 * (resistance_percent / 100) * half_ohm, x: 1.2 * (reactance_percent / 100) * half_ohm };
const drop = run('drop', 0.319, 0.045, 0.0033);
const mixerRun = run('mixer run', 1.93, 0.054, 0.00323);
const cord = run('cord', 3.14, 0.058, 0.00323);
const joint_ohm = 0.0005;
// 2 W in a pole at its rating; meter and GFCI as their parts say.
const contacts_ohm = 0.0003 + 2 / 100 ** 2 + 2 / 20 ** 2 + 0.002;
const line = {
  r: winding.r + drop.r + mixerRun.r + cord.r + contacts_ohm + 10 * joint_ohm,
  x: winding.x + drop.x + mixerRun.x + cord.x,
};
const fault_ohm = 0.01;

test('a solid fault is the voltage over the sum of its metal loop', () => {
  const back = { r: cord.r + mixerRun.r + drop.r + 7 * joint_ohm, x: cord.x + mixerRun.x + drop.x };
  const byHand = 120 / Math.hypot(line.r + fault_ohm + back.r, line.x + back.x);
  expect(Math.abs(solved(bakery, { ...off, ...solid }).amperes('mixer breaker') / byHand - 1)).toBeLessThan(0.001);
});

test('a rod of its own passes less than 5 A and leaves the case near full line voltage', () => {
  const rod = solved(bakery, { ...off, ...solid, 'protective conductor to its own rod': 'yes' });
  // From the case through cord, lead and rod into the soil; home through the pole rod beside the earths of the service.
  // IEEE Std 142, after Dwight: ρ/(2πL)·(ln(4L/a) − 1).
  const { length_m = NaN, diameter_m = NaN, soil_ohm_m = NaN } = part('pole rod', 'rod');
  const driven_ohm = (soil_ohm_m / (2 * Math.PI * length_m)) * (Math.log((8 * length_m) / diameter_m) - 1);
  const pipe_ohm = part('water pipe', 'pipe').earth_resistance_ohm ?? NaN;
  const service_ohm = 1 / (1 / driven_ohm + 1 / pipe_ohm);
  const home_ohm = 1 / (1 / driven_ohm + 1 / (service_ohm + drop.r));
  const toEarth_ohm = cord.r + 2 * joint_ohm + 0.02 + (part('own rod', 'rod').resistance_ohm ?? NaN);
  const byHand = 120 / Math.hypot(line.r + fault_ohm + toEarth_ohm + home_ohm, line.x);
  expect(rod.amperes('own rod')).toBeLessThan(5);
  expect(Math.abs(rod.amperes('own rod') / byHand - 1)).toBeLessThan(0.001);
  expect(Math.abs(rod.volts('mixer.case') / (byHand * toEarth_ohm) - 1)).toBeLessThan(0.001);
  expect(rod.volts('mixer.case')).toBeGreaterThan(0.85 * 120);
});

test('with the protective conductor off, a fault brings the case to line voltage and the breaker sees only the load', () => {
  const cut = solved(bakery, { ...solid, 'protective conductor open': 'yes' });
  expect(cut.volts('mixer.case')).toBeGreaterThan(117);
  expect(cut.amperes('mixer breaker')).toBeCloseTo(solved(bakery).amperes('mixer breaker'), 3);
});

test('in ordinary work the neutral carries the difference of the legs, the soil a few milliamperes, the protective conductor nothing', () => {
  const work = solved(bakery);
  const neutral = work.amperes('drop.neutral');
  // 6.25 A on one leg, 3.33 A on the other, each a little less for the volts lost on the way.
  expect(neutral).toBeGreaterThan(2.7);
  expect(neutral).toBeLessThan(750 / 120 - 400 / 120);
  expect(work.amperes('pole rod')).toBeGreaterThan(1e-3);
  expect(work.amperes('pole rod')).toBeLessThan(0.01);
  expect(work.amperes('mixer run.protective')).toBeLessThan(1e-6);
});

test('without the service neutral the legs drift apart and the difference goes through the soil', () => {
  const lost = solved(bakery, { 'service neutral open': 'yes' });
  expect(lost.between('panel.b', 'panel.neutral bar')).toBeGreaterThan(130);
  expect(lost.between('panel.a', 'panel.neutral bar')).toBeLessThan(110);
  expect(lost.amperes('pole rod')).toBeGreaterThan(0.8);
});

test('without the bonding jumper no metal leads from the case to the source', () => {
  const unbonded = solved(bakery, { ...solid, 'bonding jumper missing': 'yes' });
  expect(unbonded.amperes('mixer run.protective')).toBeLessThan(1e-3);
  expect(unbonded.volts('mixer.case')).toBeGreaterThan(117);
  expect(unbonded.volts('oven.case')).toBeGreaterThan(117);
});

test('a loose joint lets tens of amperes through: too few to open the breaker at once', () => {
  const loose = solved(bakery, { ...solid, 'loose joint': 'yes' }).amperes('mixer breaker');
  expect(loose).toBeGreaterThan(2 * 20);
  expect(loose).toBeLessThan(5 * 20);
});

test('a neutral linked to the case shares the working current with the protective conductor', () => {
  const linked = solved(bakery, { 'neutral linked to the case': 'yes' });
  expect(linked.amperes('mixer run.protective')).toBeGreaterThan(1);
  expect(linked.amperes('gfci.line')).toBeGreaterThan(linked.amperes('gfci.neutral') + 1);
});

test('reversed at the outlet, the mixer runs as before with the switched side live', () => {
  const reversed = solved(bakery, { 'line and neutral reversed': 'yes' });
  expect(reversed.amperes('mixer')).toBeCloseTo(solved(bakery).amperes('mixer'), 1);
  expect(reversed.volts('mixer.neutral')).toBeGreaterThan(115);
  expect(reversed.volts('mixer.line')).toBeLessThan(5);
});

test('reversed and linked and cut off from the panel, the case is live without any fault', () => {
  const deadly = solved(bakery, {
    'line and neutral reversed': 'yes',
    'neutral linked to the case': 'yes',
    'protective conductor open': 'yes',
  });
  expect(deadly.volts('mixer.case')).toBeGreaterThan(115);
  expect(deadly.amperes('mixer breaker')).toBeLessThan(10);
});

test('a neutral linked to the case is a way home for a fault when the protective conductor is off', () => {
  const bootleg = solved(bakery, {
    ...solid,
    'protective conductor open': 'yes',
    'neutral linked to the case': 'yes',
  });
  expect(bootleg.amperes('mixer breaker')).toBeGreaterThan(400);
});

test('an open device passes less than a microampere', () => {
  const open = solved(bakery, solid, ['mixer breaker']);
  expect(open.amperes('mixer breaker')).toBeLessThan(1e-6);
  expect(solved(bakery, {}, ['gfci']).amperes('gfci.neutral')).toBeLessThan(1e-6);
});

test('a hand on the live case carries what the body, the shoes and the floor let through', () => {
  const held = solved(bakery, { ...solid, 'protective conductor open': 'yes' }, [], {
    'baker.right hand': 1000,
    'baker.feet': 1000,
  });
  // 120 V over 2000 Ω of body and 150 Ω of floor (IEEE Std 80: 1.5ρ, ρ = 100 Ω·m), less the drop of the working mixer.
  expect(held.amperes('slab') / (held.volts('mixer.case') / 2150)).toBeCloseTo(1, 3);
  expect(held.amperes('baker.feet')).toBeGreaterThan(0.05);
});
