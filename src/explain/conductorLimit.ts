import type { BranchInfo } from '../installation/index.ts';
import { ADIABATIC_S, adiabaticFactor, adiabaticLimit_s, iceaFactor, meltingFactor } from '../protection/index.ts';
import type { Interval, Timeline } from '../scenario/index.ts';
import type { Finding, FindingOf } from './finding.ts';
import { branch_A } from './metal.ts';

/** From the warm conductor to the end of its insulation, °C. North America: 75 to 150 (ICEA P-32-382, thermoplastic, from
 *  memory); elsewhere: 70 to 160, a core of a cable with PVC, and 50 to 160 for steel conduit (IEC 60364-5-54 annex A). */
const HEATS = { 'north-america': [75, 150], iec: [70, 160], steel: [50, 160] } as const;

/** The conductor that first comes to the end of what its insulation stands while the fault lasts, by the adiabatic rule:
 *  I²t = k²S². Told within 5 s of the fault only; after that a conductor sheds heat and lasts longer than the rule says. */
export function conductorLimit(timeline: Timeline, struck: Interval): readonly Finding[] {
  const { build } = timeline;
  const reached = build.branches.flatMap((info, branch): FindingOf<'conductor-limit'>[] => {
    const made = conductor(info, build.installation.region);
    if (made === undefined) return [];
    const at_s = reaches_s(timeline, struck, branch, made.withstand_A2s);
    if (at_s === Infinity) return [];
    const { withstand_A2s, melting_A2s, conductor: role } = made;
    return [
      {
        kind: 'conductor-limit',
        at_s,
        part: info.part,
        conductor: role,
        amperes: branch_A(struck.solution, branch),
        withstand_A2s,
        melts_s: reaches_s(timeline, struck, branch, melting_A2s),
      },
    ];
  });
  return reached.toSorted((one, other) => one.at_s - other.at_s).slice(0, 1);
}

function conductor({ metal, role }: BranchInfo, region: 'north-america' | 'iec') {
  if (metal === undefined || (role !== 'line' && role !== 'neutral' && role !== 'protective')) return undefined;
  const { of, area_mm2: size_mm2 } = metal;
  const [from_C, to_C] = of === 'steel' ? HEATS.steel : HEATS[region];
  const k =
    region === 'north-america' && of !== 'steel' ? iceaFactor(of, from_C, to_C) : adiabaticFactor(of, from_C, to_C);
  // Seconds at one ampere are ampere-squared seconds.
  return {
    conductor: role,
    withstand_A2s: adiabaticLimit_s({ k, size_mm2 }, 1),
    melting_A2s: adiabaticLimit_s({ k: meltingFactor(of, from_C), size_mm2 }, 1),
  };
}

/** When I²t since the fault struck reaches this, s; Infinity if not while heating counts as without loss. */
function reaches_s({ intervals }: Timeline, struck: Interval, branch: number, limit_A2s: number): number {
  const last_s = struck.start_s + ADIABATIC_S;
  let left_A2s = limit_A2s;
  for (const { start_s, end_s, solution } of intervals.slice(intervals.indexOf(struck))) {
    const square = branch_A(solution, branch) ** 2;
    const until_s = Math.min(end_s, last_s);
    if (left_A2s <= square * (until_s - start_s)) return start_s + left_A2s / square;
    left_A2s -= square * (until_s - start_s);
    if (end_s >= last_s) break;
  }
  return Infinity;
}
