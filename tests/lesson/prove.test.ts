import { expect, test } from 'vitest';
import {
  claimText,
  fill,
  prove,
  readProse,
  repairText,
  repairWorks,
  type Lesson,
  type Step,
} from '../../src/lesson/index.ts';
import { bakery } from '../scenario/bakery.ts';
import { LESSONS, lessonNamed } from './lessons.ts';

const VOCABULARIES = ['north-america', 'iec'] as const;

test.each(LESSONS)('the solver proves everything %s teaches', (id) => {
  const proofs = prove(lessonNamed(id), bakery);
  expect(proofs.length).toBeGreaterThan(5);
  expect(proofs.filter(({ holds }) => !holds)).toEqual([]);
});

const rod = lessonNamed('a-rod-is-not-a-wire');

function changed(change: (step: Step) => Step): Lesson {
  return { ...rod, steps: rod.steps.map(change) };
}

test('a lesson that marks the wrong answer as right is refused by the solver', () => {
  const lesson = changed((step) =>
    step.kind === 'predict'
      ? { ...step, answers: step.answers.map((answer, index) => ({ ...answer, right: index === 0 })) }
      : step,
  );
  const refuted = prove(lesson, bakery).filter(({ holds }) => !holds);
  expect(refuted.map(({ at }) => at)).toEqual([
    'steps.1.answers.0.claim',
    'steps.1.answers.2.claim',
    'steps.4.answers.0.claim',
    'steps.4.answers.2.claim',
  ]);
  expect(refuted[0]).toMatchObject({ expected: true, value: 'never' });
});

test('a repair that is called right and leaves the danger is refused by the solver', () => {
  const lesson = changed((step) =>
    step.kind === 'make-safe' ? { ...step, repairs: step.repairs.map((repair) => ({ ...repair, right: true })) } : step,
  );
  const refuted = prove(lesson, bakery).filter(({ holds }) => !holds);
  expect(refuted.map(({ at }) => at)).toEqual(['steps.7.repairs.0', 'steps.7.repairs.1']);
});

test('a claim that depends on which breaker somebody bought does not hold', () => {
  // 1 Ω: about five times the rating, where one breaker of the family opens in seconds and another in many.
  const claim = { claim: { kind: 'device', device: 'mixer breaker', operates: { within_s: 6 } }, with: [] } as const;
  const lesson: Lesson = { ...rod, given: ['line touches the case=1 ohm'], steps: [], proves: [claim] };
  expect(prove(lesson, bakery)[0]?.holds).toBe(false);
});

test('a claim can be read in one line', () => {
  expect(rod.proves.map((assertion) => claimText(assertion, 'iec').replaceAll('\u00a0', ' '))).toContain(
    'own rod below 5 A (line touches the case=solid)',
  );
});

test('only the third wire and the GFCI keep the baker out of danger', () => {
  const step = rod.steps.find(({ kind }) => kind === 'make-safe');
  if (step?.kind !== 'make-safe') throw new Error('the lesson has no repair');
  const works = step.repairs.filter(({ change }) => repairWorks(bakery, step, change));
  expect(works.map((repair) => repairText(bakery, repair, 'north-america'))).toEqual([
    'Third wire goes to the panel',
    'GFCI fitted',
  ]);
});

test.each(VOCABULARIES)('every text of every lesson is filled with true figures in the words of %s', (vocabulary) => {
  for (const { steps, removes, afterwards } of LESSONS.map(lessonNamed)) {
    expect(fill(bakery, `${removes} ${afterwards}`, [], vocabulary)).not.toContain('{{');
    for (const step of steps) {
      const asked = 'ask' in step ? [step.ask, ...step.hints] : [];
      const answers = step.kind === 'predict' ? step.answers.flatMap(({ say, because }) => [say, because]) : [];
      const texts = [step.text, ...asked, ...answers].map((text) => fill(bakery, text, step.given, vocabulary));
      const repairs = step.kind === 'make-safe' ? step.repairs : [];
      texts.push(...repairs.map(({ change, because }) => fill(bakery, because, [...step.given, change], vocabulary)));
      for (const text of texts) expect(text).not.toMatch(/\{\{|undefined|NaN|∞|\[object/);
    }
  }
});

test('figures in prose come from the solver: the rod’s own ohms, the loop, and what that leaves', () => {
  const given = ['line touches the case', 'protective conductor to its own rod'];
  const told = fill(bakery, '{{ ohms of own rod }} {{ supply of transformer }} {{ word of rod }}', given, 'iec');
  expect(told.replaceAll('\u00a0', ' ')).toBe('25 Ω 120 V earth rod');
  const loop = Number.parseFloat(fill(bakery, '{{ loop of line touches the case }}', given, 'iec'));
  const amperes = Number.parseFloat(fill(bakery, '{{ amperes of line touches the case }}', given, 'iec'));
  expect(loop * amperes).toBeCloseTo(120, -0.5);
  const whole = fill(bakery, '{{ opening of mixer breaker | protective conductor to its own rod=no }}', given, 'iec');
  expect(whole).toMatch(/ms$/);
  expect(fill(bakery, '{{ opening of mixer breaker }}', given, 'iec')).toBe('never');
});

test('the lesson is read in five to eight minutes', () => {
  // 150 words a minute and half a minute for each prediction and repair: a learner who thinks (common practice, no source).
  const asked = rod.steps.filter(({ kind }) => kind === 'predict' || kind === 'make-safe');
  const texts = rod.steps.flatMap((step) => {
    const right = step.kind === 'predict' ? step.answers.find((answer) => answer.right) : undefined;
    const says = step.kind === 'predict' ? step.answers.map(({ say }) => say) : [];
    const text = [step.text, 'ask' in step ? step.ask : '', ...says, right?.because ?? ''].join(' ');
    return fill(bakery, text, step.given, 'north-america').trim().split(/\s+/);
  });
  const minutes = texts.length / 150 + asked.length / 2;
  expect(minutes).toBeGreaterThan(5);
  expect(minutes).toBeLessThan(8);
  expect(rod.minutes).toBe(Math.round(minutes));
});

test('prose is headings, paragraphs and lists, with strong and emphasised words', () => {
  expect(readProse('# Head\nOne *two*\n**three** four.\n\n- a\n- b\n  c')).toEqual([
    { kind: 'heading', spans: [{ kind: 'plain', text: 'Head' }] },
    {
      kind: 'paragraph',
      spans: [
        { kind: 'plain', text: 'One ' },
        { kind: 'emphasis', text: 'two' },
        { kind: 'plain', text: ' ' },
        { kind: 'strong', text: 'three' },
        { kind: 'plain', text: ' four.' },
      ],
    },
    { kind: 'list', items: [[{ kind: 'plain', text: 'a' }], [{ kind: 'plain', text: 'b c' }]] },
  ]);
  expect(readProse('<b>not</b> 2 * 3')).toEqual([
    {
      kind: 'paragraph',
      spans: [
        { kind: 'plain', text: '<b>not</b> 2 ' },
        { kind: 'plain', text: '*' },
        { kind: 'plain', text: ' 3' },
      ],
    },
  ]);
});
