/** `npm run soak -- --minutes 30 --seed 7 --only combinations`: long campaigns within a budget of time. Each gets the same
 *  share; the seed is printed, and the same seed draws the same cases. Ends with 1 if anything was wrong. */
import { parseArgs } from 'node:util';
import { browser } from './browser.ts';
import { campaign } from '../scenario/anyCase.ts';
import { bakery } from '../scenario/bakery.ts';
import { rig } from '../scenario/rig.ts';
import { combinations } from './combinations.ts';
import { installations, installationsByOthers, tellings } from './installations.ts';
import { hostileNetworks, networks } from './networks.ts';

/** Draws the case of a number and says what is wrong with it; `cases` is how many there are. */
interface Campaign {
  readonly cases: number;
  readonly wrong: (number: number) => readonly string[] | Promise<readonly string[]>;
  /** What was measured so far. */
  readonly told?: () => string;
  readonly end?: () => Promise<void>;
}

const campaigns: Readonly<Record<string, () => Campaign>> = {
  networks,
  'hostile networks': hostileNetworks,
  installations,
  tellings,
  'installations by ngspice': installationsByOthers,
  'random values': () => ({ cases: Infinity, wrong: campaign(bakery) }),
  'two people': () => ({ cases: Infinity, wrong: campaign(rig()) }),
  combinations: () => combinations(bakery),
  browser,
};

const SHOWN = 20;

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '10' },
    seed: { type: 'string', default: String(Math.floor(Date.now() / 1000)) },
    only: { type: 'string' },
    help: { type: 'boolean', short: 'h', default: false },
  },
});
const minutes = Number(values.minutes);
const seed = Number(values.seed);
const chosen = Object.entries(campaigns).filter(([name]) => values.only === undefined || values.only === name);
const usage =
  `usage: npm run soak -- [--minutes 10] [--seed 7] [--only "${Object.keys(campaigns).join('" | "')}"]\n` +
  'minutes above zero, shared evenly; seed a whole number of zero or more; browser: a page left open, its memory watched';
if (values.help) {
  console.log(usage);
  process.exit(0);
}
if (!(minutes > 0) || !Number.isSafeInteger(seed) || seed < 0 || chosen.length === 0) {
  console.error(usage);
  process.exit(2);
}

console.log(`seed ${seed}, ${minutes} min for ${chosen.map(([name]) => name).join(', ')}`);
let failed = 0;
for (const [name, begin] of chosen) {
  const { cases, wrong, told, end } = begin();
  const began = performance.now();
  const budget_ms = (minutes * 60_000) / chosen.length;
  let done = 0;
  let bad = 0;
  let told_ms = began;
  while (done < cases && performance.now() - began < budget_ms) {
    const found = await wrong(seed + done);
    done += 1;
    if (found.length > 0) bad += 1;
    if (found.length > 0 && bad <= SHOWN) console.error(`${name}: ${found.join('; ')}`);
    if (performance.now() - told_ms > 30_000) {
      told_ms = performance.now();
      console.log(`${name}: ${done} cases, ${bad} wrong, ${((told_ms - began) / 1000).toFixed(0)} s ${told?.() ?? ''}`);
    }
  }
  failed += bad;
  const all = done === cases ? ' (all there are)' : '';
  console.log(
    `${name}: ${done} cases${all}, ${bad} wrong, ${((performance.now() - began) / 1000).toFixed(0)} s ${told?.() ?? ''}`,
  );
  await end?.();
}
console.log(`seed ${seed}: ${failed === 0 ? 'nothing wrong' : `${failed} wrong`}`);
process.exit(failed === 0 ? 0 : 1);
