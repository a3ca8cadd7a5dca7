import { expect, test } from 'vitest';
import { solved } from '../installation/places.ts';
import { circuit } from './circuit.ts';

const amperes = (name: string): number => solved(circuit(name)).amperes('fault');

test('281 A is enough for the magnetic part of a B32, 181 A for that of a B32 and not of a C32', () => {
  expect(amperes('tncs-ring')).toBeGreaterThan(5 * 32);
  expect(amperes('tns-ring')).toBeGreaterThan(5 * 32);
  expect(amperes('tns-ring')).toBeLessThan(10 * 32);
});

test('what a neutral and a protective conductor share is the whole', () => {
  const shared = solved(circuit('double-bond'));
  const parts = shared.amperes('feeder.neutral') + shared.amperes('feeder.protective') + shared.amperes('far rod');
  expect(Math.abs(parts / shared.amperes('unbalance') - 1)).toBeLessThan(1e-3);
});

test('a lost neutral divides the volts as the lamps have it, and the sum stays', () => {
  const lost = solved(circuit('open-neutral-lamps'));
  const volts = ['small lamp', 'large lamp'].map((lamp) => lost.between(`${lamp}.line`, `${lamp}.neutral`));
  expect(volts[0]).toBeCloseTo(160, 1);
  expect((volts[0] ?? 0) + (volts[1] ?? 0)).toBeCloseTo(240, 1);
});
