import { expect, test } from 'vitest';
import { partSchema } from '../../src/installation/parts/index.ts';
import { compile, installationSchema } from '../../src/installation/index.ts';
import { worn_ohm } from '../../src/installation/worn.ts';

const problems = (part: object): string =>
  partSchema
    .safeParse({ kind: 'person', ...part })
    .error?.issues.map(({ message }) => message)
    .join('; ') ?? '';

test('both feet on one thing leave none for another', () => {
  expect(problems({ feet: 'a', 'left foot': 'b' })).toContain('both feet already');
  expect(problems({ feet: 'a', 'held at': ['right foot'] })).toContain('both feet already');
  expect(problems({ 'right foot': 'a', 'left foot': 'b' })).toBe('');
});

test('a place that touches a thing is not taken hold of, nor twice', () => {
  expect(problems({ 'left hand': 'a', 'held at': ['left hand'] })).toContain('left hand');
  expect(problems({ 'left hand': 'a', 'held at': ['back', 'back'] })).toContain('back');
  expect(problems({ 'left hand': 'a', 'held at': ['back', 'chest'] })).toBe('');
});

test('a floor, a shoe or a mat may be written by name and then has its typical resistance', () => {
  const { network, values, branch } = compile(
    installationSchema.parse({
      place: 'A floor',
      region: 'iec',
      parts: { supply: { kind: 'source', emf_V: 10 }, wood: { kind: 'floor', resistance_ohm: 'dry wood' } },
    }),
  );
  expect(network.branches[branch('wood')]?.to).toBe(0);
  expect(values({}, new Set()).impedance.re[branch('wood')]).toBe(worn_ohm('dry wood'));
  // IEC 60364-6, from memory: an insulating floor has 50 kΩ at least up to 500 V.
  expect(worn_ohm('insulating floor')).toBe(50_000);
  // EN ISO 20345, from memory: an antistatic shoe has 100 kΩ to 1 GΩ.
  expect(worn_ohm('antistatic shoe')).toBeGreaterThanOrEqual(1e5);
  expect(worn_ohm('antistatic shoe')).toBeLessThanOrEqual(1e9);
  expect(() => worn_ohm('slippers')).toThrow('slippers');
});
