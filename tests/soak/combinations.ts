import type { Build, Conditions } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { broken } from '../scenario/holds.ts';

/** Every combination of every option of every condition, each run whole, in an order that visits far corners early. */
export function combinations(build: Build): {
  readonly cases: number;
  readonly wrong: (number: number) => readonly string[];
} {
  const all = Object.entries(build.installation.conditions);
  const cases = all.reduce((product, [, { options }]) => product * options.length, 1);
  // A step that shares no factor with the count meets each case once before any comes again.
  let step = Math.floor(cases * 0.618) | 1;
  while (common(step, cases) > 1) step += 2;
  return {
    cases,
    wrong(number) {
      let rest = Number((BigInt(number) * BigInt(step)) % BigInt(cases));
      const conditions: Conditions = Object.fromEntries(
        all.map(([name, { options }]) => {
          const option = options[rest % options.length] ?? '';
          rest = Math.floor(rest / options.length);
          return [name, option];
        }),
      );
      try {
        return broken(run(build, conditions)).map((what) => `${what} ${JSON.stringify(conditions)}`);
      } catch (error) {
        return [`throws ${String(error)} ${JSON.stringify(conditions)}`];
      }
    },
  };
}

function common(one: number, other: number): number {
  return other === 0 ? one : common(other, one % other);
}
