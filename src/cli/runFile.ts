import { advice, remedies, account, telling, type Vocabulary } from '../explain/index.ts';
import type { Tolerance } from '../protection/index.ts';
import { run } from '../scenario/index.ts';
import { openNamed } from './open.ts';
import { printed } from './printed.ts';
import { resultOf } from './result.ts';
import type { ExitCode, World } from './world.ts';

/** What `ohmward run` was asked. */
export interface RunRequest {
  readonly file: string;
  readonly set: readonly string[];
  readonly json: boolean;
  readonly vocabulary: Vocabulary | undefined;
  readonly tolerance: Tolerance;
  readonly until_s: number | undefined;
}

/** Runs an installation and prints its account and ledger, or everything as JSON. */
export function runFile(world: World, { file, set, json, vocabulary, tolerance, until_s }: RunRequest): ExitCode {
  const opened = openNamed(world, file, set);
  if (opened === undefined) return 1;
  const { build, conditions } = opened;
  const timeline = run(build, conditions, {
    tolerance,
    ...(until_s === undefined ? {} : { horizon_s: until_s }),
  });
  const words = vocabulary ?? build.installation.region;
  if (json) world.print(JSON.stringify(resultOf(timeline, file, words, remedies(timeline)), null, 2));
  else
    world.print(
      printed(timeline, account(timeline, words, telling(timeline)), advice(timeline, words), words, world.columns),
    );
  return 0;
}
