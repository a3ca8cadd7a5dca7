/**
 * `npm test`: everything that must hold, in one run with one count. Each stage before the tests counts as one.
 * All stages run even when an early one fails; the last line is "N passed, N failed".
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));

let passed = 0;
let failed = 0;
const began = Date.now();

/** @returns {boolean} whether it held; also counted */
function stage(/** @type {string} */ command) {
  console.log(`\n── ${command}`);
  const start = Date.now();
  const { status } = spawnSync(command, { shell: true, stdio: 'inherit' });
  if (status === 0) passed++;
  else failed++;
  console.log(`── ${status === 0 ? 'holds' : 'FAILED'}, ${((Date.now() - start) / 1000).toFixed(1)} s: ${command}`);
  return status === 0;
}

/** Runs vitest in this process, so that the count below is its own and nothing is printed after it. */
async function tests() {
  const { startVitest } = await import('vitest/node');
  const vitest = await startVitest('test', [], { watch: false });
  const modules = vitest.state.getTestModules();
  const all = modules.flatMap((module) => [...module.children.allTests()]);
  const states = all.map((test) => test.result().state);
  passed += states.filter((state) => state === 'passed').length;
  failed += states.filter((state) => state === 'failed').length;
  const groups = modules.flatMap((module) => [module, ...module.children.allSuites()]);
  const broken = groups.filter((group) => group.errors().length > 0);
  const besides = broken.length + vitest.state.getUnhandledErrors().length + (all.length === 0 ? 1 : 0);
  failed += besides;
  const unrun = states.filter((state) => state === 'skipped' || state === 'pending').length;
  await vitest.close();
  if (besides) console.log(`${besides} failed outside of a test: see above.`);
  if (unrun) console.log(`${unrun} neither passed nor failed: skipped, or not reached.`);
}

if (stage('node .ci/ready.mjs --deps --tools')) {
  /** @type {Record<string, string>} */
  const scripts = JSON.parse(readFileSync('package.json', 'utf8')).scripts;
  const bin = fileURLToPath(new URL('../node_modules/.bin', import.meta.url));
  process.env['PATH'] = `${bin}${process.platform === 'win32' ? ';' : ':'}${process.env['PATH']}`;
  for (const check of (scripts['check'] ?? '').split(' && ')) stage(check);
  stage('npm run --silent build');
  try {
    await tests();
  } catch (error) {
    failed++;
    console.error(error);
  }
}

console.log(`\n${((Date.now() - began) / 1000).toFixed(0)} s in all`);
if (process.exitCode && failed === 0) failed++; // vitest saw a failure that no test owns
process.stdout.write(`${passed} passed, ${failed} failed\n`, () => process.exit(failed === 0 ? 0 : 1));
