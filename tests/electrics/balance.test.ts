import { expect, test } from 'vitest';
import { balance, createSolver } from '../../src/electrics/index.ts';
import type { Network, Values } from '../../src/electrics/index.ts';

const network: Network = {
  nodes: ['earth', 'live'],
  branches: [
    { name: 'source', from: 0, to: 1 },
    { name: 'load', from: 1, to: 0 },
  ],
  windings: [],
};
const values: Values = {
  impedance: { re: Float64Array.of(1, 9), im: Float64Array.of(0, 0) },
  emf: { re: Float64Array.of(100, 0), im: new Float64Array(2) },
  coupling: [],
};
const right = createSolver(network).solve(values);

test('a right solution leaves nothing over', () => {
  expect([...right.amperes.re]).toEqual([10, 10]);
  const { kirchhoff, power, ohm } = balance(network, values, right);
  expect(Math.max(kirchhoff, power, ohm)).toBeLessThan(1e-15);
});

test('an ampere lost on the way shows in the sum at the node, in the power and in the voltages', () => {
  const amperes = { re: Float64Array.of(10, 9), im: new Float64Array(2) };
  const { kirchhoff, power, ohm } = balance(network, values, { ...right, amperes });
  expect(kirchhoff).toBeCloseTo(0.1, 12); // 1 A of 10 A
  expect(power).toBeCloseTo((1000 - 100 - 9 * 81) / 1000, 12);
  expect(ohm).toBeCloseTo(9 / 100, 12); // 90 V − 81 V
});

test('a voltage that does not belong shows in the voltages alone', () => {
  const volts = { re: Float64Array.of(0, 91), im: new Float64Array(2) };
  const { kirchhoff, power, ohm } = balance(network, values, { ...right, volts });
  expect(Math.max(kirchhoff, power)).toBeLessThan(1e-15);
  expect(ohm).toBeCloseTo(0.01, 12);
});

test('a figure that is no number cannot hide', () => {
  const amperes = { re: Float64Array.of(NaN, 10), im: new Float64Array(2) };
  const { kirchhoff, power, ohm } = balance(network, values, { ...right, amperes });
  expect([kirchhoff, power, ohm].every(Number.isNaN)).toBe(true);
});
