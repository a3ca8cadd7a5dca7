import react from '@vitejs/plugin-react';
import { chmodSync } from 'node:fs';
import type { Plugin } from 'vite';
import { defineConfig, type ViteUserConfig } from 'vitest/config';
import { bundled } from './.ci/bundled.mjs';
import { drawnPlaces } from './.ci/drawnPlaces.mjs';
import { readerApart } from './.ci/readerApart.mjs';
import { PURE } from './.ci/rooms.js';
import { svgAnchors } from './.ci/svgAnchors.mjs';

/** What the built page may do: its own files only, no eval, no inline script or style, nothing sent anywhere. */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "media-src 'self' blob:",
  "connect-src 'self' data: blob:",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

function contentSecurityPolicy(): Plugin {
  return {
    name: 'content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_SECURITY_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

/** The built program can be called by its path. */
function executable(file: string): Plugin {
  return { name: 'executable', apply: 'build', closeBundle: () => chmodSync(file, 0o755) };
}

/** Pure rooms and charts do nothing by being imported, so what is not used of them stays out of a chunk. */
const pure = new RegExp(`/src/(${[...PURE, 'charts'].join('|')})/`);

const app: ViteUserConfig = {
  root: 'src',
  base: './',
  publicDir: '../assets/public',
  plugins: [
    react(),
    svgAnchors(),
    bundled(),
    drawnPlaces(),
    readerApart({ reader: /\/src\/app\/openFile\.ts$/, room: /\/src\/(installation|lesson)\// }),
    contentSecurityPolicy(),
  ],
  build: {
    outDir: '../dist/app',
    emptyOutDir: true,
    target: 'es2022',
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { treeshake: { moduleSideEffects: (id) => !pure.test(id) } },
  },
};

const cli: ViteUserConfig = {
  root: 'src',
  publicDir: false,
  plugins: [svgAnchors(), executable('dist/cli/ohmward.js')],
  ssr: { noExternal: true },
  build: {
    ssr: 'cli/main.ts',
    outDir: '../dist/cli',
    emptyOutDir: true,
    target: 'node20',
    rolldownOptions: {
      output: { entryFileNames: 'ohmward.js', codeSplitting: false, banner: '#!/usr/bin/env node' },
    },
  },
};

const tests: ViteUserConfig = {
  plugins: [react(), svgAnchors(), bundled(), drawnPlaces()],
  test: {
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/e2e/**'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.test.ts'],
          globalSetup: 'tests/e2e/setup.ts',
          fileParallelism: false,
          expect: { poll: { timeout: 8000 } },
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
};

export default defineConfig(({ mode }) => (mode === 'test' ? tests : mode === 'cli' ? cli : app));
