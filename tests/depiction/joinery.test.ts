import { expect, test } from 'vitest';
import { picturedPlace } from './pictured.ts';

const { pictured } = picturedPlace('joinery');

const SOLID = { 'line touches the saw': 'solid' };
const OLD = { 'feeder without protective conductor': 'yes', 'neutral joined to earth in the workshop': 'yes' };

test('a solid fault in the saw comes home on the protective conductor, the bonding jumper and the utility’s neutral', () => {
  const { ribbons } = pictured(0.005, SOLID);
  const kinds = Object.fromEntries(ribbons.map(({ id, kind }) => [id, kind]));
  expect(kinds).toMatchObject({
    'saw run.line': 'fault',
    'saw run.protective': 'fault',
    'feeder.protective': 'fault',
    'bonding jumper': 'fault',
    'service drop.neutral': 'fault',
    'extractor run.a': 'load',
    'workshop rod': 'stray',
  });
});

test('over the old feeder of three wires the fault comes home on the feeder’s neutral', () => {
  const picture = pictured(0.005, { ...SOLID, ...OLD });
  const kinds = Object.fromEntries(picture.ribbons.map(({ id, kind }) => [id, kind]));
  expect(kinds['feeder.neutral']).toBe('fault');
  expect(kinds['feeder.protective']).toBeUndefined();
  expect(picture.conductors.map(({ id }) => id)).not.toContain('feeder.protective');
  expect(picture.parts.map(({ id }) => id)).toContain('workshop link');
});

test('the three lines of the joinery wear three colours', () => {
  const worn = new Map(pictured(-0.5).conductors.map(({ id, insulation }) => [id, insulation]));
  expect(['feeder.a', 'feeder.b', 'feeder.c'].map((id) => worn.get(id))).toEqual(['line', 'line-b', 'line-c']);
});
