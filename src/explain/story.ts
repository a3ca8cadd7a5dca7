import type { Build } from '../installation/index.ts';
import type { Vocabulary } from './vocabulary.ts';
import { effect } from './effect.ts';
import type { DeviceFact, Finding, FindingOf } from './finding.ts';
import { LIVE_V } from './metal.ts';
import { leakageText } from './leakage.ts';
import { hopsOf, wayText } from './ledger.ts';
import { harmonics, loadVoltsValues, runsOn, working } from './loadStory.ts';
import { conditionSentence, name, possessive, somebody } from './name.ts';
import { figure, percent, quantity } from './quantity.ts';
import { alreadySafe, madeSafe } from './safety.ts';
import { acrossText, pathText } from './touch.ts';
import { list, lowerCase, say, term, type WordValues } from './say.ts';

/** One sentence of the story and the fact it was made from. */
export interface StoryLine {
  readonly at_s: number;
  readonly text: string;
  readonly finding: Finding;
}

/** Findings as sentences, in the order they are given. */
export function story(build: Build, found: readonly Finding[], vocabulary: Vocabulary): readonly StoryLine[] {
  return found.map((finding) => ({ at_s: finding.at_s, text: sentence(build, finding, found, vocabulary), finding }));
}

/** The values a sentence about a device is filled from. */
export function deviceValues(fact: DeviceFact, vocabulary: Vocabulary): WordValues {
  const { device, amperes, rating_A, residual_A, reads_ohm, operation, at_s } = fact;
  return {
    device: name(device, vocabulary),
    amperes: quantity(amperes, 'A'),
    rating: quantity(rating_A, 'A'),
    residual: quantity(residual_A ?? 0, 'A'),
    ohms: quantity(reads_ohm ?? 0, 'Ω'),
    multiple: figure(operation.multiple),
    earliest: quantity(operation.earliest_s, 's'),
    latest: quantity(operation.latest_s, 's'),
    time: quantity(at_s, 's'),
  };
}

/** One finding as a sentence; `all` are the findings it stands among. */
export function sentence(build: Build, finding: Finding, all: readonly Finding[], vocabulary: Vocabulary): string {
  switch (finding.kind) {
    case 'working':
      return working(finding, vocabulary);
    case 'polarity-reversed':
      return say('story.reversed', vocabulary, { sentence: chosen(build, finding.condition, 'yes', vocabulary) });
    case 'stray-current':
      return say(strayKey(finding, all), vocabulary, {
        amperes: quantity(finding.amperes, 'A'),
        where: say(`where.${finding.way}`, vocabulary, { part: name(finding.part ?? '', vocabulary) }),
      });
    case 'leg-volts':
      return say('story.legs', vocabulary, {
        low: quantity(finding.low_V, 'V'),
        high: quantity(finding.high_V, 'V'),
        nominal: quantity(finding.nominal_V, 'V'),
      });
    case 'load-volts':
      return say('story.load.volts', vocabulary, loadVoltsValues(finding, vocabulary));
    case 'leakage':
      return leakageText(finding, vocabulary);
    case 'neutral-harmonics':
      return harmonics(finding, vocabulary);
    case 'fault-current':
      return say(finding.loop_ohm === undefined ? 'story.fault.divert' : 'story.fault', vocabulary, {
        sentence: chosen(build, finding.condition, finding.option, vocabulary),
        amperes: quantity(finding.amperes, 'A'),
        volts: quantity(finding.source_V ?? 0, 'V'),
        ohms: quantity(finding.loop_ohm ?? 0, 'Ω'),
      });
    case 'no-fault-current':
      return say(noCurrentKey(build, finding), vocabulary, {
        sentence: chosen(build, finding.condition, finding.option, vocabulary),
      });
    case 'way-home':
      return wayHome(build, finding, vocabulary);
    case 'device-sees':
      return say(seesKey(finding), vocabulary, deviceValues(finding, vocabulary));
    case 'device-operated':
      return operated(finding, vocabulary);
    case 'device-warned':
      return say('story.warned', vocabulary, {
        device: name(finding.device, vocabulary),
        time: quantity(finding.at_s, 's'),
        ohms: quantity(finding.reads_ohm, 'Ω'),
        threshold: quantity(finding.threshold_ohm, 'Ω'),
      });
    case 'conductor-limit':
      return say(finding.melts_s < Infinity ? 'story.conductor.melts' : 'story.conductor.limit', vocabulary, {
        part: name(finding.part, vocabulary),
        conductor: finding.conductor === 'neutral' ? 'neutral' : term(finding.conductor, vocabulary),
        amperes: quantity(finding.amperes, 'A'),
        time: quantity(finding.at_s, 's'),
        melts: quantity(finding.melts_s, 's'),
      });
    case 'device-stays-shut':
      return staysShut(finding, vocabulary);
    case 'live-metal':
      return liveMetal(build, finding, all, vocabulary);
    case 'person-feels':
      return say(
        all.some((other) => other.kind === 'zone-reached')
          ? 'story.person.gets'
          : finding.until_s < Infinity
            ? 'story.person.feels'
            : 'story.person.feels.ever',
        vocabulary,
        {
          ...somebody(finding.person, vocabulary),
          path: pathText(finding, vocabulary),
          touch: quantity(finding.touch_V, 'V'),
          across: acrossText(finding, vocabulary),
          amperes: quantity(finding.body_A, 'A'),
          effect: effect(finding.zone, finding.person, all, vocabulary),
          time: quantity(finding.until_s - finding.at_s, 's'),
        },
      );
    case 'person-spared':
      return say(`story.person.${finding.because}`, vocabulary, {
        ...somebody(finding.person, vocabulary),
        amperes: quantity(finding.body_A, 'A'),
        least: quantity(finding.perception_A ?? 0, 'A'),
      });
    case 'person-released':
      return say('story.person.released', vocabulary, somebody(finding.person, vocabulary));
    case 'person-held':
      return say(finding.until_s < Infinity ? 'story.person.held' : 'story.person.held.ever', vocabulary, {
        ...somebody(finding.person, vocabulary),
        amperes: quantity(finding.hand_A, 'A'),
        most: quantity(finding.letGo_A, 'A'),
        time: quantity(finding.until_s - finding.at_s, 's'),
      });
    case 'zone-reached':
      return say('story.zone', vocabulary, {
        ...somebody(finding.person, vocabulary),
        time: quantity(finding.at_s, 's'),
        zone: finding.zone,
        effect: effect(finding.zone, finding.person, all, vocabulary),
      });
    case 'load-runs-on':
      return runsOn(finding, vocabulary);
    case 'disconnection':
      return disconnection(finding, vocabulary);
    case 'fault-state':
      return say(faultStateKey(finding, all), vocabulary, { percent: percent(finding.metal ?? 0) });
    case 'normal-state':
      return say(finding.stray_A > 0 ? 'story.state.normal.stray' : 'story.state.normal.clean', vocabulary, {
        amperes: quantity(finding.stray_A, 'A'),
      });
    case 'made-safe-by':
      return madeSafe(build.installation, finding, vocabulary);
    case 'already-safe':
      return alreadySafe(build, finding, vocabulary);
    case 'none-alone':
      return say(finding.together ? 'story.safe.none' : 'story.safe.none.fault', vocabulary, { tried: finding.tried });
    default:
      return finding satisfies never;
  }
}

