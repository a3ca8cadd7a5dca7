import { expect, test } from 'vitest';
import { account, advice, remedies } from '../../src/explain/index.ts';
import { runBakery } from '../scenario/bakery.ts';

const FAULT = { 'line touches the case': 'solid' };
const TOUCH = { 'baker touches': 'the case', 'baker wears': 'wet shoes' };
const OPEN = { 'protective conductor open': 'yes' };

function told(conditions: Readonly<Record<string, string>>): string {
  const { why, story } = account(runBakery(conditions), 'north-america');
  return [...why, ...story.map(({ text }) => text)].join('\n').replaceAll('\u00a0', ' ');
}

function advised(conditions: Readonly<Record<string, string>>): string {
  const lines = advice(runBakery(conditions), 'north-america');
  return lines.map(({ text }) => text.replaceAll('\u00a0', ' ')).join('\n');
}

// UL 943 class A, from memory: must open from 6 mA, must not below 4 mA.
test('a GFCI that is not there is said to have opened only where it must', () => {
  expect(told({ ...FAULT, ...TOUCH, ...OPEN })).toMatch(
    /One would have seen that 70 mA does not come back, and opened/,
  );
  expect(told({ ...FAULT, ...OPEN, 'baker touches': 'the case' })).toMatch(
    /Only 3\.\d+ mA does not come back, too little/,
  );
});

test('whoever is held by 5 mA and more with no end is never told of no lasting harm', () => {
  const held = told({ ...FAULT, ...TOUCH, 'breaker jammed': 'yes' });
  expect(held).toMatch(/longer it lasts/);
  expect(told({ ...FAULT, ...TOUCH, ...OPEN })).toMatch(/70 mA passes through the baker, and nothing ends it/);
  expect(held + told({ ...FAULT, ...TOUCH, ...OPEN })).not.toMatch(/without (lasting )?harm/);
});

test('a brief shock is told with its time', () => {
  expect(told({ ...FAULT, ...TOUCH })).toMatch(/18\.2 mA passes through the baker for 12\.5 ms: /);
});

test('a fault that flows on, or too long, is not met by what is built, and its heat is told', () => {
  const leak = advised({ 'line touches the case': '100 ohm' });
  expect(leak).not.toMatch(/it meets this fault/);
  // 1.18 A through 100 Ω: 139 W.
  expect(leak).toMatch(/1\.18 A flows on .* 139 W of heat/);
  const late = advised({
    'line touches the case': '1 ohm',
    'bonding jumper missing': 'yes',
    'neutral linked to the case': 'yes',
    'mixer running': 'no',
  });
  expect(late).not.toMatch(/it meets this fault/);
  expect(late).toMatch(/for 5\.67 s, longer than the 800 ms/);
});

test('nothing is called safe while a defect is left', () => {
  const reversed = { ...FAULT, 'line and neutral reversed': 'yes', 'neutral linked to the case': 'yes' };
  for (const conditions of [reversed, { ...FAULT, ...TOUCH, ...OPEN }, { ...FAULT, 'breaker jammed': 'yes' }])
    for (const { text, finding } of advice(runBakery(conditions), 'north-america'))
      if (finding.kind === 'made-safe-by' || finding.kind === 'already-safe')
        expect(/made it safe|meets this fault/.test(text)).toBe(
          finding.left.length === 0 && finding.flow === undefined,
        );
  expect(remedies(runBakery(FAULT))).toMatchObject([{ kind: 'already-safe', left: [] }]);
  expect(advised({ ...FAULT, ...TOUCH, ...OPEN })).toMatch(/kept the baker out of danger: GFCI fitted/);
});

test('a machine at under nine tenths of its volts is not said to work on', () => {
  const starved = told({ ...FAULT, 'service neutral open': 'yes' });
  expect(starved).not.toMatch(/mixer works on/);
  expect(starved).toMatch(/it stands still or labours/);
  expect(told({ ...FAULT, ...OPEN })).toMatch(/mixer works on at 6\.12 A/);
});

test('with the service neutral open the breaker of the fault’s own circuit is told of, not that of the lamps', () => {
  const story = told({ ...FAULT, 'service neutral open': 'yes' });
  expect(story).toMatch(/The mixer’s breaker stays shut: 10\.9 A/);
  expect(story).not.toMatch(/lamps’ breaker (stays shut|carries)/);
});

test('what each leg gives is told apart, so that nobody adds amperes of two legs', () => {
  expect(told({})).toMatch(/26\.7 A on one leg and 23\.\d A on the other, .*the oven \(20\.6 A, across both\)/);
});

test('a jammed breaker with 451 A overheats its cable; one with its rated load only cannot open', () => {
  expect(told({ ...FAULT, 'breaker jammed': 'yes' })).toMatch(/jammed: it carries 451 A .* overheats and can burn/);
  expect(told({ ...FAULT, ...OPEN, 'breaker jammed': 'yes' })).not.toMatch(/overheats/);
});
