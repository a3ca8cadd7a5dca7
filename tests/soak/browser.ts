import { ensureBuilt } from '../../.ci/built.mjs';
import { serve } from '../../.ci/serve.mjs';
import { openBrowser } from '../browser.ts';

const FAULT = /touches the mixer’s case/;
const FAULT_ms = 1200;
const ORDER_ms = 400;
const CYCLES = 10; // between two looks at the memory
const WARM = 3; // looks until caches are filled
const GROWTH = 1.15; // of what was in use once warm
const SLACK_B = 2e6;

/** What a page holds after everything unreachable has been collected. */
interface Held {
  readonly heap_B: number;
  readonly nodes: number;
  readonly listeners: number;
}

/** A browser left open with the mixer's fault coming and going: what the page holds must not grow. */
export function browser() {
  let open: ReturnType<typeof leftOpen> | undefined;
  let told = () => '';
  return {
    cases: Infinity,
    async wrong(): Promise<readonly string[]> {
      open ??= leftOpen();
      const page = await open;
      ({ told } = page);
      return page.wrong();
    },
    told: () => told(),
    end: async () => (await open)?.end(),
  };
}

async function leftOpen() {
  ensureBuilt();
  const { address, close } = await serve({ port: 0 });
  const opened = await openBrowser({ webgl: false });
  const page = await opened.newPage({ viewport: { width: 1280, height: 720 } });
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(address);
  await page.locator('.stage-canvas canvas').waitFor();
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable');
  const fault = page.getByRole('button', { name: FAULT }).first();
  let looks = 0;
  let first: Held | undefined;
  let last: Held | undefined;

  async function held(): Promise<Held> {
    await devtools.send('HeapProfiler.collectGarbage');
    const { metrics } = await devtools.send('Performance.getMetrics');
    const of = (name: string) => metrics.find((one) => one.name === name)?.value ?? 0;
    return { heap_B: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners') };
  }

  return {
    async wrong(): Promise<readonly string[]> {
      for (let cycle = 0; cycle < CYCLES; cycle += 1)
        for (const wait_ms of [FAULT_ms, ORDER_ms]) {
          await fault.press('Enter');
          await page.waitForTimeout(wait_ms);
        }
      last = await held();
      looks += 1;
      if (looks === WARM) first = last;
      const wrong = complaints.splice(0);
      if (first === undefined) return wrong;
      if (last.heap_B > first.heap_B * GROWTH + SLACK_B) wrong.push(`the heap grew: ${told()}`);
      if (last.nodes > first.nodes * GROWTH) wrong.push(`nodes were left behind: ${told()}`);
      if (last.listeners > first.listeners * GROWTH) wrong.push(`listeners were left behind: ${told()}`);
      return wrong;
    },
    told,
    async end(): Promise<void> {
      await opened.close();
      await close();
    },
  };

  function told(): string {
    return [first, last]
      .flatMap((one) =>
        one ? [`${(one.heap_B / 1e6).toFixed(2)} MB, ${one.nodes} nodes, ${one.listeners} listeners`] : [],
      )
      .join(' → ');
  }
}
