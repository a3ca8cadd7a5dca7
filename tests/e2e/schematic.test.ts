import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { drawn, visit } from './visitor.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser({ webgl: false });
});
afterAll(() => browser?.close());

test('the picture becomes a schematic with the same currents, and a symbol pressed says the same', async () => {
  const { page, faults, close } = await visit(browser, { path: '#bakery/line_touches_the_case=solid' });
  await drawn(page);
  await page.getByRole('button', { name: 'Schematic' }).click();
  await page.locator('svg.schematic .ribbon-fault').first().waitFor();
  await page.getByRole('button', { name: /^Mixer,/ }).click();
  expect(await page.locator('.spot-card').innerText()).toContain('V above the floor');
  expect(await page.locator('.card.lit').getAttribute('data-part')).toBe('mixer');
  expect(faults).toEqual([]);
  await close();
});
