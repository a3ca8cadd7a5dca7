import type { TestProject } from 'vitest/node';
import { ensureBuilt } from '../../.ci/built.mjs';
import { serve } from '../../.ci/serve.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the production build is served for this run, with a slash at the end: `inject('address')`. */
    address: string;
  }
}

/** Serves the production build to the browser tests on a free port of its own, and stops it after the last one. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  ensureBuilt();
  const { address, close } = await serve({ port: 0 });
  project.provide('address', address);
  return close;
}
