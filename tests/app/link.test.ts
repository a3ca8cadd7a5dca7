import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLink, writeLessonLink, writeLink } from '../../src/app/link.ts';
import { initialConditions, type Conditions } from '../../src/installation/index.ts';
import { bakery } from './place.ts';

const { installation } = bakery.build;
const PLACES = { bakery: installation };
const LESSONS = ['a-rod-is-not-a-wire'];
const read = (fragment: string) => readLink(fragment, PLACES, LESSONS);
const initial = initialConditions(installation);

const anyConditions: fc.Arbitrary<Conditions> = fc.record(
  Object.fromEntries(
    Object.entries(installation.conditions).map(([name, { options }]) => [name, fc.constantFrom(...options)]),
  ),
);

describe('a link', () => {
  test('carries any conditions there and back, and only what differs', () => {
    fc.assert(
      fc.property(
        anyConditions,
        fc.constantFrom('north-america' as const, 'iec' as const),
        (conditions, vocabulary) => {
          const fragment = writeLink('bakery', installation, conditions, vocabulary);
          const link = read(`#${fragment}`);
          expect(link).toMatchObject({ kind: 'place', place: 'bakery' });
          if (link.kind !== 'place') return;
          expect({ ...initial, ...link.conditions }).toEqual({ ...initial, ...conditions });
          expect(link.vocabulary ?? installation.region).toBe(vocabulary);
          const differing = Object.keys(conditions).filter((name) => conditions[name] !== initial[name]);
          expect(fragment.split('=').length - 1).toBe(differing.length + (vocabulary === installation.region ? 0 : 1));
        },
      ),
    );
  });

  test('leads to the whole yard', () => {
    expect(read('#yard')).toEqual({ kind: 'yard' });
    expect(read('#yard/moon')).toMatchObject({ kind: 'broken' });
  });

  test('can be read by people and survives mail', () => {
    const conditions = { ...initial, 'line touches the case': '1 ohm' };
    const fragment = writeLink('bakery', installation, conditions, 'iec');
    expect(fragment).toBe('bakery/line_touches_the_case=1_ohm/words=iec');
    expect(fragment).toMatch(/^[\w/=.~-]+$/);
  });

  test('may leave out the option of a switch', () => {
    expect(read('#bakery/bonding_jumper_missing')).toMatchObject({ conditions: { 'bonding jumper missing': 'yes' } });
  });

  test('leads to a lesson or to the list of lessons', () => {
    expect(read(`#${writeLessonLink('a-rod-is-not-a-wire')}`)).toEqual({
      kind: 'lesson',
      lesson: 'a-rod-is-not-a-wire',
    });
    expect(read(`#${writeLessonLink(null)}`)).toEqual({ kind: 'lesson', lesson: null });
    expect(read('')).toEqual({ kind: 'none' });
  });

  test.each([
    ['#castle', 'place', 'castle'],
    ['#constructor', 'place', 'constructor'],
    ['#bakery/__proto__=yes', 'condition', '  proto  '],
    ['#bakery/moon=full', 'condition', 'moon'],
    ['#bakery/line_touches_the_case=2_ohm', 'option', '2 ohm'],
    ['#bakery/lamps_on=no/lamps_on=no', 'twice', 'lamps on'],
    ['#bakery/words=latin', 'words', 'latin'],
    ['#lesson/alchemy', 'lesson', 'alchemy'],
    ['#%E0%A4%A', 'letters', '%E0%A4%A'],
  ])('%s is broken, and what is wrong with it is named', (fragment, kind, said) => {
    expect(read(fragment)).toMatchObject({ kind: 'broken', fault: { kind, said } });
  });

  test('whatever it says, it is read or refused, never thrown', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(['none', 'lesson', 'place', 'broken']).toContain(read(text).kind);
        expect(['none', 'lesson', 'place', 'broken']).toContain(read(`#bakery/${text}`).kind);
      }),
    );
  });
});
