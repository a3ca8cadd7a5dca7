/**
 * Brings what a fresh machine lacks. Node built-ins only: it runs before anything is installed.
 *   --deps     the packages of the lock file (`npm ci`)
 *   --tools    what the tests need: Chromium, ngspice
 *   --bench    what the bench needs: Chromium, a C compiler, SuiteSparse
 *   --browser  Chromium alone, for the pictures
 * As root with apt it installs the tools; otherwise it says exactly what to install and exits 1.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { findChromium, onPath } from './tools.mjs';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));

const say = (/** @type {string} */ line) => process.stderr.write(`${line}\n`);
const wants = (/** @type {string} */ flag) => process.argv.includes(flag);

/** @returns {number} exit status; what it prints goes to stderr, so that stdout stays with the command asked for */
function run(/** @type {string} */ command, /** @type {string[]} */ args) {
  const { status } = spawnSync(command, args, {
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return status ?? 1;
}

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (!((major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22)) {
  say(
    `Ohmward needs Node 20.19 or newer (22.12 or newer of 22); this is ${process.versions.node}. See https://nodejs.org`,
  );
  process.exit(1);
}

/** @returns {boolean} whether node_modules holds what the lock file says, by name and version */
function installed() {
  const mark = 'node_modules/.package-lock.json';
  if (!existsSync(mark)) return false;
  const there = JSON.parse(readFileSync(mark, 'utf8')).packages;
  const wanted = JSON.parse(readFileSync('package-lock.json', 'utf8')).packages;
  return Object.entries(wanted).every(
    ([path, entry]) =>
      path === '' || entry.optional || entry.devOptional || entry.peer || there[path]?.version === entry.version,
  );
}

if (wants('--deps') && !installed()) {
  say('Installing the packages of package-lock.json …');
  if (run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'])) {
    say('npm ci failed: see above. It needs the npm registry, or a filled npm cache.');
    process.exit(1);
  }
}

const packages = [];
if (['--tools', '--bench', '--browser'].some(wants) && !findChromium()) packages.push('chromium');
if (wants('--tools') && !onPath('ngspice')) packages.push('ngspice');
if (wants('--bench') && !onPath('gcc')) packages.push('gcc', 'libc6-dev');
if (wants('--bench') && !existsSync('/usr/include/suitesparse/klu.h')) packages.push('libsuitesparse-dev');

if (packages.length) {
  const mayInstall = process.getuid?.() === 0 && onPath('apt-get') && !process.env['NO_APT'];
  const apt = ['install', '-y', '-q', '--no-install-recommends', ...packages];
  if (!mayInstall) {
    say(`Missing: ${packages.join(', ')}.`);
    say(`  Debian, Ubuntu:  sudo apt-get install ${packages.join(' ')}`);
    if (packages.includes('chromium')) say('  or set CHROMIUM to the path of a Chromium or Chrome that is there.');
    process.exit(1);
  }
  say(`Installing ${packages.join(', ')} by apt …`);
  if (run('apt-get', ['update', '-q']) || run('apt-get', apt)) {
    say(`apt-get ${apt.join(' ')} failed: see above.`);
    process.exit(1);
  }
}
