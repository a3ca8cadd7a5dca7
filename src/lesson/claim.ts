import { severity } from '../body/index.ts';
import { aboveFloor_V, quantity, say, type Vocabulary } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import type { Tolerance } from '../protection/index.ts';
import type { Assertion, Claim } from './lesson.ts';
import { amperesThrough, opensAt, personIn, worstZone } from './measure.ts';
import { instant, runWith } from './runs.ts';

/** What became of a claim: whether it holds, and what was found. */
export interface Judgement {
  readonly holds: boolean;
  /** what was measured, in words: "4.34 A", "never", "AC-3" */
  readonly found: string;
}

const TOLERANCES: readonly Tolerance[] = ['middle', 'fast', 'slow'];

/** Holds a claim against the solver, for devices at both ends and in the middle of their permitted band: a claim that
 *  depends on which one somebody bought does not hold. `found` is that of the first run that refutes it. */
export function judge(build: Build, given: readonly string[], { claim, with: changes }: Assertion): Judgement {
  const judgements = TOLERANCES.map((tolerance) => judgeOne(build, [...given, ...changes], claim, tolerance));
  const refuted = judgements.find(({ holds }) => !holds);
  return refuted ?? judgements[0] ?? { holds: false, found: '' };
}

function judgeOne(build: Build, assignments: readonly string[], claim: Claim, tolerance: Tolerance): Judgement {
  const timeline = runWith(build, assignments, tolerance);
  const moment = instant(timeline);
  switch (claim.kind) {
    case 'device': {
      const at_s = opensAt(timeline, claim.device);
      const holds = claim.operates === 'never' ? at_s === Infinity : at_s <= claim.operates.within_s;
      return { holds, found: at_s === Infinity ? say('fact.never', 'iec') : quantity(at_s, 's') };
    }
    case 'through': {
      const amperes = amperesThrough(build, moment.solution, claim.through);
      return { holds: within(amperes, claim.above_A, claim.below_A), found: quantity(amperes, 'A') };
    }
    case 'touching': {
      const volts = aboveFloor_V(build, moment.solution, claim.touching);
      return { holds: within(volts, claim.above_V, claim.below_V), found: quantity(volts, 'V') };
    }
    case 'person': {
      const amperes = personIn(moment, claim.person).body_A;
      const zone = worstZone(timeline, claim.person);
      const rank = severity(zone);
      const reaches = claim.reaches === undefined || rank >= severity(claim.reaches);
      const stays = claim.stays_below === undefined || rank < severity(claim.stays_below);
      return {
        holds: reaches && stays && within(amperes, claim.above_A, claim.below_A),
        found: `${quantity(amperes, 'A')}, ${zone}`,
      };
    }
    default:
      return claim satisfies never;
  }
}

function within(value: number, above: number | undefined, below: number | undefined): boolean {
  return (above === undefined || value > above) && (below === undefined || value < below);
}

/** A claim in words, with the names its file uses. */
export function claimText({ claim, with: changes }: Assertion, vocabulary: Vocabulary): string {
  const when = changes.length === 0 ? '' : ` (${changes.join(', ')})`;
  return `${bare(claim, vocabulary)}${when}`;
}

function bare(claim: Claim, vocabulary: Vocabulary): string {
  switch (claim.kind) {
    case 'device':
      return claim.operates === 'never'
        ? say('claim.never', vocabulary, { subject: claim.device })
        : say('claim.within', vocabulary, { subject: claim.device, time: quantity(claim.operates.within_s, 's') });
    case 'through':
      return limits(claim.through, claim.above_A, claim.below_A, 'A', vocabulary);
    case 'touching':
      return limits(claim.touching, claim.above_V, claim.below_V, 'V', vocabulary);
    case 'person': {
      const zones = [
        ...(claim.reaches === undefined ? [] : [say('claim.reaches', vocabulary, { zone: claim.reaches })]),
        ...(claim.stays_below === undefined ? [] : [say('claim.below.zone', vocabulary, { zone: claim.stays_below })]),
      ];
      return [limits(claim.person, claim.above_A, claim.below_A, 'A', vocabulary), ...zones].join(' ');
    }
    default:
      return claim satisfies never;
  }
}

function limits(
  subject: string,
  above: number | undefined,
  below: number | undefined,
  unit: 'A' | 'V',
  vocabulary: Vocabulary,
): string {
  return [
    subject,
    ...(above === undefined ? [] : [say('claim.above', vocabulary, { value: quantity(above, unit) })]),
    ...(below === undefined ? [] : [say('claim.below', vocabulary, { value: quantity(below, unit) })]),
  ].join(' ');
}
