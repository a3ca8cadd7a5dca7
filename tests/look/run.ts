/** Pictures of every screen in every size and theme, and strips of frames of every animation, in `look/`. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Browser, Page } from 'playwright-core';
import { ensureBuilt } from '../../.ci/built.mjs';
import { serve } from '../../.ci/serve.mjs';
import { openBrowser } from '../browser.ts';
import { motions, screens, type Screen } from './screens.ts';
import { contactSheet, type Shot } from './sheet.ts';

const FRAMES = 12;
const SETTLED_ms = 2600; // on the page's own clock: the run home and the camera have ended
const sizes = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
  { width: 390, height: 844 },
] as const;
const manners = [
  { name: 'day', dark: false, still: false },
  { name: 'dark', dark: true, still: false },
  { name: 'still', dark: false, still: true },
] as const;
type Size = (typeof sizes)[number];
type Manner = (typeof manners)[number];

const { values } = parseArgs({ options: { only: { type: 'string', default: '' } } });
const chosen = ({ name }: Screen) => name.includes(values.only);
const folder = fileURLToPath(new URL('../../look/', import.meta.url));
const names = [...screens, ...motions].map(({ name }) => name);
const twice = names.find((name, index) => names.indexOf(name) !== index);
if (twice !== undefined) throw new Error(`Two pictures are called "${twice}": rename one in tests/look/screens.ts.`);

ensureBuilt();
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const { address, close } = await serve({ port: 0 });
const browser = await openBrowser({ webgl: false });
const shots: Shot[] = [];
let failed = 0;
for (const screen of screens.filter(chosen))
  for (const size of sizes)
    for (const manner of manners)
      await attempt(screen, () => picture(browser, screen, size, manner));
for (const motion of motions.filter(chosen)) await attempt(motion, () => strip(browser, motion, motion.every_ms));
await browser.close();
await close();
writeFileSync(`${folder}index.html`, contactSheet(shots));
console.log(`${shots.length} pictures, ${failed} failed: look/index.html`);
process.exitCode = failed === 0 ? 0 : 1;

async function attempt({ name }: Screen, take: () => Promise<void>): Promise<void> {
  try {
    await take();
  } catch (error) {
    failed += 1;
    console.error(`${name}: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`);
  }
}

async function picture(opened: Browser, screen: Screen, size: Size, manner: Manner): Promise<void> {
  const page = await arrive(opened, screen, size, manner);
  await fetched(page);
  await page.clock.runFor(SETTLED_ms);
  const file = fileName(`${screen.name} ${size.width}x${size.height} ${manner.name}`);
  await page.screenshot({ path: folder + file, fullPage: size.width < 600 });
  shots.push({ group: screen.name, label: `${size.width} × ${size.height}, ${manner.name}`, file });
  await page.context().close();
}

async function strip(opened: Browser, motion: Screen, every_ms: number): Promise<void> {
  const page = await arrive(opened, motion, sizes[0], manners[0]);
  for (let frame = 0; frame < FRAMES; frame += 1) {
    await page.clock.runFor(every_ms);
    const file = fileName(`${motion.name} frame ${String(frame + 1).padStart(2, '0')}`);
    await page.locator('.stage').first().screenshot({ path: folder + file });
    shots.push({ group: motion.name, label: `${(frame + 1) * every_ms} ms`, file });
  }
  await page.context().close();
}

/** Opens the page with a clock that moves only when told, so that a picture shows the same moment every time. */
async function arrive(opened: Browser, screen: Screen, size: Size, manner: Manner): Promise<Page> {
  const context = await opened.newContext({
    viewport: size,
    colorScheme: manner.dark ? 'dark' : 'light',
    reducedMotion: manner.still ? 'reduce' : 'no-preference',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(address + (screen.link ?? ''));
  await page.locator('.stage-canvas canvas, .twin, .schematic, dialog, main').first().waitFor();
  await page.waitForTimeout(1500);
  await page.clock.install();
  await page.clock.pauseAt(new Date(Date.now() + 60_000));
  await screen.act?.(page);
  return page;
}

/** Lets what a screen fetches arrive, and the page's own clock go on so that it shows. */
async function fetched(page: Page): Promise<void> {
  for (let turn = 0; turn < 20; turn += 1) {
    await page.waitForTimeout(100);
    await page.clock.runFor(350);
    if ((await page.locator('.stage-loading, [aria-busy=true]').count()) === 0) return;
  }
}

function fileName(words: string): string {
  return `${words.replaceAll(/[^a-z0-9]+/gi, '-')}.png`;
}
