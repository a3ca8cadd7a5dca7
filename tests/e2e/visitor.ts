import type { Browser, Page } from 'playwright-core';
import { inject } from 'vitest';

/** A page of the built app, opened the way a visitor does, and everything that went wrong in it. */
export interface Visit {
  readonly page: Page;
  /** Errors of the console and of scripts; an empty list is expected of every visit. */
  readonly faults: readonly string[];
  close(): Promise<void>;
}

/** How a visitor comes. */
export interface Visitor {
  readonly path?: string;
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** Prefers reduced motion. */
  readonly still?: boolean;
  /** Runs in the page before anything else. */
  readonly before?: string;
}

/** Opens the app in a context of its own, with storage of its own. */
export async function visit(browser: Browser, visitor: Visitor = {}): Promise<Visit> {
  const { path = '', width = 1280, height = 720, dark = false, still = true, before } = visitor;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: still ? 'reduce' : 'no-preference',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(8_000);
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('pageerror', (error) => faults.push(String(error)));
  if (before) await page.addInitScript(before);
  await page.goto(`${inject('address')}${path}`);
  return { page, faults, close: () => context.close() };
}

/** Waits until the picture is drawn, or its words stand in for it. */
export async function drawn(page: Page): Promise<void> {
  await page.locator('.stage-canvas canvas, .twin, .schematic').first().waitFor();
  await page.locator('.stage-loading').waitFor({ state: 'detached' });
}

/** Waits until the words have followed the picture: they come a frame after it, and advice a moment later. */
export async function worded(page: Page): Promise<void> {
  await page.evaluate(
    'new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 300))))',
  );
}

/** A figure with its prefix and unit as a plain number, for example "426 mA" as 0.426. */
export function readFigure(text: string): number {
  const [, digits = '', prefix = ''] = /^([−\d.]+)\s([GMkmµn]?)[AVΩ]$/u.exec(text.trim()) ?? [];
  const factor = { G: 1e9, M: 1e6, k: 1e3, '': 1, m: 1e-3, µ: 1e-6, n: 1e-9 }[prefix];
  if (factor === undefined || digits === '') throw new RangeError(`readFigure: "${text}" is no figure`);
  return Number(digits.replace('−', '-')) * factor;
}
