import { expect, test } from 'vitest';
import {
  knownConductors,
  likelyConductor,
  perMetre,
  readConductor,
  type Raceway,
} from '../../src/installation/conductor.ts';
import { coreMetre, isCore, likelyCore } from '../../src/installation/core.ts';

const FT_kft = 304.8;

function ohm_kft(text: string, temperature_C = 75, raceway: Raceway = 'none'): { r: number; x: number } {
  const conductor = readConductor(text);
  if (conductor === undefined) throw new Error(`no table has ${text}`);
  const metre = perMetre(conductor, { temperature_C, frequency_Hz: 60, raceway });
  return { r: metre.resistance_ohm_m * FT_kft, x: metre.reactance_ohm_m * FT_kft };
}

function ohm_km(text: string, temperature_C = 20): number {
  const conductor = readConductor(text);
  if (conductor === undefined) throw new Error(`no table has ${text}`);
  return 1000 * perMetre(conductor, { temperature_C, frequency_Hz: 50, raceway: 'none' }).resistance_ohm_m;
}

test('a cable outside a raceway has the d.c. resistance and the reactance of singles in PVC', () => {
  expect(ohm_kft('2 AWG Al')).toEqual({ r: expect.closeTo(0.319, 12), x: expect.closeTo(0.045, 12) });
});

// α at 20 °C: 0.00393 copper, 0.00403 aluminium (IEC 60909-0 and table practice); 70 °C by hand.
test('copper at 70 °C has 1.1965 and aluminium 1.2015 times its ohms at 20 °C', () => {
  expect(ohm_km('2.5 mm² Cu', 70) / 7.41).toBeCloseTo(1.1965, 10);
  expect(ohm_km('35 mm² Al', 70) / 0.868).toBeCloseTo(1.2015, 10);
});

test('NEC and IEC agree on what temperature does to copper', () => {
  // 0.00393 at 20 °C is 0.00393 / (1 + 0.00393·55) = 0.003231 at 75 °C.
  const nec = ohm_kft('12 AWG Cu', 20).r / ohm_kft('12 AWG Cu', 75).r;
  const iec = ohm_km('2.5 mm² Cu', 20) / ohm_km('2.5 mm² Cu', 75);
  expect(Math.abs(nec / iec - 1)).toBeLessThan(1e-3);
});

test('reactance grows with frequency', () => {
  const conductor = readConductor('12 AWG Cu');
  if (conductor === undefined) throw new Error('no table');
  const at = (frequency_Hz: number) =>
    perMetre(conductor, { temperature_C: 75, frequency_Hz, raceway: 'pvc' }).reactance_ohm_m;
  expect(at(50) / at(60)).toBeCloseTo(50 / 60, 12);
});

test('every conductor the tables hold can be written, has ohms, and thicker is never worse', () => {
  const all = knownConductors();
  expect(all).toContain('2.5 mm² Cu');
  expect(all).toContain('500 kcmil Al');
  for (const text of all) {
    const conductor = readConductor(text);
    expect(conductor, text).toBeDefined();
    for (const raceway of ['none', 'pvc', 'aluminium', 'steel'] as const)
      expect(ohm_kft(text, 75, raceway).r, `${text} in ${raceway}`).toBeGreaterThan(0);
  }
});

test.each([
  '13 AWG Cu',
  '12 AWG',
  '12 Cu',
  '250 AWG Cu',
  '12 kcmil Cu',
  '1.5 mm² Al',
  '12 AWG Al tinned',
  '12 AWG Cu flexible',
  'toString AWG Cu',
  '',
])('no table has %j', (text) => {
  expect(readConductor(text)).toBeUndefined();
});

test.each([
  ['13 AWG Cu', '12 AWG Cu'],
  ['5 AWG Al', '4 AWG Al'],
  ['3 mm² Cu', '4 mm² Cu'],
  ['1.5 mm² Al', '10 mm² Al'],
  ['12 awg cu', '12 AWG Cu'],
  ['12AWG Cu flexible', '12 AWG Cu'],
  ['copper', '12 AWG Cu'],
])('who writes %j probably means %j: never a thinner one', (written, meant) => {
  expect(likelyConductor(written)).toBe(meant);
});

test.each([
  ['EMT 5/8', 'EMT 3/8 is not made; the nearest name', /^EMT /],
  ['conduit', 'a conduit', /^EMT 1\/2$/],
  ['SWA 2.4 mm²', 'armour', /^SWA 2.5 mm²/],
  ['armour', 'armour', /^SWA /],
  ['AWA 100 mm²', 'aluminium armour', /^AWA /],
])('who writes %j is told of one there is', (written, _, meant) => {
  expect(isCore(written)).toBe(false);
  const instead = likelyCore(written);
  expect(instead).toMatch(meant);
  expect(isCore(instead)).toBe(true);
});

// ASTM B258: 12 AWG 3.31 mm², 4/0 AWG 107.2 mm², 500 kcmil 253.4 mm² (tables of wire, from memory).
test.each([
  ['14 AWG Cu', 2.08],
  ['12 AWG Cu', 3.31],
  ['4/0 AWG Al', 107.2],
  ['500 kcmil Cu', 253.4],
  ['2.5 mm² Cu bare', 2.5],
])('%s has a section of %d mm²', (text, area_mm2) => {
  const core = coreMetre(text, { frequency_Hz: 60, raceway: 'none' });
  expect((core?.area_mm2 ?? 0) / area_mm2).toBeCloseTo(1, 2);
  expect(core?.bare).toBe(text.endsWith('bare'));
});

test('steel and aluminium round a cable grow warm too', () => {
  const at = (text: string, temperature_C: number) =>
    coreMetre(text, { temperature_C, frequency_Hz: 50, raceway: 'none' })?.resistance_ohm_m ?? 0;
  expect(at('SWA 4 mm² 3-core', 70) / at('SWA 4 mm² 3-core', 20)).toBeCloseTo(1.225, 10);
  expect(at('AWA 95 mm²', 70) / at('AWA 95 mm²', 20)).toBeCloseTo(1.2015, 10);
  expect(at('EMT 3/4', 70) / at('EMT 3/4', 20)).toBeCloseTo(1.225, 10);
});
