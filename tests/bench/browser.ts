/** The page in Chromium: what a press costs, what a frame costs, what the first view weighs. */
import type { Browser, CDPSession, Page } from 'playwright-core';
import { ensureBuilt } from '../../.ci/built.mjs';
import { serve } from '../../.ci/serve.mjs';
import { openBrowser } from '../browser.ts';
import type { Row } from './row.ts';

const SLOWED = 4; // times, as on a modest machine
const WARMING = 60;
const PRESSES = 200;
const FRAMES_ms = 6000;

/** Script only, as the page's own thread counts it: painting is done in software here and tells nothing about a machine
 *  with a graphics card, and what else the machine does must not count. */
export async function browser(): Promise<readonly Row[]> {
  ensureBuilt();
  const { address, close } = await serve({ port: 0 });
  const opened = await openBrowser();
  try {
    return [
      ...(await presses(opened, address)),
      ...(await frames(opened, address)),
      ...(await firstView(opened, address)),
    ];
  } finally {
    await opened.close();
    await close();
  }
}

async function presses(opened: Browser, address: string): Promise<readonly Row[]> {
  const { page, session } = await desk(opened, address, { width: 1280, height: 1600 });
  await page.getByRole('button', { name: /more…/ }).click();
  const chips = page.locator('.groups .chip[aria-pressed]');
  const count = await chips.count();
  const press = async (index: number) => {
    // Pressed as a keyboard would: the pointer's own wait for a still picture is not what is measured.
    await chips.nth((index * 7 + Math.floor(index / count)) % count).press('Enter', { timeout: 30_000 });
    await page.waitForTimeout(200); // what comes a moment later comes before the next press
  };
  for (let index = 0; index < WARMING; index++) await press(index);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  const events = await trace(session, async () => {
    for (let index = 0; index < PRESSES; index++) await press(index);
  });
  await page.close();
  const clicks = events.filter(({ name, args }) => name === 'EventDispatch' && args?.data?.type === 'click');
  const frames = events.filter(({ name }) => name === 'FireAnimationFrame');
  const spent = clicks.map(({ ts, tdur, pid }) => {
    const frame = frames.find((one) => one.pid === pid && one.ts > ts);
    return (tdur + (frame?.tdur ?? 0)) / 1000;
  });
  const name = `script of a press, to the end of its frame, CPU ${SLOWED}× slower`;
  return [
    row(`${name}, 99th percentile`, percentile(spent, 0.99), 'ms', 16.7, `Chromium, ${spent.length} presses`),
    row(`${name}, median`, percentile(spent, 0.5), 'ms', null, `Chromium, ${spent.length} presses`),
  ];
}

async function frames(opened: Browser, address: string): Promise<readonly Row[]> {
  const lit = '#bakery/line_touches_the_case=solid/breaker_jammed=yes/baker_touches=the_case_and_the_sink';
  const { page, session } = await desk(opened, address, { width: 1920, height: 1080 }, lit);
  await page.waitForTimeout(2000);
  const events = await trace(session, () => page.waitForTimeout(FRAMES_ms));
  await page.close();
  const spent = events.filter(({ name }) => name === 'FireAnimationFrame').map(({ tdur }) => tdur / 1000);
  const name = 'script of one frame at 1920×1080, every way lit';
  return [
    row(`${name}, 95th percentile`, percentile(spent, 0.95), 'ms', 4, `Chromium, ${spent.length} frames`),
    row(`${name}, median`, percentile(spent, 0.5), 'ms', null, `Chromium, ${spent.length} frames`),
  ];
}

/** Everything that is asked for before the words are painted, and the fonts they are set in, as sent: compressed. */
async function firstView(opened: Browser, address: string): Promise<readonly Row[]> {
  const page = await opened.newPage({ viewport: { width: 1280, height: 720 } });
  const session = await page.context().newCDPSession(page);
  const sent = await listen(session);
  await page.goto(address);
  await page.locator('.stage-canvas canvas').waitFor();
  await page.evaluate('document.fonts.ready');
  const painted_s =
    ((await page.evaluate(
      `performance.timeOrigin + performance.getEntriesByName('first-contentful-paint')[0].startTime`,
    )) as number) / 1000;
  await page.close();
  const all = [...sent.values()];
  const first = all.filter(({ asked_s, url }) => asked_s < painted_s || url.endsWith('.woff2'));
  return [
    row('first readable view, as sent', kB(first), 'kB', 220, `${first.length} files; the drawing comes after them`),
    row('the whole page with its drawing', kB(all), 'kB', null, `${all.length} files`),
  ];
}

async function desk(
  opened: Browser,
  address: string,
  viewport: { readonly width: number; readonly height: number },
  path = '',
): Promise<{ readonly page: Page; readonly session: CDPSession }> {
  const page = await opened.newPage({ viewport });
  await page.goto(`${address}${path}`);
  await page.locator('.stage-canvas canvas').waitFor();
  await page.locator('.stage-loading').waitFor({ state: 'detached' });
  return { page, session: await page.context().newCDPSession(page) };
}

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  /** µs */
  readonly ts: number;
  /** Time of the thread itself, µs. */
  readonly tdur: number;
  readonly args?: { readonly data?: { readonly type?: string } };
}

/** What Chromium's timeline records meanwhile, in order of time. */
async function trace(session: CDPSession, meanwhile: () => Promise<void>): Promise<readonly TraceEvent[]> {
  const events: TraceEvent[] = [];
  const ended = new Promise<void>((done) => session.once('Tracing.tracingComplete', () => done()));
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['devtools.timeline'] },
  });
  await meanwhile();
  await session.send('Tracing.end');
  await ended;
  return events.filter(({ tdur }) => tdur !== undefined).toSorted((a, b) => a.ts - b.ts);
}

interface Sent {
  readonly url: string;
  /** s since 1970 */
  readonly asked_s: number;
  bytes: number;
}

async function listen(session: CDPSession): Promise<ReadonlyMap<string, Sent>> {
  const sent = new Map<string, Sent>();
  await session.send('Network.enable');
  session.on('Network.requestWillBeSent', ({ requestId, request: { url }, wallTime }) => {
    if (url.startsWith('http')) sent.set(requestId, { url, asked_s: wallTime, bytes: 0 });
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const one = sent.get(requestId);
    if (one) one.bytes = encodedDataLength;
  });
  return sent;
}

function kB(all: readonly Sent[]): number {
  return all.reduce((sum, { bytes }) => sum + bytes, 0) / 1000;
}

function row(name: string, value: number, unit: string, budget: number | null, peer: string): Row {
  return { name, value, unit, budget, bound: 'at most', peer };
}

function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}
