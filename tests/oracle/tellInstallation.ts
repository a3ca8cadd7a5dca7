import { account, smallestRepair, telling, temptingRepairs, tellVerdicts, verdicts } from '../../src/explain/index.ts';
import { compile } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { anyConditions } from './anyInstallation.ts';
import { installationOf } from './solvedInstallation.ts';

const VOCABULARIES = ['iec', 'north-america'] as const;

/** Draws an installation, every second one with silly values, and has all said about it that can be: what happened in both
 *  vocabularies, the verdicts, the smallest repairs. What is wrong with that; a source that cannot keep to its limit is none. */
export function tellInstallation(seed: number): readonly string[] {
  try {
    const { installation } = installationOf(seed, seed % 2 === 1);
    const given = { build: compile(installation), conditions: anyConditions(installation, seed) };
    const timeline = run(given.build, given.conditions);
    const judged = verdicts(given.build, given.conditions);
    const said = VOCABULARIES.map((vocabulary) => [
      account(timeline, vocabulary, telling(timeline)),
      tellVerdicts(given.build, judged, vocabulary),
    ]);
    smallestRepair(given);
    temptingRepairs(given);
    const gap = /.{0,60}\b(?:NaN|undefined|Infinity)\b.{0,30}/u.exec(JSON.stringify(said));
    return gap === null ? [] : [`of installation ${seed} is said "${gap[0]}"`];
  } catch (error) {
    const refused = error instanceof RangeError && /cannot keep to its limit/.test(error.message);
    return refused ? [] : [`installation ${seed} throws ${String(error)}`];
  }
}
