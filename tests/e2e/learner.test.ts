import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { conditionSentence } from '../../src/explain/index.ts';
import { openBrowser } from '../browser.ts';
import { bakery } from '../scenario/bakery.ts';
import { drawn, readFigure, visit, type Visit, type Visitor, worded } from './visitor.ts';

let browser: Browser;
let open: Visit | undefined;

beforeAll(async () => {
  browser = await openBrowser({ webgl: false });
});
afterAll(() => browser?.close());
afterEach(async () => {
  expect(open?.faults ?? []).toEqual([]);
  await open?.close();
  open = undefined;
});

async function come(visitor: Visitor = {}): Promise<Page> {
  open = await visit(browser, visitor);
  await open.page.locator('.headline').waitFor();
  return open.page;
}

const headline = (page: Page) => page.locator('.headline').innerText();
const FAULT = 'Hot wire touches the mixer’s case';

/** Total and ways of the ledger, A. */
async function readLedger(page: Page): Promise<{ readonly total: number; readonly ways: readonly number[] }> {
  const cells = await page.locator('.ledger .way td').allInnerTexts();
  return { total: readFigure(await page.locator('.ledger tfoot td').innerText()), ways: cells.map(readFigure) };
}

describe('at the desk', () => {
  test('one press breaks the insulation, and the breaker is said to open', async () => {
    const page = await come();
    expect(await headline(page)).toBe('Everything is as it should be');
    await page.getByRole('button', { name: FAULT }).click();
    await expect.poll(() => headline(page)).toMatch(/breaker\s+opens in/);
    const { total } = await readLedger(page);
    expect(total).toBeGreaterThan(300); // hundreds of amperes: a metallic way home
  });

  test('another outcome is read from its first sentence, wherever the last account was left', async () => {
    const page = await come({ height: 560 });
    const account = page.locator('#account');
    await account.evaluate((node) => node.scrollTo({ top: node.scrollHeight }));
    await page.getByRole('button', { name: FAULT }).click();
    await expect.poll(() => headline(page)).toMatch(/breaker\s+opens in/);
    await expect.poll(() => account.evaluate((node) => node.scrollTop)).toBe(0);
  });

  const FAULTED = 'line touches the case';
  const TEN: readonly (readonly string[])[] = [
    [FAULTED],
    [FAULTED, 'protective conductor open'],
    [FAULTED, 'bonding jumper missing'],
    [FAULTED, 'protective conductor to its own rod'],
    [FAULTED, 'loose joint'],
    [FAULTED, 'breaker jammed'],
    [FAULTED, 'breaker oversized', 'loose joint'],
    ['service neutral open'],
    ['neutral linked to the case'],
    [FAULTED, 'gfci fitted', 'protective conductor to its own rod'],
  ];
  const sentence = (condition: string) =>
    condition === FAULTED
      ? FAULT
      : conditionSentence(condition, 'yes', 'north-america', bakery.installation.conditions[condition]);

  test('ten things that may be the matter are told in ten ways, and each ledger adds up', async () => {
    const page = await come({ height: 1400 });
    await page.getByRole('button', { name: /more…/ }).click();
    const told: string[] = [];
    for (const matter of TEN) {
      for (const condition of matter)
        await page
          .locator('.groups')
          .getByRole('button', { name: sentence(condition), exact: true })
          .click();
      await worded(page);
      told.push(await page.locator('.account').innerText());
      if (await page.locator('.ledger').isVisible()) {
        const { total, ways } = await readLedger(page);
        const sum = ways.reduce((one, other) => one + other, 0);
        expect(Math.abs(sum - total), matter.join(', ')).toBeLessThanOrEqual(0.01 * total + 1e-9); // three figures shown
      }
      await page.getByRole('button', { name: 'Reset' }).click();
      await expect.poll(() => headline(page)).toBe('Everything is as it should be');
    }
    expect(new Set(told).size).toBe(TEN.length);
  });

  test('undo takes back the last change, by button and by key', async () => {
    const page = await come();
    await page.getByRole('button', { name: FAULT }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => headline(page)).toBe('Everything is as it should be');
    await page.getByRole('button', { name: 'Bonding jumper missing' }).click();
    await expect
      .poll(() => page.getByRole('button', { name: 'Bonding jumper missing' }).getAttribute('aria-pressed'))
      .toBe('true');
    await page.keyboard.press('Control+z');
    await expect
      .poll(() => page.getByRole('button', { name: 'Bonding jumper missing' }).getAttribute('aria-pressed'))
      .toBe('false');
  });

  test('a fault has degrees, and the person a stance', async () => {
    const page = await come({ height: 1400 });
    await page.getByRole('button', { name: FAULT }).click();
    const solid = (await readLedger(page)).total;
    await page.getByRole('radio', { name: /leaks to the mixer’s case through 100 Ω/ }).check({ force: true });
    await expect.poll(async () => (await readLedger(page)).total).toBeLessThan(solid / 100); // about 1.2 A of 450
    await page.getByRole('button', { name: /more…/ }).click();
    await page.getByRole('radio', { name: 'The baker’s hand is on the case' }).check({ force: true });
    await page.getByRole('button', { name: 'Third wire open at the outlet' }).click();
    await expect.poll(() => page.locator('.ledger').innerText()).toContain('Through the baker');
  });

  test('what would have made it safe can be tried at once', async () => {
    const page = await come({ path: '#bakery/line_touches_the_case=solid/protective_conductor_open=yes' });
    await page.getByRole('button', { name: 'Try it' }).first().click();
    await expect.poll(() => headline(page)).toMatch(/opens in/);
  });

  test('a way in the ledger, a thing in the picture and a step in the profile light up together', async () => {
    const page = await come({ path: '#bakery/line_touches_the_case=solid' });
    await drawn(page);
    await page.locator('.ledger .way button').first().click();
    await expect.poll(() => page.locator('.spot.lit').count()).toBeGreaterThan(2);
    expect(await page.locator('.selected-way polyline').count()).toBeGreaterThan(2);
    expect(await page.locator('.profile-lit').count()).toBeGreaterThan(0);
    await page.locator('.ledger .way button').first().click();
    await page.mouse.move(5, 5);
    await page.locator('.ledger .way button').first().blur();
    await expect.poll(() => page.locator('.spot.lit').count()).toBe(0);
  });

  test('every thing in the picture can be reached and changed by keyboard', async () => {
    const page = await come();
    await drawn(page);
    await page.locator('.spot[tabindex="0"]').focus();
    const names: string[] = [];
    const all = await page.locator('.spot').count();
    for (let step = 0; step < all; step++) {
      names.push((await page.evaluate('document.activeElement.getAttribute("aria-label")')) as string);
      await page.keyboard.press('ArrowRight');
    }
    expect(new Set(names).size).toBe(all);
    await page
      .getByRole('button', { name: /^Bonding jumper/ })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    const card = page.getByRole('group', { name: 'Bonding jumper' });
    await card.getByRole('button', { name: 'Bonding jumper missing' }).click();
    await expect.poll(() => page.evaluate('location.hash')).toBe('#bakery/bonding_jumper_missing=yes');
    await page.keyboard.press('Escape');
    await expect.poll(() => card.count()).toBe(0);
  });

  test('the strip is scrubbed by keyboard and says its moment; before the fault the ledger is that of ordinary work', async () => {
    const page = await come({ path: '#bakery/line_touches_the_case=solid' });
    const strip = page.getByRole('slider', { name: 'Moment shown' });
    await strip.focus();
    await page.keyboard.press('Home');
    await expect.poll(() => strip.getAttribute('aria-valuetext')).toBe('before the fault');
    await expect.poll(() => page.locator('.ledger caption').innerText()).toContain('working');
    await page.keyboard.press('End');
    await expect.poll(() => strip.getAttribute('aria-valuetext')).toMatch(/^at /);
    await expect.poll(() => page.locator('.ledger caption').innerText()).not.toContain('working');
  });

  test('a run that is played moves on by itself, slower when asked, and stops', async () => {
    const page = await come({ path: '#bakery/line_touches_the_case=solid', still: false });
    await drawn(page);
    await page.getByLabel('Slow motion').selectOption('100');
    await page.getByRole('button', { name: 'Play' }).click();
    const strip = page.getByRole('slider', { name: 'Moment shown' });
    await expect.poll(() => strip.inputValue().then(Number)).toBeGreaterThan(600); // past the opening
    await page.getByRole('button', { name: 'Play' }).waitFor(); // over: it can be played again
  });

  test('what is to be heard is also to be read', async () => {
    const page = await come({ path: '#bakery/line_touches_the_case=solid', still: false });
    await drawn(page);
    await page.getByRole('button', { name: 'Sound off' }).click();
    await page.getByLabel('Slow motion').selectOption('100');
    await page.getByRole('button', { name: 'Play' }).click();
    await expect.poll(() => page.locator('.caption').innerText()).toMatch(/breaker snaps open/);
  });

  test('the other vocabulary tells the same facts in its own words', async () => {
    const page = await come({ path: '#bakery/line_touches_the_case=solid' });
    const before = await readLedger(page);
    expect(await page.locator('.ledger').innerText()).toContain('Third wire');
    await page.getByRole('button', { name: 'IEC' }).click();
    await expect.poll(() => page.locator('.ledger').innerText()).toContain('Protective conductor');
    expect(await readLedger(page)).toEqual(before);
    await expect.poll(() => page.evaluate('location.hash')).toContain('words=iec');
  });
});

describe('on a phone', () => {
  test('everything fits the width, and the loop is panned hop by hop', async () => {
    const page = await come({ width: 390, height: 844, path: '#bakery/line_touches_the_case=solid' });
    await drawn(page);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
    const first = await page.locator('.hop-bar span').innerText();
    for (let hop = 0; hop < 5; hop++) await page.getByRole('button', { name: 'Next hop' }).click();
    await expect.poll(() => page.locator('.hop-bar span').innerText()).not.toBe(first);
    await expect
      .poll(() => page.evaluate('document.querySelector(".stage-scroller").scrollLeft') as Promise<number>)
      .toBeGreaterThan(0);
  });
});
