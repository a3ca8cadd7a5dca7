import AxeBuilder from '@axe-core/playwright';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { visit } from './visitor.ts';

const PLACES = readdirSync('lessons/places').map((file) => file.replace('.yaml', ''));
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser({ webgl: false });
});
afterAll(() => browser?.close());

test.each(PLACES)('the %s is opened from the lane by keyboard, and the address follows', async (place) => {
  const title = /^place: (.+)$/m.exec(readFileSync(`lessons/places/${place}.yaml`, 'utf8'))?.[1] ?? '';
  const { page, faults, close } = await visit(browser, { path: '#yard' });
  const front = page.locator('.yard-place', { hasText: title });
  expect((await front.innerText()).length).toBeGreaterThan(title.length + 20); // its name and what it teaches
  await front.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.where').innerText()).toBe(`Kestrel Yard · ${title}`);
  await expect.poll(() => new URL(page.url()).hash).toBe(`#${place}`);
  expect(faults).toEqual([]);
  await close();
});

test('a way to a front can be turned back, and the lane is whole again', async () => {
  const { page, close } = await visit(browser, { path: '#yard', still: false });
  await page.waitForTimeout(600);
  await page.locator('.yard-place').nth(1).focus();
  await page.keyboard.press('Enter');
  await page.locator('.yard-sheet.near').waitFor();
  await page.keyboard.press('Escape');
  await page.waitForTimeout(900);
  expect(await page.locator('.yard-sheet.near').count()).toBe(0);
  expect(await page.locator('.yard-sheet').evaluate((node) => getComputedStyle(node).transform)).toMatch(
    /^matrix\(1, 0, 0, 1, 0, 0\)$/,
  );
  expect(new URL(page.url()).hash).toBe('#yard');
  await close();
});

test.each([
  { dark: false, width: 1280, height: 720 },
  { dark: true, width: 1280, height: 720 },
  { dark: false, width: 390, height: 844 },
])('the lane keeps WCAG 2.2 AA, and every plate lies whole within it: %o', async (look) => {
  const { page, faults, close } = await visit(browser, { ...look, path: '#yard' });
  await page.locator('.yard-place').first().waitFor();
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual(
    [],
  );
  const lane = await page.locator('.yard-lane').boundingBox();
  const plates = await Promise.all((await page.locator('.yard-plate').all()).map((plate) => plate.boundingBox()));
  // On a phone the lane is scrolled, and begins where it begins: nothing of it lies out of reach.
  const reach = await page.locator('.yard-window').evaluate((node) => {
    node.scrollLeft = 0;
    return (node.firstElementChild?.getBoundingClientRect().left ?? -1) - node.getBoundingClientRect().left;
  });
  expect(reach).toBeGreaterThanOrEqual(0);
  for (const [index, plate] of plates.entries()) {
    expect(plate && lane && plate.y + plate.height <= lane.y + lane.height && plate.x >= lane.x, `plate ${index}`).toBe(
      true,
    );
    for (const other of plates.slice(index + 1))
      expect(
        plate &&
          other &&
          plate.x < other.x + other.width &&
          other.x < plate.x + plate.width &&
          plate.y < other.y + other.height &&
          other.y < plate.y + plate.height,
      ).toBe(false);
  }
  expect(faults).toEqual([]);
  await close();
});

test('the lane weighs no more than a place may', () => {
  const files = readdirSync('assets/yard').map((file) => readFileSync(`assets/yard/${file}`));
  expect(files.length).toBeGreaterThan(10);
  expect(gzipSync(Buffer.concat(files)).length).toBeLessThan(40_000);
});
