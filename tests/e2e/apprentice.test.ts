import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { visit, type Visit, type Visitor } from './visitor.ts';

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

async function begin(visitor: Visitor = {}): Promise<Page> {
  open = await visit(browser, visitor);
  const { page } = open;
  await page.getByRole('button', { name: 'Learn' }).click();
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('.step-title').waitFor();
  return page;
}

const go = (page: Page) => page.locator('.actions .go').click();
const stepShown = (page: Page) => page.locator('.lesson-head p').innerText();

test('a lesson is played from end to end: predicted, run, explained, repaired and marked', async () => {
  const page = await begin();
  await go(page);
  await expect.poll(() => stepShown(page)).toBe('2 of 9');
  // the prediction comes before anything of the result can be seen
  expect(await page.locator('.headline, .ledger, .strip').count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Now run it' }).isDisabled()).toBe(true);
  await page.getByText('It opens at once').click();
  await page.getByRole('button', { name: 'Hint' }).click();
  expect(await page.locator('.hints li').count()).toBe(1);
  await page.getByRole('button', { name: 'Now run it' }).click();
  await page.locator('.verdict.wrong').waitFor();
  expect(await page.locator('.headline').innerText()).toMatch(/Nothing opens/);
  expect(await page.locator('.prose').last().innerText()).toMatch(/only 4\.\d+\sA gets there/);
  await go(page);
  await go(page);
  await page.getByText('Most of the supply', { exact: true }).click();
  await page.getByRole('button', { name: 'Now run it' }).click();
  await page.locator('.verdict.right').waitFor();
  await go(page);
  await go(page);
  await expect.poll(() => stepShown(page)).toBe('8 of 9');
  await page.locator('.answer', { hasText: 'Breaker oversized' }).click();
  await page.getByRole('button', { name: 'Now run it' }).click();
  await page.locator('.verdict.wrong').waitFor();
  await page.locator('.answer', { hasText: 'GFCI' }).click();
  await page.getByRole('button', { name: 'Now run it' }).click();
  await page.locator('.verdict.right').waitFor();
  await go(page);
  await go(page);
  await expect.poll(() => page.locator('.headline').innerText()).toBe('1 of 3 right');
  expect(await page.locator('.told > li').count()).toBe(3);
});

test('progress is kept over a reload, and the list says where to carry on', async () => {
  const page = await begin();
  await go(page);
  await page.getByText('It stays shut').click();
  await page.getByRole('button', { name: 'Now run it' }).click();
  await page.locator('.verdict.right').waitFor();
  await page.reload();
  await expect.poll(() => stepShown(page)).toBe('3 of 9');
  await page.getByRole('button', { name: 'Lessons' }).click();
  await page.getByRole('button', { name: 'Carry on at step 3' }).click();
  await page.locator('.actions .go').waitFor();
  await page.getByRole('button', { name: 'Back' }).click();
  // what was answered stays answered
  expect(await page.locator('.answers').evaluate((node) => (node as HTMLFieldSetElement).disabled)).toBe(true);
});

test('where the browser keeps nothing it says so, and the lesson goes on', async () => {
  const page = await begin({ before: 'Object.defineProperty(window, "indexedDB", { value: undefined })' });
  await page.locator('.not-kept').waitFor();
  await go(page);
  await expect.poll(() => stepShown(page)).toBe('2 of 9');
});

test('a lesson that is done leads on to the place itself', async () => {
  const page = await begin({ path: '#lesson' });
  await page.evaluate(`new Promise((resolve) => {
    const opening = indexedDB.open('ohmward');
    opening.onsuccess = () => {
      const store = opening.result.transaction('progress', 'readwrite').objectStore('progress');
      store.put({ at: 1, progress: { lesson: 'a-rod-is-not-a-wire', step: 9, answers: {}, hints: {}, tried: {}, marks: [] } }, 'a-rod-is-not-a-wire').onsuccess = resolve;
    };
  })`);
  await page.reload();
  await page.getByRole('button', { name: 'Take it further in Explore' }).click();
  await page.locator('.desk').waitFor();
  await expect.poll(() => page.evaluate('location.hash')).toContain('#bakery/line_touches_the_case=solid');
});

test('on a phone the picture stays while what is told is read, and every step begins at its top', async () => {
  const page = await begin({ width: 390, height: 700 });
  const picture = () => page.locator('.stage').evaluate((node) => node.getBoundingClientRect().top);
  await page.evaluate('window.scrollTo(0, 4000)');
  expect(await page.evaluate('window.scrollY')).toBeGreaterThan(50);
  expect(await picture()).toBeGreaterThanOrEqual(0);
  await page.getByRole('button', { name: 'Continue' }).click();
  await page.locator('.answer').first().waitFor();
  await expect.poll(() => page.evaluate('window.scrollY')).toBe(0);
});
