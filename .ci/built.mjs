/** Builds `dist/` when it is missing or older than anything it is made from. Run directly, it does just that. */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const top = fileURLToPath(new URL('..', import.meta.url));
const sources = [
  'src',
  'assets',
  'lessons',
  'package-lock.json',
  'vite.config.ts',
  'tsconfig.json',
  '.ci/svgAnchors.mjs',
  '.ci/bundled.mjs',
  '.ci/readerApart.mjs',
];
const results = ['dist/app/index.html', 'dist/cli/ohmward.js'];

/** Newest change below a path, ms; folders count, so that a deleted file shows. */
function newest(/** @type {string} */ path) {
  const { mtimeMs } = statSync(path);
  /** @type {string[]} */
  const below = statSync(path).isDirectory() ? readdirSync(path, { recursive: true, encoding: 'utf8' }) : [];
  return below.reduce((latest, name) => Math.max(latest, statSync(`${path}/${name}`).mtimeMs), mtimeMs);
}

/**
 * Whether `dist/` is newer than all it is made from.
 * @returns {boolean}
 */
function isBuilt() {
  const files = results.map((name) => top + name);
  if (!files.every((file) => existsSync(file))) return false;
  const built = Math.min(...files.map((file) => statSync(file).mtimeMs));
  return sources
    .map((name) => top + name)
    .filter((path) => existsSync(path))
    .every((path) => newest(path) <= built);
}

/**
 * Builds if needed; what the build says goes to stderr.
 * @throws {Error} if the build fails
 */
export function ensureBuilt() {
  if (isBuilt()) return;
  process.stderr.write('Building …\n');
  const { status } = spawnSync('npm', ['run', '--silent', 'build'], {
    cwd: top,
    stdio: ['ignore', 2, 2],
    env: { ...process.env, NODE_ENV: 'production' }, // vitest says "test", and the page would carry React's inspector
    shell: process.platform === 'win32',
  });
  if (status !== 0) throw new Error('The build failed: see above.');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) ensureBuilt();
