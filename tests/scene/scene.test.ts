import type { Browser, Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { drawnPlaces } from '../../.ci/drawnPlaces.mjs';
import { openBrowser } from '../browser.ts';
import type {} from './bench/bench.ts'; // what the workbench's page has on its window

const SOLID = { 'line touches the case': 'solid', 'baker touches': 'the case' };
let server: ViteDevServer;
let browser: Browser;

beforeAll(async () => {
  server = await createServer({
    configFile: false,
    plugins: [drawnPlaces()],
    root: '.',
    logLevel: 'error',
    cacheDir: 'node_modules/.vite-bench',
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
    optimizeDeps: { entries: ['tests/scene/bench/bench.ts'] },
  });
  await server.listen();
  browser = await openBrowser({ webgl: false });
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

/** The workbench in a window of its own, with the errors it has raised. */
async function openBench(
  from: Browser = browser,
  size = { width: 800, height: 412 },
): Promise<{ page: Page; errors: string[] }> {
  const page = await from.newPage({ viewport: size });
  const errors: string[] = [];
  page.on('pageerror', ({ message }) => errors.push(message));
  await page.goto(`${server.resolvedUrls?.local[0] ?? ''}tests/scene/bench/index.html`);
  await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'yes');
  return { page, errors };
}

/** How many pixels of the picture are of about this colour. */
function countColour(page: Page, [red, green, blue]: readonly [number, number, number]): Promise<number> {
  return page.evaluate(
    ([r, g, b]) => {
      const canvas = document.querySelector('canvas');
      const copy = document.createElement('canvas');
      [copy.width, copy.height] = [canvas?.width ?? 1, canvas?.height ?? 1];
      const pen = copy.getContext('2d');
      if (!canvas || !pen) return -1;
      pen.drawImage(canvas, 0, 0);
      const { data } = pen.getImageData(0, 0, copy.width, copy.height);
      let count = 0;
      for (let i = 0; i < data.length; i += 4)
        if (Math.abs((data[i] ?? 0) - r) + Math.abs((data[i + 1] ?? 0) - g) + Math.abs((data[i + 2] ?? 0) - b) < 24)
          count++;
      return count;
    },
    [red, green, blue] as const,
  );
}

const FAULT_RED = [0xcf, 0x3a, 0x1b] as const;

test(
  'without WebGL the picture is drawn on canvas, and the fault’s ribbon runs home in it',
  { timeout: 60_000 },
  async () => {
    const { page, errors } = await openBench();
    expect(await page.evaluate(() => window.bench.open({ theme: 'day', stillness: false }))).toBe('canvas');
    await page.evaluate(() => window.bench.show({}, -0.5) && window.bench.frames(0, 1));
    const calm = await countColour(page, FAULT_RED);
    await page.evaluate((conditions) => window.bench.show(conditions, 0.001) && window.bench.frames(1, 1.2), SOLID);
    const early = await countColour(page, FAULT_RED);
    await page.evaluate(() => window.bench.frames(1.2, 2.2));
    const home = await countColour(page, FAULT_RED);
    await page.evaluate((conditions) => window.bench.show(conditions, 0.5) && window.bench.frames(2.2, 3.2), SOLID);
    const drained = await countColour(page, FAULT_RED);
    expect(early).toBeGreaterThan(calm + 500);
    expect(home).toBeGreaterThan(early * 1.2);
    expect(drained).toBeLessThan(calm + 500);
    expect(errors).toEqual([]);
    await page.close();
  },
);

test('with stillness nothing moves, and the fault’s ribbon is whole at once', { timeout: 60_000 }, async () => {
  const { page, errors } = await openBench();
  await page.evaluate(() => window.bench.open({ theme: 'day', stillness: true }));
  await page.evaluate((conditions) => window.bench.show(conditions, 0.001) && window.bench.frames(0, 0.05), SOLID);
  const first = await page.screenshot();
  await page.evaluate(() => window.bench.frames(0.05, 2));
  expect((await page.screenshot()).equals(first)).toBe(true);
  expect(await countColour(page, FAULT_RED)).toBeGreaterThan(5000);
  expect(errors).toEqual([]);
  await page.close();
});

test('with motion the ribbons flow while the moment stands still', { timeout: 60_000 }, async () => {
  const { page } = await openBench();
  await page.evaluate(() => window.bench.open({ theme: 'day', stillness: false }));
  await page.evaluate(() => window.bench.show({}, -0.5) && window.bench.frames(0, 1));
  const first = await page.screenshot();
  await page.evaluate(() => window.bench.frames(1, 1.1));
  expect((await page.screenshot()).equals(first)).toBe(false);
  await page.close();
});

test(
  'slowed to single cycles the marks swing with the phase: a whole period later they stand where they stood',
  { timeout: 60_000 },
  async () => {
    const { page } = await openBench();
    await page.evaluate(() => window.bench.open({ theme: 'day', stillness: false }));
    await page.evaluate(
      () => window.bench.show({ 'mixer running': 'no' }, -0.5) && window.bench.frames(0, 1, -0.5, 2000),
    );
    const first = await page.screenshot();
    await page.evaluate(() => window.bench.frames(1, 1.05, -0.5 + 1 / 240, 2000));
    const quarter = await page.screenshot();
    await page.evaluate(() => window.bench.frames(1.05, 1.1, -0.5 + 1 / 60, 2000));
    const period = await page.screenshot();
    expect(quarter.equals(first)).toBe(false);
    expect(period.equals(first)).toBe(true);
    await page.close();
  },
);

test(
  'a point of the drawing is found on the screen, on a desk and after the camera has moved',
  { timeout: 60_000 },
  async () => {
    const { page } = await openBench();
    await page.evaluate(() => window.bench.open({ theme: 'day', stillness: true }));
    const places = await page.evaluate(() => {
      const { frames } = window.bench.show({}, -0.5);
      window.bench.frames(0, 0.1);
      const scene = window.bench.scene();
      const whole = scene?.toScreen({ x: 800, y: 412 });
      const { x, y, width, height } = frames['panel'] ?? { x: 0, y: 0, width: 0, height: 0 };
      scene?.focus('panel');
      window.bench.frames(0.1, 0.2);
      return { whole, corners: [scene?.toScreen({ x, y }), scene?.toScreen({ x: x + width, y: y + height })] };
    });
    expect(places.whole?.x).toBeCloseTo(400, 0);
    expect(places.whole?.y).toBeCloseTo(206, 0);
    const [upperLeft, lowerRight] = places.corners;
    expect(Math.min(upperLeft?.x ?? -1, upperLeft?.y ?? -1)).toBeGreaterThan(-0.5);
    expect(lowerRight?.x).toBeLessThan(800.5);
    expect(lowerRight?.y).toBeLessThan(412.5);
    expect((lowerRight?.y ?? 0) - (upperLeft?.y ?? 0)).toBeGreaterThan(350);
    await page.close();
  },
);

test('a lost WebGL context ends in a drawn picture', { timeout: 90_000 }, async () => {
  const own = await openBrowser();
  const { page, errors } = await openBench(own, { width: 480, height: 248 });
  // The machine draws in software, so the scene would choose canvas; here it is told that the card is real.
  await page.evaluate(() => {
    const real = WebGL2RenderingContext.prototype.getParameter;
    WebGL2RenderingContext.prototype.getParameter = function (name: number) {
      return name === 0x9246 ? 'A graphics card' : real.call(this, name);
    };
  });
  expect(await page.evaluate(() => window.bench.open({ theme: 'day', stillness: false }))).toBe('webgl');
  await page.evaluate((conditions) => window.bench.show(conditions, 0.001) && window.bench.frames(0, 1), SOLID);
  await page.evaluate(() =>
    document.querySelector('canvas')?.getContext('webgl2')?.getExtension('WEBGL_lose_context')?.loseContext(),
  );
  await page.waitForFunction(() => window.bench.scene()?.renderer === 'canvas', undefined, { timeout: 20_000 });
  await page.evaluate(() => window.bench.frames(1, 2));
  expect(await countColour(page, FAULT_RED)).toBeGreaterThan(1000);
  expect(errors).toEqual([]);
  await own.close();
});

test('where nothing can draw, the error says so by name', { timeout: 60_000 }, async () => {
  const { page } = await openBench();
  const name = await page.evaluate(async () => {
    HTMLCanvasElement.prototype.getContext = () => null;
    OffscreenCanvas.prototype.getContext = () => null;
    return window.bench.open({ theme: 'day', stillness: false }).then(
      () => 'opened',
      (error: Error) => error.name,
    );
  });
  expect(name).toBe('NothingDrawsError');
  await page.close();
});
