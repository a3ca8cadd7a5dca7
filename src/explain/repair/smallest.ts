import { run, type Timeline } from '../../scenario/index.ts';
import { repaired, repairsOf, type Case, type Repair } from './repairs.ts';
import { brokenRules, RULES, type RuleKey } from './rules.ts';
import { cannotHold } from './screen.ts';

/** Every smallest repair of a case. */
export interface SmallestRepair {
  /** Rules that do not hold as it stands; empty where nothing needs repair. */
  readonly broken: readonly RuleKey[];
  /** What could be done. */
  readonly offered: readonly Repair[];
  /** Every set that makes all rules hold and of which no part does, the smallest first. */
  readonly sets: readonly (readonly Repair[])[];
  /** Sets of more repairs than this were not tried. */
  readonly mostAtOnce: number;
  /** Sets that were judged. */
  readonly tried: number;
}

/** So many sets at most are judged, beside all pairs. */
const MOST_TRIED = 4096;

/** Searches the repairs a case offers for every minimal set under which all rules hold. Sets are taken by size, and none that
 *  contains a working one: so of each set that is found every smaller part was judged before and failed.
 *  @param offered what may be done; everything the place offers unless said
 *  @param mostAtOnce as many repairs in one set as can be judged in reason unless said
 *  @throws RangeError naming an unknown condition or option */
export function smallestRepair(
  given: Case,
  {
    offered = repairsOf(given),
    mostAtOnce = reasonable(offered.length),
    judge = allHold,
  }: {
    readonly offered?: readonly Repair[];
    readonly mostAtOnce?: number;
    readonly judge?: (candidate: Case) => boolean;
  } = {},
): SmallestRepair {
  const broken = brokenRules(run(given.build, given.conditions));
  if (broken.length === 0) return { broken, offered, sets: [], mostAtOnce, tried: 0 };
  const sets: (readonly number[])[] = [];
  let tried = 0;
  for (let size = 1; size <= Math.min(mostAtOnce, offered.length); size += 1)
    for (const chosen of choices(offered.length, size)) {
      if (sets.some((set) => set.every((index) => chosen.includes(index)))) continue;
      tried += 1;
      if (judge(repaired(given, picked(offered, chosen)))) sets.push(chosen);
    }
  return { broken, offered, sets: sets.map((set) => picked(offered, set)), mostAtOnce, tried };
}

/** Whether all rules hold of a case. */
function allHold(candidate: Case): boolean {
  if (cannotHold(candidate)) return false;
  const timeline: Timeline = run(candidate.build, candidate.conditions);
  return RULES.every(({ holds }) => holds(timeline));
}

function picked(offered: readonly Repair[], chosen: readonly number[]): readonly Repair[] {
  return chosen.flatMap((index) => offered[index] ?? []);
}

function reasonable(count: number): number {
  let sets = 0;
  let choose = 1;
  for (let size = 1; size <= count; size += 1) {
    choose = (choose * (count - size + 1)) / size;
    sets += choose;
    if (sets > MOST_TRIED) return Math.max(2, size - 1);
  }
  return count;
}

/** Every choice of so many of so many, in order. */
function* choices(of: number, size: number): Generator<readonly number[]> {
  const chosen = Array.from({ length: size }, (_, index) => index);
  while ((chosen.at(-1) ?? of) < of) {
    yield [...chosen];
    let place = size - 1;
    while (place > 0 && (chosen[place] ?? 0) === of - size + place) place -= 1;
    chosen[place] = (chosen[place] ?? 0) + 1;
    for (let next = place + 1; next < size; next += 1) chosen[next] = (chosen[next - 1] ?? 0) + 1;
  }
}
