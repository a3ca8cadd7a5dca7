import { expect, test } from 'vitest';
import { picturedPlace } from './pictured.ts';
import { type Depiction } from '../../src/depiction/index.ts';
import { type Conditions } from '../../src/installation/index.ts';

const { pictured } = picturedPlace('pump');

const SOLID = { 'line touches the pump': 'solid' };
const UNGUARDED = { 'main rcd fitted': 'no', 'pump rcd fitted': 'no' };
const HANDS_ON = { 'gardener touches': 'the pump', 'gardener wears': 'bare feet' };

function ids({ ribbons }: Depiction): readonly string[] {
  return ribbons.map(({ id }) => id);
}

test('a solid fault of the pump goes home through its rod and the soil, and by no metal', () => {
  const picture = pictured(0.005, SOLID);
  expect(ids(picture)).toEqual(
    expect.arrayContaining([
      'pump cable.protective',
      'board.earth bar – electrode lead',
      'dry soil',
      'rod',
      'soil, transformer earth to rod',
      'transformer earth',
      'transformer.neutral – transformer earth',
    ]),
  );
  expect(ids(picture)).not.toContain('neutral joined to the earth bar');
  const rod = picture.ribbons.find(({ id }) => id === 'rod')?.amperes ?? 0;
  const line = picture.ribbons.find(({ id }) => id === 'line touches the pump')?.amperes ?? 0;
  expect(rod / line).toBeCloseTo(1, 2);
});

test('without residual devices the soil keeps carrying the fault and the breaker stays shut', () => {
  expect(ids(pictured(60, { ...SOLID, ...UNGUARDED }))).toContain('rod');
  expect(ids(pictured(60, SOLID))).not.toContain('rod');
});

test('neutral joined to the earth bar sends working current through the rod', () => {
  const picture = pictured(-0.5, { 'neutral joined to the earth bar': 'yes' });
  expect(ids(picture)).toEqual(expect.arrayContaining(['neutral joined to the earth bar', 'rod', 'transformer earth']));
  expect(picture.parts.map(({ id }) => id)).toContain('board, linked');
});

test('a bare-footed hand on the pump carries the fault where its protective conductor is open', () => {
  const picture = pictured(0.005, { ...SOLID, ...UNGUARDED, ...HANDS_ON, 'pump without protective conductor': 'yes' });
  expect(ids(picture)).toEqual(expect.arrayContaining(['gardener.right hand', 'gardener.feet', 'wellhead']));
  expect(ids(picture)).not.toContain('pump cable.protective');
  expect(picture.conductors.find(({ id }) => id === 'pump cable.protective')?.broken).toBeDefined();
});

test('dry soil shows round the rod, in the bed and in the well', () => {
  const seen = pictured(-0.5, { 'soil dried out': 'yes' }).parts.map(({ id }) => id);
  expect(seen).toEqual(expect.arrayContaining(['rod, dry', 'bed, dry', 'well, dry']));
  expect(pictured(-0.5).parts.map(({ id }) => id)).not.toContain('rod, dry');
});

test('water runs and the impeller turns only while the pump is running', () => {
  const shown = (conditions: Conditions) =>
    pictured(-0.5, conditions).parts.map(({ id, opacity, turning }) => [
      id,
      id === 'trough, lit' ? opacity > 0.5 : turning,
    ]);
  expect(shown({})).toEqual(
    expect.arrayContaining([
      ['trough, lit', true],
      ['pump impeller', true],
    ]),
  );
  expect(shown({ 'pump running': 'no' })).toEqual(
    expect.arrayContaining([
      ['trough, lit', false],
      ['pump impeller', false],
    ]),
  );
});
