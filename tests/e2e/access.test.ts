import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { drawn, visit } from './visitor.ts';

const FAULT = '#bakery/line_touches_the_case=solid/baker_touches=the_case';

/** What axe finds wrong, by rule and place. WCAG 2.2 level AA, rules of axe-core. */
async function wrong(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
    .analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}\n${failureSummary ?? ''}`),
  );
}

describe('without WebGL', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser({ webgl: false });
  });
  afterAll(() => browser?.close());

  const SCREENS: readonly (readonly [string, string, (page: Page) => Promise<void>])[] = [
    ['the desk', FAULT, (page) => page.getByRole('button', { name: /more…/ }).click()],
    [
      'a thing in the picture',
      FAULT,
      async (page) => {
        await drawn(page);
        await page.getByRole('button', { name: /^Mixer,/ }).click();
      },
    ],
    [
      'the story and the charts',
      FAULT,
      async (page) => {
        await page.getByText('The story, in order of time').click();
        await page.getByText('Charts').click();
        await page.locator('.log-chart').first().waitFor();
        await page.getByText('Every value').click();
        await page.locator('.values').waitFor();
      },
    ],
    ['the desk, covered', FAULT, (page) => page.keyboard.press('u')],
    ['the menu', '', (page) => page.getByText('More', { exact: true }).click()],
    [
      'the model',
      '',
      async (page) => {
        await page.getByText('More', { exact: true }).click();
        await page.getByRole('button', { name: 'About the model' }).click();
      },
    ],
    [
      'Demonstrate',
      FAULT,
      async (page) => {
        await page.getByRole('button', { name: 'Demonstrate' }).click();
        await page.locator('.demo').waitFor();
        await page.keyboard.press('u');
      },
    ],
    [
      'the list in Demonstrate',
      FAULT,
      async (page) => {
        await page.getByRole('button', { name: 'Demonstrate' }).click();
        await page.getByRole('button', { name: 'Conditions' }).click();
      },
    ],
    ['the list of lessons', '#lesson', (page) => page.locator('.lesson-card').waitFor()],
    [
      'a prediction',
      '#lesson/a-rod-is-not-a-wire',
      async (page) => {
        await page.locator('.actions .go').click();
        await page.locator('.answers').waitFor();
      },
    ],
    [
      'an answer told',
      '#lesson/a-rod-is-not-a-wire',
      async (page) => {
        await page.locator('.actions .go').click();
        await page.getByText('It opens at once').click();
        await page.locator('.actions .go').click();
        await page.locator('.verdict').waitFor();
      },
    ],
    ['a broken link', '#castle', (page) => page.locator('.failure').waitFor()],
  ];

  /** On a phone these are laid out anew; the others only grow narrower. */
  const ANEW = ['the desk', 'a thing in the picture', 'the menu', 'Demonstrate', 'a prediction', 'an answer told'];

  describe.each([
    { dark: false, width: 1280, height: 720 },
    { dark: true, width: 1280, height: 720 },
    { dark: false, width: 390, height: 844 },
  ])('%o', (look) => {
    test.each(SCREENS.filter(([name]) => look.width > 900 || ANEW.includes(name)))(
      '%s keeps WCAG 2.2 AA',
      async (_, path, arrive) => {
        const { page, faults, close } = await visit(browser, { ...look, path });
        await arrive(page);
        if (path !== '#castle' && path !== '#lesson') await drawn(page);
        expect(await wrong(page)).toEqual([]);
        expect(faults).toEqual([]);
        await close();
      },
    );
  });

  test('the picture is drawn on a plain canvas', async () => {
    const { page, faults, close } = await visit(browser, { path: FAULT });
    await drawn(page);
    expect(await page.locator('.stage-canvas canvas').count()).toBe(1);
    const colours = (await page.evaluate(`(() => {
      const canvas = document.querySelector('.stage-canvas canvas');
      const copy = document.createElement('canvas');
      [copy.width, copy.height] = [64, 32];
      const pen = copy.getContext('2d');
      pen.drawImage(canvas, 0, 0, 64, 32);
      const { data } = pen.getImageData(0, 0, 64, 32);
      return new Set(Array.from({ length: 2048 }, (_, i) => data.slice(i * 4, i * 4 + 3).join())).size;
    })()`)) as number;
    expect(colours).toBeGreaterThan(200);
    expect(faults).toEqual([]);
    await close();
  });

  test('without any canvas the words and the table say the same', async () => {
    const before = 'HTMLCanvasElement.prototype.getContext = () => null; window.OffscreenCanvas = undefined;';
    const { page, close } = await visit(browser, { path: FAULT, before });
    await page.locator('.twin').waitFor();
    expect(await page.locator('.twin').innerText()).toMatch(/Mixer: .*V above the floor/);
    expect(await page.locator('.values tbody tr').count()).toBeGreaterThan(40);
    expect(await page.locator('.headline').innerText()).toMatch(/opens in/);
    await close();
  });

  test('where motion is not wanted nothing moves by itself', async () => {
    const { page, close } = await visit(browser, { path: '', still: true });
    await drawn(page);
    await page.getByRole('button', { name: 'Hot wire touches the mixer’s case' }).click();
    await page.getByRole('button', { name: 'Play' }).waitFor();
    await page.mouse.move(640, 715);
    await page.waitForTimeout(400);
    const one = await page.locator('.stage-canvas').screenshot();
    await page.waitForTimeout(700);
    const other = await page.locator('.stage-canvas').screenshot();
    expect(one.equals(other)).toBe(true);
    await close();
  });
});

describe('with WebGL', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser({ webgl: true });
  });
  afterAll(() => browser?.close());

  test('the page opens, draws and says nothing is wrong', async () => {
    const { page, faults, close } = await visit(browser, { path: FAULT });
    await drawn(page);
    expect(await page.locator('.stage-canvas canvas').count()).toBe(1);
    expect(faults).toEqual([]);
    await close();
  });
});
