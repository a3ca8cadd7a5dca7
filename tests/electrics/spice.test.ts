import { expect, test } from 'vitest';
import { spiceNetlist } from '../../src/electrics/index.ts';
import type { Network, Values } from '../../src/electrics/index.ts';

const network: Network = {
  nodes: ['earth', 'transformer.x1\n.end', 'fault – here'],
  branches: [
    { name: 'upper', from: 0, to: 1 },
    { name: 'lower\nr1 0 0 1', from: 2, to: 0 },
    { name: 'leak', from: 1, to: 2 },
    { name: 'joint', from: 1, to: 2 },
  ],
  windings: [{ branches: [0, 1] }],
};
const values: Values = {
  impedance: { re: Float64Array.of(1, 1, 0, 0.001), im: Float64Array.of(0, 0, -50, 2) },
  emf: { re: Float64Array.of(120, 0, 0, 0), im: Float64Array.of(0, 5, 0, 0) },
  coupling: [{ re: Float64Array.of(1, 0.5, 0.5, 1), im: Float64Array.of(2, 0, 0, 2) }],
};

test('a netlist has an ammeter in every branch, both phases of every source, and every coupling both ways', () => {
  const lines = spiceNetlist(network, values, 50).trimEnd().split('\n');
  const elements = lines.filter((line) => !line.startsWith('*'));
  const coil = 2 / (2 * Math.PI * 50);
  expect(elements).toEqual([
    'fx0_1 0 x0_1 vm1 1',
    'rx0_1 x0_1 0 0.5',
    'vm0 0 b0_1 dc 0 ac 0',
    've0 b0_2 b0_1 dc 0 ac 120',
    'ex0_1 b0_2 b0_3 x0_1 0 1',
    'rz0 b0_3 mz0 1',
    `lz0 mz0 n1 ${coil}`,
    'fx1_0 0 x1_0 vm0 1',
    'rx1_0 x1_0 0 0.5',
    'vm1 n2 b1_1 dc 0 ac 0',
    'vj1 b1_2 b1_1 dc 0 ac 5 90',
    'ex1_0 b1_2 b1_3 x1_0 0 1',
    'rz1 b1_3 mz1 1',
    `lz1 mz1 0 ${coil}`,
    'vm2 n1 b2_1 dc 0 ac 0',
    `cz2 b2_1 n2 ${1 / (50 * 2 * Math.PI * 50)}`,
    'vm3 n1 b3_1 dc 0 ac 0',
    'hz3 b3_1 b3_2 vm3 0.001',
    `lz3 b3_2 n2 ${coil}`,
  ]);
});

test('a name cannot break out of its comment', () => {
  const lines = spiceNetlist(network, values, 50).split('\n');
  expect(lines).toContain('* n1 = transformer.x1 .end');
  expect(lines).toContain('* lower r1 0 0 1');
  expect(lines).toContain('* n2 = fault   here');
});

test('direct current and values that are no numbers are refused', () => {
  expect(() => spiceNetlist(network, values, 0)).toThrow('0 Hz is no frequency; write one above 0');
  const impedance = { re: Float64Array.of(1, 1, NaN, 1), im: new Float64Array(4) };
  expect(() => spiceNetlist(network, { ...values, impedance }, 50)).toThrow('branch "leak" has the value NaN');
});