function strayKey({ at_s }: FindingOf<'stray-current'>, all: readonly Finding[]) {
  if (at_s >= 0) return 'story.stray.fault';
  return all.some((other) => other.kind === 'working' && other.shorted) ? 'story.stray.shorted' : 'story.stray';
}

function noCurrentKey({ unearthed }: Build, { live, volts }: FindingOf<'no-fault-current'>) {
  if (live) return 'story.fault.none';
  return unearthed.length > 0 || volts >= LIVE_V ? 'story.fault.unearthed' : 'story.fault.quiet';
}

function chosen(build: Build, condition: string, option: string, vocabulary: Vocabulary): string {
  const made = build.installation.conditions[condition];
  const options = made?.options ?? [];
  return conditionSentence(condition, options.includes(option) ? option : (options[1] ?? option), vocabulary, made);
}

function wayHome(build: Build, finding: FindingOf<'way-home'>, vocabulary: Vocabulary): string {
  const whole = finding.amperes > 0.999 * finding.total_A;
  return say(
    finding.by[0] === 'relief' ? 'story.way.relief' : whole ? 'story.way.whole' : 'story.way.part',
    vocabulary,
    {
      amperes: quantity(finding.amperes, 'A'),
      way: lowerCase(wayText({ kind: finding.way, by: finding.by }, vocabulary)),
      part: name(finding.by[1] ?? '', vocabulary),
      hops: hopsOf(build, finding.stations, vocabulary).join(' → '),
    },
  );
}

function operated(finding: FindingOf<'device-operated'>, vocabulary: Vocabulary): string {
  const alone = say(operatedKey(finding), vocabulary, deviceValues(finding, vocabulary));
  if (finding.others.length === 0) return alone;
  const others = list(finding.others.map(({ device }) => name(device, vocabulary)));
  const alone_A = Math.min(...finding.others.map((other) => other.alone_A));
  return say(alone_A > 0 ? 'story.operated.others.above' : 'story.operated.others', vocabulary, {
    operated: alone,
    others,
    limit: quantity(alone_A, 'A'),
  });
}

