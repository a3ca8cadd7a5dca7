import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { typed } from './typed.ts';

const NAMES = readdirSync(new URL('./textbook', import.meta.url)).map((file) => file.replace('.yaml', ''));

/** Circuits in which nothing is joined to the soil. */
const UNEARTHED = ['series-sources', 'transformer-step-down', 'plain-return', 'open-neutral-lamps'];

describe('textbook circuits answered at the terminal', () => {
  test('there are ten and more', () => {
    expect(NAMES.length).toBeGreaterThanOrEqual(10);
  });

  test.each(NAMES)('%s is told whole', (name) => {
    const { text } = typed(name);
    expect(text).not.toMatch(/undefined|NaN|∞|\{\{/);
    expect(text).toContain('Isolate, lock off and prove dead');
  });

  test.each(UNEARTHED)('%s is told without soil, which is not in it', (name) => {
    expect(typed(name).text.split('Before anybody')[0]).not.toMatch(/soil|Insulation/);
  });
});

test('two sources in series give one current, not two', () => {
  expect(typed('series-sources').text).toContain('Where the working 15 A goes home');
});

test('a plain return impedance is wiring, not a load', () => {
  const { text } = typed('plain-return');
  expect(text).toContain('9.84 A leaves the winding, for the heater (9.84 A).');
  expect(text).toContain('line → heater → return');
});

test('a fault in a circuit of metal is told as metal', () => {
  const { text } = typed('tncs-loop');
  expect(text).toContain('128 A goes home this way, metal, straight home');
  expect(text).not.toContain('soil');
});

test('a first fault where nothing earths the supply is told as that', () => {
  const { text } = typed('unearthed-fault');
  expect(text).toContain('nothing ties this supply to the earth');
  expect(text).toContain('a second fault is a short circuit');
});

test('a first fault that only capacitance carries home is not laid on the soil', () => {
  const { text } = typed('it-capacitance');
  expect(text).toContain('Capacitance of the network');
  expect(text).toContain('that passes 217 mA');
});

test('two faults at once are driven by the volts between the lines', () => {
  expect(typed('it-second-fault').text).toContain('as much as 400 V drives round a loop of 129 mΩ');
});

test('lamps that lost their neutral are told by the volts they get', () => {
  expect(typed('open-neutral-lamps').text).toContain('The small lamp gets 160 V, where 120 V belongs');
  expect(typed('open-neutral-lamps', 'neutral open=no').text).toContain('Everything is as it should be');
});

test('a neutral that carries more than its lines is told, harmonics included', () => {
  expect(typed('harmonic-neutral').text).toContain(
    'The neutral of the feeder carries 152 A, its lines no more than 114 A',
  );
  expect(typed('unbalanced-star').text).not.toContain('multiples');
});

test('many small leakages add up to a trip with no fault at all, and are named', () => {
  const { text } = typed('nuisance-trip');
  expect(text).toMatch(/The RCD opens in .* ms, with no fault at all/);
  expect(text).toContain('31.9 mA leaves by the capacitance of filters and cables');
  expect(text).toContain('the printer (7.23 mA)');
});

test('the same circuits are told in both vocabularies', () => {
  expect(typed('double-bond').text).toContain('third wire');
  expect(typed('cable-leakage').text).toContain('Protective conductor, through the capacitance of the run');
});
