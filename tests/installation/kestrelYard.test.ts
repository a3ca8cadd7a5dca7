import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { initialConditions, type Conditions } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { built, solved, type Solved } from './places.ts';

const folder = new URL('../../lessons/places/', import.meta.url);
const place = (name: string) => built(readFileSync(new URL(`${name}.yaml`, folder), 'utf8'));

/** What the devices do under these conditions, added to the initial ones. */
function operated(name: string, conditions: Conditions): readonly string[] {
  const build = place(name);
  const { intervals } = run(build, { ...initialConditions(build.installation), ...conditions });
  return intervals.flatMap(({ because }) =>
    because.kind === 'device-operated' ? [`${because.device} ${because.operation.region}`] : [],
  );
}

describe('every place of Kestrel Yard', () => {
  test.each(readdirSync(folder).map((file) => file.replace('.yaml', '')))(
    'the %s works as it opens: no device operates and nothing is left unjoined',
    (name) => {
      const build = place(name);
      expect(build.unreached).toEqual([]);
      expect(operated(name, {})).toEqual([]);
    },
  );

  test.each([
    ['bakery', ['transformer TN-C-S 120']],
    ['joinery', ['transformer TN-C-S 120']],
    ['flat', ['transformer TN-C-S 231']],
    ['pump', ['transformer TT 231']],
    ['clinic', ['transformer TN-S 231', 'isolating transformer IT 230']],
    ['office', ['utility TN-S 277', 'transformer TN-S 120']],
    ['pontoon', ['transformer TN-C-S 231']],
    ['stall', ['generator IT 120', 'yard outlet TN-S 120']],
  ])('the %s tells how each supply is earthed and its volts to earth', (name, told) => {
    expect(
      place(name).supplies.map(({ part, system, nominal_V }) => `${part} ${system} ${Math.round(nominal_V)}`),
    ).toEqual(told);
  });
});

describe('a lost PEN', () => {
  const lost = (conditions: Conditions): Solved =>
    solved(place('flat'), { 'PEN lost in the street': 'yes', ...conditions });

  test('puts every case in the flat near line volts, though nothing is wrong in it', () => {
    const { volts } = lost({});
    // Neighbours of 12 Ω and the washing machine of 25 Ω stand in series with 15 Ω of gas pipe and 2 Ω at the substation.
    const load = 1 / (1 / 12 + 1 / (230 ** 2 / 2100));
    expect(volts('washer.case') / ((231 * 15) / (15 + 2 + load))).toBeCloseTo(1, 1);
    expect(volts('washer.case')).toBeGreaterThan(100);
  });

  test('without the gas pipe’s bond puts them at line volts altogether', () => {
    expect(lost({ 'gas pipe not bonded': 'yes' }).volts('washer.case')).toBeGreaterThan(225);
  });

  test('is seen by no residual device and no breaker', () => {
    expect(operated('flat', { 'PEN lost in the street': 'yes' })).toEqual([]);
  });
});

describe('the soil as the only way home, at the pump', () => {
  const fault = { 'line touches the pump': 'solid' };

  test('passes too little for any breaker: without residual devices nothing opens', () => {
    expect(operated('pump', { ...fault, 'main rcd fitted': 'no', 'pump rcd fitted': 'no' })).toEqual([]);
    expect(solved(place('pump'), fault).volts('pump.case')).toBeGreaterThan(150);
  });

  test('is enough for the residual device of 30 mA, which goes before the selective one', () => {
    expect(operated('pump', fault)).toEqual(['pump rcd residual']);
  });

  test('is by-passed where somebody joins the neutral to the earth bar', () => {
    const joined = solved(place('pump'), { ...fault, 'neutral joined to the earth bar': 'yes' });
    expect(joined.amperes('pump breaker')).toBeGreaterThan(160);
  });
});

describe('IT, at the clinic', () => {
  const first = { 'first fault in the lamp': 'solid' };

  test('the first fault passes milliamperes and stops nothing that protects the room', () => {
    const { amperes, volts } = solved(place('clinic'), first);
    expect(amperes('first fault in the lamp')).toBeLessThan(0.005);
    expect(volts('lamp.case')).toBeLessThan(0.1);
    expect(operated('clinic', first).filter((said) => said.includes('breaker'))).toEqual([]);
  });

  test('the second is a short circuit between the poles, and breakers open', () => {
    const second = { ...first, 'second fault in the pump': 'solid' };
    expect(solved(place('clinic'), second).amperes('second fault in the pump')).toBeGreaterThan(100);
    expect(operated('clinic', second).some((said) => said.includes('breaker'))).toBe(true);
  });

  test('with one pole earthed the first fault opens a breaker: it is TN then', () => {
    expect(operated('clinic', { ...first, 'secondary earthed': 'yes' }).some((said) => said.includes('breaker'))).toBe(
      true,
    );
  });
});

