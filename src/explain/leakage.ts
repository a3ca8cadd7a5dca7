import type { Build } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { Finding, FindingOf } from './finding.ts';
import { name } from './name.ts';
import { quantity } from './quantity.ts';
import { isCapacitance } from './route.ts';
import { list, say } from './say.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Capacitive leakage is told from so much in all, A: what one stationary appliance may have by itself (IEC 60335-1, seen
 *  second-hand). */
const TOLD_A = 0.0035;
/** A part that leaks less is not named, A (invented). */
const NAMED_A = 1e-4;
/** So many parts are named (invented). */
const NAMED = 4;

/** What filters, cables and windings let out through their capacitance in ordinary work. */
export function leakage(build: Build, { solution, start_s }: Interval): readonly Finding[] {
  const { re, im } = solution.amperes;
  const sums = new Map<string, { re: number; im: number }>();
  build.branches.forEach((info, branch) => {
    if (info.role !== 'insulation' || !isCapacitance(build, info)) return;
    const sum = sums.get(info.part) ?? { re: 0, im: 0 };
    sums.set(info.part, { re: sum.re + (re[branch] ?? 0), im: sum.im + (im[branch] ?? 0) });
  });
  const all = [...sums.values()];
  const total_A = Math.hypot(
    all.reduce((sum, part) => sum + part.re, 0),
    all.reduce((sum, part) => sum + part.im, 0),
  );
  const parts = [...sums]
    .map(([part, sum]) => ({ part, amperes: Math.hypot(sum.re, sum.im) }))
    .filter(({ amperes }) => amperes >= NAMED_A)
    .toSorted((one, other) => other.amperes - one.amperes);
  return total_A < TOLD_A ? [] : [{ kind: 'leakage', at_s: start_s, total_A, parts }];
}

/** What leaks without any fault, in one sentence. */
export function leakageText({ total_A, parts }: FindingOf<'leakage'>, vocabulary: Vocabulary): string {
  const named = parts
    .slice(0, NAMED)
    .map(({ part, amperes }) =>
      say('story.working.load', vocabulary, { part: name(part, vocabulary), amperes: quantity(amperes, 'A') }),
    );
  const more = parts.length - named.length;
  return say('story.leakage', vocabulary, {
    amperes: quantity(total_A, 'A'),
    parts: list(more > 0 ? [...named, say('story.leakage.more', vocabulary, { more })] : named),
  });
}
