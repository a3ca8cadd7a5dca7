import { chromium, type Browser } from 'playwright-core';
import { findChromium } from '../.ci/tools.mjs';

const QUIET = [
  '--no-sandbox',
  '--no-first-run',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const SOFTWARE_GL = ['--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
const NO_GL = ['--disable-gpu', '--disable-3d-apis'];

/** Starts a headless Chromium that draws in software, with WebGL or, on request, without any.
 *  @throws Error if no Chromium is found; it says what to do */
export function openBrowser({ webgl = true }: { readonly webgl?: boolean } = {}): Promise<Browser> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('No Chromium: install it, or set CHROMIUM to its path.');
  return chromium.launch({ executablePath, args: [...QUIET, ...(webgl ? SOFTWARE_GL : NO_GL)] });
}