describe('a separately derived system, at the office', () => {
  const fault = { 'line touches the copier': 'solid' };

  test('with its one bond opens the breaker magnetically', () => {
    expect(operated('office', fault)).toEqual(['copier breaker magnetic']);
  });

  test('without it no fault current flows at all and the lines float', () => {
    const { amperes } = solved(place('office'), { ...fault, 'system bond missing': 'yes' });
    expect(amperes('line touches the copier')).toBeLessThan(1e-3);
    expect(operated('office', { ...fault, 'system bond missing': 'yes' })).toEqual([]);
  });

  test('with a second one at the panel the neutral shares its current with the protective conductor', () => {
    const once = solved(place('office'));
    const twice = solved(place('office'), { 'neutral bonded again at the panel': 'yes' });
    expect(once.amperes('secondary run.protective')).toBeLessThan(1e-3);
    expect(twice.amperes('secondary run.protective')).toBeGreaterThan(1);
  });

  test('its faults are felt before it: two primary lines carry them by the turns', () => {
    const { amperes } = solved(place('office'), fault);
    const turns = (480 * Math.sqrt(3)) / 208;
    for (const line of ['a', 'b'])
      expect(amperes(`transformer breaker.${line}`) * turns).toBeGreaterThan(0.9 * amperes('line touches the copier'));
    expect(amperes('transformer breaker.c')).toBeLessThan(10);
  });
});

describe('a detached building, at the joinery', () => {
  const fault = { 'line touches the saw': 'solid' };
  const threeWires = { 'feeder without protective conductor': 'yes', 'neutral joined to earth in the workshop': 'yes' };

  test('on four wires opens the breaker by its magnet', () => {
    expect(operated('joinery', fault)[0]).toBe('saw breaker magnetic');
  });

  test('on three wires does so too, but every case stands at the drop of the neutral, load and fault', () => {
    expect(operated('joinery', { ...fault, ...threeWires })[0]).toBe('saw breaker magnetic');
    const case_V = (conditions: Conditions) => solved(place('joinery'), conditions).volts('saw.case');
    expect(case_V(threeWires)).toBeGreaterThan(3 * case_V({}));
  });

  test('on three wires with the neutral lost puts load current into the rod and volts on every case', () => {
    const lost = solved(place('joinery'), { ...threeWires, 'feeder neutral open': 'yes' });
    expect(lost.volts('saw.case')).toBeGreaterThan(15);
    expect(lost.amperes('workshop rod')).toBeGreaterThan(0.5);
  });

  test('with only its own rod and no protective conductor opens nothing', () => {
    expect(operated('joinery', { ...fault, 'feeder without protective conductor': 'yes' })).toEqual([]);
  });

  test('a second bond in the workshop shares the neutral’s current with the protective conductor', () => {
    const { amperes } = solved(place('joinery'), { 'neutral joined to earth in the workshop': 'yes' });
    expect(amperes('feeder.protective')).toBeGreaterThan(1);
  });
});

describe('a portable generator, at the stall', () => {
  const fault = { 'line touches the fryer': 'solid' };
  const dead = (conditions: Conditions) => solved(place('stall'), { ...fault, ...conditions });

  test('with a floating neutral passes no earth fault current and opens nothing', () => {
    expect(dead({}).amperes('line touches the fryer')).toBeLessThan(1e-3);
    expect(operated('stall', fault)).toEqual([]);
  });

  test('with a bonded one lets the residual device or the breaker open', () => {
    expect(operated('stall', { ...fault, 'generator neutral bonded': 'yes' }).length).toBeGreaterThan(0);
  });

  test('a second fault on the floating one, neutral to frame, is a short circuit by way of the frame', () => {
    expect(dead({ 'neutral touches the frame': 'solid' }).amperes('line touches the fryer')).toBeGreaterThan(30);
  });

  test('a rod at the frame changes nothing for somebody at the fryer: with the neutral floating nothing flows', () => {
    expect(dead({ 'generator frame on a rod': 'yes' }).amperes('line touches the fryer')).toBeLessThan(1e-3);
  });
});

describe('a boat on a PEN, at the pontoon', () => {
  const hull = (conditions: Conditions) => solved(place('pontoon'), conditions).volts('hull.tap');

  test('carries the neutral’s volts out onto the water when the PEN is lost, and no residual device sees it', () => {
    expect(hull({ 'PEN lost ashore': 'yes' })).toBeGreaterThan(50);
    expect(operated('pontoon', { 'PEN lost ashore': 'yes' })).toEqual([]);
  });

  test('on a rod of its own is rid of them', () => {
    expect(hull({ 'PEN lost ashore': 'yes', 'pontoon on its own rod': 'yes' })).toBeLessThan(1);
  });

  test('and its residual device still opens on the soil', () => {
    expect(operated('pontoon', { 'line touches the heater': 'solid', 'pontoon on its own rod': 'yes' })).toEqual([
      'pedestal rcd residual',
    ]);
  });
});
