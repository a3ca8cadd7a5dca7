import { expect, test } from 'vitest';
import { findings, story } from '../../src/explain/index.ts';
import { compile, installationSchema } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';

/** Somebody holds a live wire on dry boards, another takes hold of them from wet ground (invented values). */
const build = compile(
  installationSchema.parse({
    place: 'A bench',
    region: 'iec',
    parts: {
      supply: { kind: 'source', emf_V: 230, resistance_ohm: 0.5 },
      electrode: { kind: 'impedance', between: ['supply.minus', 'earth'], resistance_ohm: 1, as: 'electrode' },
      'wet ground': { kind: 'floor', resistance_ohm: 200 },
      'dry boards': { kind: 'floor', resistance_ohm: 'dry wood' },
      Ada: { kind: 'person', 'right hand': 'supply.plus', feet: 'dry boards', 'held at': ['left hand'] },
      Ben: { kind: 'person', 'right hand': 'Ada.left hand', feet: 'wet ground' },
    },
  }),
);
const timeline = run(build, {});
const found = findings(timeline);

test('both are told of, the helper as holding the other', () => {
  const felt = found.filter((finding) => finding.kind === 'person-feels');
  expect(felt.map(({ person, holding }) => [person, holding])).toEqual([
    ['Ada', undefined],
    ['Ben', 'Ada'],
  ]);
  const told = story(build, found, 'iec')
    .map(({ text }) => text)
    .join(' ');
  expect(told).toContain('Ben, holding Ada, hand to feet,');
});

test('a current through the chest that fibrillates and never ends stops the breath as well', () => {
  const told = story(build, found, 'iec').filter(({ text }) => text.includes('lose its rhythm'));
  expect(told.length).toBeGreaterThan(0);
  for (const { text } of told) expect(text).toContain('breathing stops after minutes');
});