/** How it is told that a device opened. */
export function operatedKey({ operation: { region, latest_s } }: DeviceFact) {
  if (region === 'insulation') return 'story.operated.none';
  return (region === 'thermal' || region === 'published') && latest_s === Infinity
    ? (`story.operated.${region}.maybe` as const)
    : (`story.operated.${region}` as const);
}

/** Why a device opened. */
export function operatedWhy({ operation: { region } }: DeviceFact) {
  return region === 'none' || region === 'insulation' ? 'why.thermal' : (`why.${region}` as const);
}

function seesKey({ operation, residual_A, amperes, rating_A }: DeviceFact) {
  const { region, certain, latest_s } = operation;
  if (region === 'grounded-neutral') return 'story.sees.grounded-neutral';
  if (region === 'ground-fault' && certain) return 'story.sees.ground-fault';
  if (residual_A !== undefined) {
    if (region === 'none') return 'story.sees.residual.none';
    return certain ? 'story.sees.residual' : 'story.sees.residual.may';
  }
  if (region === 'melting' || region === 'long-time' || region === 'short-time' || region === 'published')
    return certain ? (`story.sees.${region}` as const) : 'story.sees.band.never';
  if (region === 'magnetic') return certain ? 'story.sees.magnetic' : 'story.sees.band';
  if (region === 'thermal')
    return certain ? 'story.sees.thermal' : latest_s < Infinity ? 'story.sees.band' : 'story.sees.band.never';
  return amperes <= rating_A ? 'story.sees.none' : 'story.sees.between';
}

function staysShut(finding: FindingOf<'device-stays-shut'>, vocabulary: Vocabulary): string {
  return say(shutKey(finding), vocabulary, {
    ...deviceValues(finding, vocabulary),
    time: quantity(finding.operation.at_s, 's'),
  });
}

/** A circuit that carries more times the rating of its breaker is beyond what its cables stand (IEC 60364-4-43:2008
 *  433.1: 1.45 times what the cable carries continuously, from memory). */
const OVERLOAD = 1.45;

function shutKey({ because, residual_A, amperes, rating_A, operation }: FindingOf<'device-stays-shut'>) {
  if (because === 'not-fitted') {
    if (operation.region === 'grounded-neutral') return 'story.shut.not-fitted.neutral';
    if (operation.region === 'none') return 'story.shut.not-fitted.none';
    return operation.certain ? 'story.shut.not-fitted' : 'story.shut.not-fitted.may';
  }
  if (because !== 'jammed') return `story.shut.${because}` as const;
  if (residual_A !== undefined) return 'story.shut.jammed.residual';
  return amperes > OVERLOAD * rating_A ? 'story.shut.jammed.overload' : 'story.shut.jammed';
}

function liveMetal(
  build: Build,
  finding: FindingOf<'live-metal'>,
  all: readonly Finding[],
  vocabulary: Vocabulary,
): string {
  const { at_s, until_s } = finding;
  const before = all.some((other) => other.kind === 'live-metal' && other.part === finding.part && other.at_s < at_s);
  const stays = before ? 'story.live.still' : 'story.live.stays';
  const key = at_s < 0 ? 'story.live.normal' : until_s < Infinity ? 'story.live.until' : stays;
  const floor = Object.values(build.installation.parts).some(({ kind }) => kind === 'floor');
  const above = say(floor ? 'above.floor' : 'above.earth', vocabulary);
  return say(key, vocabulary, { ...metalValues(finding, vocabulary), above, time: quantity(until_s - at_s, 's') });
}

/** The values a sentence about live metal is filled from. */
export function metalValues({ part, what, volts }: FindingOf<'live-metal'>, vocabulary: Vocabulary): WordValues {
  const called = name(part, vocabulary);
  return { metal: what === 'case' ? `${possessive(called)} case` : called, volts: quantity(volts, 'V') };
}

function disconnection(
  { opened_s, limit_s, nominal_V, earthing }: FindingOf<'disconnection'>,
  vocabulary: Vocabulary,
): string {
  const key =
    opened_s <= limit_s ? 'story.time.inside' : opened_s < Infinity ? 'story.time.outside' : 'story.time.never';
  return say(key, vocabulary, {
    time: quantity(opened_s, 's'),
    limit: quantity(limit_s, 's'),
    nominal: quantity(nominal_V, 'V'),
    earthing: earthing === 'IT' ? 'TN' : earthing,
  });
}

/** From this share of the fault current the way home is said to be metal. */
const MOSTLY_METAL = 0.9;

function faultStateKey({ metal }: FindingOf<'fault-state'>, all: readonly Finding[]) {
  const leaks = all.some((other) => other.kind === 'way-home' && other.by[0] === 'leak');
  if (metal === undefined) return 'story.state.fault.none';
  if (metal >= MOSTLY_METAL) return 'story.state.fault.metal';
  if (metal > 0.001) return 'story.state.fault.poor';
  return leaks ? 'story.state.fault.leak' : 'story.state.fault.soil';
}
