import type { FindingOf } from './finding.ts';
import { name } from './name.ts';
import { percent, quantity } from './quantity.ts';
import { list, say, type WordValues } from './say.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Who takes how much in ordinary work. */
export function working(finding: FindingOf<'working'>, vocabulary: Vocabulary): string {
  const { source_A, other_A, shorted, loads } = finding;
  if (loads.length === 0) return say('story.working.off', vocabulary);
  if (shorted) return say('story.working.shorted', vocabulary, { amperes: quantity(source_A, 'A') });
  const legs = other_A >= 0.001 && loads.length > 1;
  const parts = loads.map(({ part, amperes, both }) =>
    say(both && legs ? 'story.working.load.both' : 'story.working.load', vocabulary, {
      part: name(part, vocabulary),
      amperes: quantity(amperes, 'A'),
    }),
  );
  if (legs)
    return say('story.working.legs', vocabulary, {
      one: quantity(source_A, 'A'),
      other: quantity(other_A, 'A'),
      loads: list(parts),
    });
  return say('story.working', vocabulary, { amperes: quantity(source_A, 'A'), loads: list(parts) });
}

/** The values a sentence about a load's volts is filled from. */
export function loadVoltsValues(
  { part, volts, nominal_V }: FindingOf<'load-volts'>,
  vocabulary: Vocabulary,
): WordValues {
  return { part: name(part, vocabulary), volts: quantity(volts, 'V'), nominal: quantity(nominal_V, 'V') };
}

/** What a neutral carries, its harmonics included. */
export function harmonics(finding: FindingOf<'neutral-harmonics'>, vocabulary: Vocabulary): string {
  return say(finding.amperes > finding.line_A ? 'story.harmonics.more' : 'story.harmonics', vocabulary, {
    part: name(finding.part, vocabulary),
    amperes: quantity(finding.amperes, 'A'),
    harmonic: quantity(finding.harmonic_A, 'A'),
    line: quantity(finding.line_A, 'A'),
  });
}

/** How the faulty load goes on when nothing has opened. */
export function runsOn(finding: FindingOf<'load-runs-on'>, vocabulary: Vocabulary): string {
  return say(loadKey(finding), vocabulary, {
    part: name(finding.part, vocabulary),
    amperes: quantity(finding.amperes, 'A'),
    percent: percent(finding.share),
  });
}

/** Nobody notices a load that runs this near to what it is built for (invented; supplies may vary as much). */
const AS_BUILT = 0.1;

function loadKey({ amperes, share }: FindingOf<'load-runs-on'>) {
  if (amperes < 0.001) return 'story.load.off';
  if (share < 1 - AS_BUILT) return 'story.load.weak';
  return share > 1 + AS_BUILT ? 'story.load.much' : 'story.load';
}
