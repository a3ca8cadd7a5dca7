import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { drawn, visit, type Visit } from './visitor.ts';

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

async function demonstrate(): Promise<Page> {
  open = await visit(browser, { width: 1920, height: 1080 });
  const { page } = open;
  await page.getByRole('button', { name: 'Demonstrate' }).click();
  await page.locator('.demo').waitFor();
  await drawn(page);
  return page;
}

/** Everything that can be read or heard on the page. */
const readable = (page: Page) => page.locator('body').innerText();
const FIGURE = /\d\s?(?:[mkµ]?A|V)\b/;

test('U covers the outcome, the ledger and every figure, also for those who listen, and uncovers them', async () => {
  const page = await demonstrate();
  await page.keyboard.press('u');
  await page.keyboard.press('1');
  await page.getByText('Outcome covered').first().waitFor();
  expect(await page.getByText('Ledger covered').count()).toBe(1);
  const shown = (await readable(page)).replace(/through 1(?:00)?\sΩ/g, '');
  expect(shown).not.toMatch(/opens in/);
  expect(shown.match(FIGURE)).toBeNull();
  expect(await page.locator('[aria-live]').allInnerTexts()).not.toContain(expect.stringMatching(/opens/));
  for (const label of await page
    .locator('.spot')
    .evaluateAll((spots) => spots.map((spot) => spot.getAttribute('aria-label') ?? '')))
    expect(label).not.toMatch(FIGURE);
  await page.keyboard.press('u');
  await expect.poll(() => page.locator('.headline').innerText()).toMatch(/opens in/);
  expect(await readable(page)).toMatch(FIGURE);
});

test('while covered a change waits at ordinary work until space runs it', async () => {
  const page = await demonstrate();
  await page.keyboard.press('u');
  await page.keyboard.press('1');
  const strip = page.getByRole('slider', { name: 'Moment shown' });
  await expect.poll(() => strip.getAttribute('aria-valuetext')).toBe('before the fault');
  await page.keyboard.press(' ');
  await expect.poll(() => strip.getAttribute('aria-valuetext')).toMatch(/^at /);
});

test('digits press conditions, and the question names what is the matter', async () => {
  const page = await demonstrate();
  await page.keyboard.press('1');
  await page.keyboard.press('3');
  await expect
    .poll(() => page.locator('.demo-question').innerText())
    .toMatch(/mixer’s case[\s\S]*Bonding jumper missing[\s\S]*What opens\?/);
  await page.keyboard.press('3');
  await expect.poll(() => page.locator('.demo-question').innerText()).not.toContain('Bonding jumper');
  await page.keyboard.press('c');
  await page
    .locator('.demo-list')
    .getByRole('button', { name: /Service neutral open/ })
    .click();
  await page.keyboard.press('c');
  await expect.poll(() => page.locator('.demo-question').innerText()).toContain('Service neutral open');
});

test('hands are counted, and stations of the way home are named one by one', async () => {
  const page = await demonstrate();
  await page.keyboard.press('u');
  await page.keyboard.press('1');
  const answer = page.getByRole('button', { name: 'One more for “Nothing”' });
  await answer.click();
  await answer.click();
  await expect.poll(() => answer.innerText()).toContain('2');
  const unknown = () => page.locator('.hop-rail li', { hasText: '?' }).count();
  const before = await unknown();
  expect(before).toBeGreaterThan(1);
  await page.getByRole('button', { name: 'Next station' }).click();
  await expect.poll(unknown).toBe(before - 1);
});

test('the question mark shows the keys, and they can be turned off', async () => {
  const page = await demonstrate();
  await page.keyboard.press('?');
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  await dialog.getByRole('checkbox').uncheck();
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'detached' });
  await page.keyboard.press('u');
  expect(await page.getByText('Outcome covered').count()).toBe(0);
});

test('nothing on the projector is smaller than 22 px', async () => {
  const page = await demonstrate();
  await page.keyboard.press('1');
  const small = await page.evaluate(`[...document.querySelectorAll('.demo *')].flatMap((node) => {
    const words = [...node.childNodes].some((child) => child.nodeType === 3 && child.textContent.trim() !== '');
    const box = node.getBoundingClientRect();
    const size = parseFloat(getComputedStyle(node).fontSize);
    return words && box.width > 2 && node.checkVisibility({ visibilityProperty: true }) && size < 22 ? [node.textContent.trim() + ' ' + size] : [];
  })`);
  expect(small).toEqual([]);
});

test('the way home is walked from the keyboard, station by station, uncovered and covered', async () => {
  const page = await demonstrate();
  await page.keyboard.press('1');
  const here = page.locator('.hop-rail [aria-current=step]');
  const walkedTo = (station: string) => expect.poll(() => here.innerText()).toContain(station);
  await walkedTo('case');
  await page.keyboard.press('ArrowRight');
  await walkedTo('cord');
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowRight');
  await walkedTo('third wire');
  expect(await page.locator('.hop-rail .passed').count()).toBe(4);
  await expect.poll(() => page.locator('.selected-way polyline').count()).toBeGreaterThan(1);
  await page.keyboard.press('u');
  await walkedTo('third wire');
  await expect.poll(() => page.locator('.hop-rail li').nth(4).innerText()).toContain('?');
  await page.keyboard.press('ArrowRight');
  await walkedTo('service panel');
  await page.keyboard.press('PageUp');
  await walkedTo('third wire');
});
