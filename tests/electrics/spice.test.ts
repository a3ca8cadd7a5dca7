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

test('a core is a node that has the volts of a turn, and what is injected goes past a second ammeter', () => {
  const cored: Network = { ...network, windings: [], cores: [{ branches: [1, 2], turns: [10, -1] }] };
  const impedance = { re: Float64Array.of(1, 2, 0, 5), im: Float64Array.of(0, 0, 0, 0) };
  impedance.re[2] = 3;
  const injection = { re: Float64Array.of(0, 0, 4, 0), im: Float64Array.of(0, 0, -7, 0) };
  const emf = { re: Float64Array.of(120, 0, 0, 0), im: new Float64Array(4) };
  const lines = spiceNetlist(cored, { impedance, emf, injection, coupling: [] }, 50).trimEnd().split('\n');
  expect(lines.filter((line) => !line.startsWith('*'))).toEqual([
    'vm0 0 b0_1 dc 0 ac 0',
    've0 b0_2 b0_1 dc 0 ac 120',
    'rz0 b0_2 n1 1',
    'fu1 0 u0 vm1 10',
    'vm1 n2 b1_1 dc 0 ac 0',
    'eu1 b1_1 b1_2 u0 0 10',
    'rz1 b1_2 0 2',
    'ir2 b2_1 n2 dc 0 ac 4',
    'ij2 b2_1 n2 dc 0 ac -7 90',
    'fu2 0 u0 vz2 -1',
    'vm2 n1 b2_1 dc 0 ac 0',
    'vz2 b2_1 b2_2 dc 0 ac 0',
    'eu2 b2_2 b2_3 u0 0 -1',
    'rz2 b2_3 n2 3',
    'vm3 n1 b3_1 dc 0 ac 0',
    'rz3 b3_1 n2 5',
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
