import type { Build, Installation } from '../installation/index.ts';
import type { FindingOf, Remaining } from './finding.ts';
import { conditionSentence, name, somebody } from './name.ts';
import { quantity } from './quantity.ts';
import { list, lowerCase, say } from './say.ts';
import { earthingOf } from './verdicts/earthing.ts';
import type { Vocabulary } from './vocabulary.ts';

/** What would have made a run safe, and what that leaves: "safe" is said only where nothing is left. */
export function madeSafe(
  { conditions }: Installation,
  finding: FindingOf<'made-safe-by'>,
  vocabulary: Vocabulary,
): string {
  const { device, opened_s, person } = finding;
  const whole = isWhole(finding);
  const kept = person === undefined ? 'story.kept.by.metal' : 'story.kept.by';
  return [
    say(whole ? 'story.safe.by' : kept, vocabulary, {
      change: lowerCase(
        conditionSentence(finding.condition, finding.option, vocabulary, conditions[finding.condition]),
      ),
      ...somebody(person ?? '', vocabulary),
    }),
    device !== undefined
      ? say('story.safe.then', vocabulary, { device: name(device, vocabulary), time: quantity(opened_s ?? 0, 's') })
      : say(whole ? 'story.safe.quiet' : 'story.safe.dead', vocabulary),
    ...left(conditions, finding, vocabulary),
  ].join(' ');
}

/** Where nobody is in danger as it is built: so much, and what is left. */
export function alreadySafe(build: Build, finding: FindingOf<'already-safe'>, vocabulary: Vocabulary): string {
  const { conditions } = build.installation;
  if (isWhole(finding)) return say('story.safe.already', vocabulary);
  const { flow } = finding;
  if (flow !== undefined && flow.heat_W < HEAT_W && finding.left.length === 0 && earthingOf(build) === 'IT')
    return say('story.safe.first', vocabulary, { amperes: quantity(flow.amperes, 'A') });
  return [say('story.safe.shock', vocabulary), ...left(conditions, finding, vocabulary)].join(' ');
}

/** Less heat than this is not told, W (invented). */
const HEAT_W = 1;

function flowKey({ until_s, heat_W }: NonNullable<Remaining['flow']>) {
  if (until_s < Infinity) return 'story.left.late';
  return heat_W < HEAT_W ? 'story.left.flow.cool' : 'story.left.flow';
}

function isWhole({ left, flow }: Remaining): boolean {
  return left.length === 0 && flow === undefined;
}

function left(
  made: Installation['conditions'],
  { left: defects, flow, oversized }: Remaining,
  vocabulary: Vocabulary,
): readonly string[] {
  const put = defects.map(({ condition, option }) =>
    lowerCase(conditionSentence(condition, option, vocabulary, made[condition])),
  );
  const values = {
    amperes: quantity(flow?.amperes ?? 0, 'A'),
    watts: quantity(flow?.heat_W ?? 0, 'W'),
    time: quantity(flow?.until_s ?? 0, 's'),
    limit: quantity(flow?.limit_s ?? 0, 's'),
  };
  return [
    ...(flow === undefined ? [] : [say(flowKey(flow), vocabulary, values)]),
    ...(oversized === undefined
      ? []
      : [
          say('story.left.size', vocabulary, {
            device: name(oversized.device, vocabulary),
            rating: quantity(oversized.rating_A, 'A'),
            built: quantity(oversized.built_A, 'A'),
          }),
        ]),
    ...(put.length === 0 ? [] : [say('story.left', vocabulary, { defects: list(put) })]),
  ];
}
