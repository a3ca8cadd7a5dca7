import { readFileSync } from 'node:fs';
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

async function come(visitor: Visitor = {}): Promise<Page> {
  open = await visit(browser, visitor);
  return open.page;
}

const bakery = readFileSync(new URL('../../lessons/places/bakery.yaml', import.meta.url), 'utf8');
const give = (page: Page, name: string, text: string) =>
  page.locator('input[type=file]').setInputFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) });

test('a link opens the place as it was sent', async () => {
  const page = await come({ path: '#bakery/line_touches_the_case=1_ohm/bonding_jumper_missing/words=iec' });
  await page.locator('.headline').waitFor();
  const pressed = await page.locator('.chip[aria-pressed=true]').allInnerTexts();
  expect(pressed).toHaveLength(2);
  expect(await page.getByRole('button', { name: 'IEC' }).getAttribute('aria-pressed')).toBe('true');
});

test('a link to another place of Kestrel Yard fetches it, with what is the matter there', async () => {
  const page = await come({ path: '#flat/PEN_lost_in_the_street' });
  await expect.poll(() => page.locator('.where').innerText()).toBe('Kestrel Yard · The flat');
  expect(await page.locator('.chip[aria-pressed=true]').allInnerTexts()).toContain('PEN lost in the street');
});

test('every place can be chosen from the menu, and the address follows', async () => {
  const page = await come();
  await page.locator('.headline').waitFor();
  await page.locator('.menu summary').click();
  const choice = page.locator('.menu-place select');
  expect(await choice.locator('option').count()).toBeGreaterThanOrEqual(8);
  await choice.selectOption({ label: 'The office' });
  await expect.poll(() => page.locator('.where').innerText()).toBe('Kestrel Yard · The office');
  expect(new URL(page.url()).hash).toBe('#office');
});

test.each([
  ['#castle', /no place called “castle”/],
  ['#bakery/moon=full', /no condition called “moon”/],
  ['#bakery/line_touches_the_case=2_ohm', /cannot be “2 ohm”/],
  ['#bakery/words=latin', /“latin”/],
  ['#bakery/lamps_on=no/lamps_on=yes', /said twice/],
  ['#lesson/alchemy', /no lesson called “alchemy”/],
  ['#bakery/%E0%A4%A', /cannot be read/],
])('the broken link %s says what is wrong and offers the bakery', async (path, said) => {
  const page = await come({ path });
  expect(await page.locator('.failure').innerText()).toMatch(said);
  await page.getByRole('button', { name: 'Open the bakery' }).click();
  await expect.poll(() => page.locator('.headline').innerText()).toBe('Everything is as it should be');
});

test('a file with faults is answered with all of them and their carets, and what was open stays', async () => {
  const page = await come({ path: '#bakery/line_touches_the_case=solid' });
  const before = await page.locator('.headline').innerText();
  await give(
    page,
    'mine.yaml',
    bakery.replace('length_m: 30', 'length_m: -30').replace('drop.a.supply', 'dropp.a.supply'),
  );
  const printed = await page.locator('.diagnostics').innerText();
  expect(printed).toContain('mine.yaml:');
  expect(printed).toContain('length_m');
  expect(printed).toContain('dropp');
  expect(printed.match(/\^/g)?.length).toBeGreaterThanOrEqual(2);
  await page.getByRole('button', { name: 'Close' }).click();
  expect(await page.locator('.headline').innerText()).toBe(before);
});

test('a file with hundreds of faults is answered with every one of them, and they scroll', async () => {
  const page = await come();
  const things = Array.from({ length: 300 }, (_, at) => `  thing ${at}: { kind: gizmo }`);
  await give(page, 'mine.yaml', `place: x\nregion: iec\nparts:\n${things.join('\n')}\n`);
  await expect.poll(() => page.locator('.diagnostics > li').count()).toBeGreaterThanOrEqual(300);
  expect(await page.locator('.diagnostics').evaluate((list) => list.scrollHeight > list.clientHeight)).toBe(true);
  expect(await page.getByRole('dialog').evaluate((node) => node.getBoundingClientRect().bottom <= innerHeight)).toBe(
    true,
  );
});

test('a sound file without a drawing is told in words and values', async () => {
  const page = await come();
  await page.locator('.headline').waitFor();
  await give(
    page,
    'mine.yaml',
    bakery.replace('drawing: bakery', '').replace('place: The bakery', 'place: My kitchen'),
  );
  await expect.poll(() => page.locator('.where').innerText()).toContain('My kitchen');
  await page.getByRole('button', { name: 'Hot wire touches the mixer’s case' }).click();
  await expect.poll(() => page.locator('.headline').innerText()).toMatch(/opens in/);
  await expect.poll(() => page.locator('.values tbody tr').count()).toBeGreaterThan(40);
  expect(await page.locator('.ledger .way').count()).toBeGreaterThan(0);
});

test('a file can be dropped on the page', async () => {
  const page = await come();
  await page.locator('.headline').waitFor();
  await page.evaluate(`(() => {
    const carried = new DataTransfer();
    carried.items.add(new File(['parts: ['], 'broken.yaml'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
  })()`);
  expect(await page.locator('.diagnostics').innerText()).toContain('broken.yaml:');
});
