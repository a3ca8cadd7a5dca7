import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  buriedResistance_ohm,
  mutualResistance_ohm,
  pinPotential_ohm,
  rodWires,
  standingResistance_ohm,
} from '../../src/earth/index.ts';
import { compile } from '../../src/installation/index.ts';
import { installationFrom, solved } from './places.ts';

const text = readFileSync(new URL('pump.yaml', import.meta.url), 'utf8');
const build = compile(installationFrom(text));
const bank = { kind: 'layered', upper_ohm_m: 300, lower_ohm_m: 40, thickness_m: 1.2 } as const;
const fault = { 'winding touches the case': 'solid' };

describe('a pump on its own rod, in two layers of soil', () => {
  const after = solved(build, fault);
  const own_ohm = buriedResistance_ohm(rodWires(2.4, 0.008), bank);

  test('its fault is a few amperes through two electrodes: the 16 A breaker never sees them', () => {
    const fault_A = after.amperes('bank.pump rod');
    expect(fault_A).toBeGreaterThan(4);
    expect(fault_A).toBeLessThan(12);
    expect(after.amperes('supply rods')).toBeCloseTo(fault_A, 1);
  });

  test('its case stands at its rod times the current, most of the supply', () => {
    expect(after.volts('pump.case') / (own_ohm * after.amperes('bank.pump rod'))).toBeCloseTo(1, 2);
    expect(after.volts('pump.case')).toBeGreaterThan(120);
  });

  test('a metre away the soil stands well below the case: a hand on it touches half the rise and more', () => {
    const touch_V = after.between('pump.case', 'bank.beside the pump');
    expect(touch_V / after.volts('pump.case')).toBeGreaterThan(0.5);
    expect(touch_V / after.volts('pump.case')).toBeLessThan(0.9);
  });

  test('a walker who touches nothing has volts between the feet, less than the soil has between those places', () => {
    const step_A = after.amperes('walker');
    expect(step_A).toBeGreaterThan(0.005);
    // 3ρ under each foot, less what the feet do to one another: more than half of the open step is lost there.
    const away = solved(
      compile(installationFrom(text.replace('resistance_ohm: 1000 }', 'resistance_ohm: 1000000000 }'))),
      fault,
    );
    const open_V = away.between('bank.near foot', 'bank.far foot');
    expect(after.between('bank.near foot', 'bank.far foot')).toBeLessThan(0.5 * open_V);
    const feet_ohm = 2 * standingResistance_ohm(bank, 1) - 2 * pinPotential_ohm(bank, 1);
    expect(step_A).toBeCloseTo(open_V / (1000 + feet_ohm), 5);
  });

  test('a fence post that nothing joins to the pump is lifted with the soil it stands in', () => {
    expect(after.volts('bank.fence post')).toBeGreaterThan(1);
    expect(after.volts('bank.fence post')).toBeLessThan(0.1 * after.volts('pump.case'));
  });

  test('with the pump sound, nothing is lifted', () => {
    const before = solved(build);
    expect(before.volts('bank.beside the pump')).toBeLessThan(0.01);
    expect(before.volts('pump.case')).toBeLessThan(0.01);
  });
});

test('what the pump’s rod does to the post, the post does to the rod: current in one, volts on the other', () => {
  const lift = (into: string, on: string): number => {
    const place = installationFrom(`
place: Two rods
region: iec
parts:
  meter: { kind: source, emf_V: 100 }
  far: { kind: rod, resistance_ohm: 1 }
  yard:
    kind: soil
    soil_ohm_m: 100
    electrodes:
      one: { kind: rod, length_m: 3, diameter_m: 0.016, at: [0, 0] }
      two: { kind: rod, length_m: 3, diameter_m: 0.016, at: [2, 0] }
joins:
  - [meter.minus, far]
  - [meter.plus, yard.${into}]
`);
    const after = solved(compile(place));
    return after.volts(`yard.${on}`) / after.amperes(`yard.${into}`);
  };
  expect(lift('one', 'two') / lift('two', 'one')).toBeCloseTo(1, 6);
  expect(lift('one', 'two') / mutualResistance_ohm(3, 2, 100)).toBeCloseTo(1, 1);
});
