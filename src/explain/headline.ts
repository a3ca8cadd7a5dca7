import { EARTH, type Build } from '../installation/index.ts';
import type { Timeline } from '../scenario/index.ts';
import type { Vocabulary } from './vocabulary.ts';
import { struckInterval } from './faultState.ts';
import { effect } from './effect.ts';
import type { DeviceFact, Finding, FindingOf } from './finding.ts';
import { loadVoltsValues } from './loadStory.ts';
import { LIVE_V } from './metal.ts';
import { name, somebody, whatIsTheMatter } from './name.ts';
import { quantity } from './quantity.ts';
import { list, say, type WordValues } from './say.ts';
import { deviceValues, metalValues, operatedKey, operatedWhy, sentence } from './story.ts';

/** The outcome in one sentence and two or three sentences of why. */
export interface Outcome {
  readonly headline: string;
  readonly why: readonly string[];
}

/** What came of it. */
export function outcome(timeline: Timeline, found: readonly Finding[], vocabulary: Vocabulary): Outcome {
  const shorted = first(found, 'working')?.shorted ?? false;
  if (shorted || struckInterval(timeline) === undefined) return ofOrdinaryWork(timeline, found, vocabulary);
  const opened = first(found, 'device-operated');
  return opened === undefined
    ? ofFaultThatStays(timeline, found, vocabulary)
    : ofFaultThatEnds(timeline, found, opened, vocabulary);
}

/** Metal stays this long at a dangerous voltage before an opening counts as late, where no table says otherwise, s. */
const SOON_S = 5;

function ofFaultThatEnds(
  { build }: Timeline,
  found: readonly Finding[],
  opened: FindingOf<'device-operated'>,
  vocabulary: Vocabulary,
): Outcome {
  const live = worst(all(found, 'live-metal').filter(({ at_s }) => at_s >= 0 && at_s < opened.at_s));
  const still = worst(
    all(found, 'live-metal').filter(({ at_s, until_s }) => at_s >= opened.at_s && until_s === Infinity),
  );
  const held = first(found, 'person-held');
  const inTime = first(found, 'disconnection');
  const late = inTime === undefined ? opened.at_s > SOON_S : opened.at_s > inTime.limit_s;
  const values = deviceValues(opened, vocabulary);
  const headline =
    still !== undefined
      ? say('headline.opens.still', vocabulary, { ...values, ...metalValues(still, vocabulary) })
      : late && held !== undefined
        ? say('headline.opens.late.held', vocabulary, { ...values, ...somebody(held.person, vocabulary) })
        : say(late ? 'headline.opens.late' : 'headline.opens', vocabulary, values);
  const touch = still ?? live;
  return {
    headline,
    why: [
      say(operatedWhy(opened), vocabulary, values),
      ...home(build, found, vocabulary),
      ...felt(found, vocabulary, () => (touch === undefined ? [] : [sentence(build, touch, found, vocabulary)])),
    ],
  };
}

function ofFaultThatStays({ build }: Timeline, found: readonly Finding[], vocabulary: Vocabulary): Outcome {
  const held = first(found, 'person-held');
  const fault = first(found, 'fault-current');
  const live = worst(all(found, 'live-metal').filter(({ at_s }) => at_s >= 0));
  const silent = all(found, 'device-stays-shut').find(({ because }) => because !== 'not-fitted');
  const warned = first(found, 'device-warned');
  const why = [
    ...home(build, found, vocabulary),
    ...(warned === undefined ? [] : [sentence(build, warned, found, vocabulary)]),
    ...(silent === undefined ? [] : [sentence(build, silent, found, vocabulary)]),
    ...felt(found, vocabulary, () => (live === undefined ? [] : [sentence(build, live, found, vocabulary)])),
  ];
  if (held !== undefined) {
    const values = { ...somebody(held.person, vocabulary), amperes: quantity(held.hand_A, 'A') };
    return { headline: say('headline.held', vocabulary, values), why };
  }
  if (live !== undefined && live.volts >= LIVE_V) {
    const also = all(found, 'live-metal').filter(
      ({ part, at_s, until_s, volts }) => part !== live.part && at_s >= 0 && until_s === Infinity && volts >= LIVE_V,
    );
    const more = also.length === 0 ? 'headline.live' : 'headline.live.more';
    const others = list(also.map(({ part }) => say('the.part', vocabulary, { part: name(part, vocabulary) })));
    return { headline: say(more, vocabulary, { ...metalValues(live, vocabulary), others }), why };
  }
  const legs = all(found, 'leg-volts').at(-1);
  if (legs !== undefined)
    return {
      headline: say('headline.legs.stay', vocabulary, legValues(legs)),
      why: [say('why.legs', vocabulary), ...why],
    };
  if (fault === undefined) return { headline: say('headline.harmless', vocabulary), why };
  const amperes = quantity(fault.amperes, 'A');
  const headline =
    warned === undefined
      ? say('headline.leak', vocabulary, { amperes })
      : say('headline.warned', vocabulary, { amperes, device: name(warned.device, vocabulary) });
  return { headline, why };
}

function ofOrdinaryWork({ build, conditions }: Timeline, found: readonly Finding[], vocabulary: Vocabulary): Outcome {
  const opened = first(found, 'device-operated');
  const shock = first(found, 'person-feels');
  const live = worst(all(found, 'live-metal'));
  const legs = first(found, 'leg-volts');
  const [stray] = all(found, 'stray-current');
  const matter = whatIsTheMatter(build.installation, conditions, vocabulary).map((text) => `${text}.`);
  const leaks =
    opened?.residual_A === undefined
      ? []
      : all(found, 'leakage').map((leak) => sentence(build, leak, found, vocabulary));
  const astray = stray === undefined ? [] : [sentence(build, stray, found, vocabulary)];
  if (opened !== undefined) {
    const shorted = first(found, 'working')?.shorted ?? false;
    const values = deviceValues(opened, vocabulary);
    const because = say(
      opened.residual_A === undefined ? operatedKey(opened) : operatedWhy(opened),
      vocabulary,
      values,
    );
    return {
      headline: say(shorted ? 'headline.opens.shorted' : 'headline.opens.faultless', vocabulary, values),
      why: shorted ? [...astray, because] : [...matter.slice(0, 1), because, ...leaks, ...astray],
    };
  }
  if (shock !== undefined) {
    const values = { ...somebody(shock.person, vocabulary), amperes: quantity(shock.body_A, 'A') };
    return {
      headline: say('headline.shock', vocabulary, values),
      why: [...matter.slice(0, 1), say('why.case', vocabulary), ...felt(found, vocabulary, () => [])],
    };
  }
  if (live !== undefined)
    return {
      headline: say('headline.case', vocabulary, metalValues(live, vocabulary)),
      why: [...matter.slice(0, 2), say('why.case', vocabulary)],
    };
  if (legs !== undefined) {
    return {
      headline: say('headline.legs', vocabulary, legValues(legs)),
      why: [say('why.legs', vocabulary), say('why.legs.high', vocabulary)],
    };
  }
  const off = all(found, 'load-volts').toSorted((one, other) => ratio(other) - ratio(one))[0];
  if (off !== undefined)
    return {
      headline: say('headline.load.volts', vocabulary, loadVoltsValues(off, vocabulary)),
      why: [...matter.slice(0, 1), ...all(found, 'load-volts').map((one) => sentence(build, one, found, vocabulary))],
    };
  if (stray !== undefined)
    return {
      headline: say('headline.stray', vocabulary, { amperes: quantity(stray.amperes, 'A') }),
      why: [...astray, say('why.stray.device', vocabulary)],
    };
  const harmonics = all(found, 'neutral-harmonics').find(({ amperes, line_A }) => amperes > line_A);
  if (harmonics !== undefined)
    return {
      headline: say('headline.harmonics', vocabulary, {
        part: name(harmonics.part, vocabulary),
        amperes: quantity(harmonics.amperes, 'A'),
        line: quantity(harmonics.line_A, 'A'),
      }),
      why: [say('why.harmonics', vocabulary)],
    };
  const warned = first(found, 'device-warned');
  if (warned !== undefined)
    return {
      headline: say('headline.warned.faultless', vocabulary, { device: name(warned.device, vocabulary) }),
      why: [...matter.slice(0, 1), sentence(build, warned, found, vocabulary)],
    };
  if (matter.length > 0)
    return {
      headline: say('headline.latent', vocabulary),
      why: [...matter.slice(0, 2), say('why.latent', vocabulary)],
    };
  const source_A = first(found, 'working')?.source_A ?? 0;
  return {
    headline: say('headline.normal', vocabulary),
    why: [say('why.normal.out', vocabulary, { amperes: quantity(source_A, 'A') }), say('why.normal.case', vocabulary)],
  };
}

/** From this share of the fault current the way home is said to be metal. */
const MOSTLY = 0.5;
/** A fault current under this many amperes is not called large. */
const LARGE_A = 50;

/** Whether and how the fault current finds home, in one sentence. */
function home(build: Build, found: readonly Finding[], vocabulary: Vocabulary): readonly string[] {
  const current = first(found, 'fault-current');
  if (current === undefined) {
    const none = first(found, 'no-fault-current');
    const floats = build.unearthed.length > 0 || (none?.volts ?? 0) >= LIVE_V;
    return [say(none?.live ? 'why.none' : floats ? 'why.unearthed' : 'why.quiet', vocabulary)];
  }
  const metal = first(found, 'fault-state')?.metal;
  const values = { amperes: quantity(current.amperes, 'A') };
  if (metal === undefined) return [say('why.divert', vocabulary)];
  if (metal >= MOSTLY) return [metalHome(current.amperes, found, vocabulary)];
  const main = all(found, 'way-home').toSorted((one, other) => other.amperes - one.amperes)[0];
  if (main?.by[0] === 'leak') return [say('why.leak', vocabulary, values)];
  if (main?.way !== 'person') {
    const soil_A = all(found, 'way-home').reduce(
      (sum, { way, amperes }) => (way === 'soil' || way === 'pipe' ? sum + amperes : sum),
      0,
    );
    // With the neutral open much of the current only takes the place of what loads took: that part is not the soil's.
    return [say('why.soil', vocabulary, { amperes: quantity(soil_A || current.amperes, 'A') })];
  }
  return [say(main.stations.includes(EARTH) ? 'why.body.soil' : 'why.body', vocabulary, values)];
}

/** Metal leads home: the current is large if it opens its device at once; where that device is jammed, or heat alone opens
 *  it, that is said. */
function metalHome(amperes: number, found: readonly Finding[], vocabulary: Vocabulary): string {
  const values = { amperes: quantity(amperes, 'A') };
  const jammed = all(found, 'device-stays-shut').find(({ because }) => because === 'jammed');
  if (jammed !== undefined && isAtOnce(jammed))
    return say('why.metal.jammed', vocabulary, { ...values, device: name(jammed.device, vocabulary) });
  const opened = first(found, 'device-operated');
  return say(
    amperes >= LARGE_A && opened !== undefined && isAtOnce(opened) ? 'why.metal' : 'why.poor',
    vocabulary,
    values,
  );
}

/** Regions in which a device counts neither heat nor minutes. */
const AT_ONCE: ReadonlySet<string> = new Set([
  'magnetic',
  'short-time',
  'ground-fault',
  'melting',
  'residual',
  'published',
]);

function isAtOnce({ operation: { region } }: DeviceFact): boolean {
  return AT_ONCE.has(region);
}

function ratio({ volts, nominal_V }: FindingOf<'load-volts'>): number {
  return volts / nominal_V;
}

function legValues({ low_V, high_V }: FindingOf<'leg-volts'>): WordValues {
  return { low: quantity(low_V, 'V'), high: quantity(high_V, 'V') };
}

/** What the person has of it; without one, what else there is to say. */
function felt(
  found: readonly Finding[],
  vocabulary: Vocabulary,
  otherwise: () => readonly string[],
): readonly string[] {
  const person = first(found, 'person-feels');
  if (person === undefined) return otherwise();
  const worstZone = all(found, 'zone-reached').at(-1)?.zone ?? person.zone;
  return [
    say(person.until_s < Infinity ? 'why.person' : 'why.person.ever', vocabulary, {
      ...somebody(person.person, vocabulary),
      amperes: quantity(person.body_A, 'A'),
      effect: effect(worstZone, person.person, found, vocabulary),
      time: quantity(person.until_s - person.at_s, 's'),
    }),
  ];
}

function worst(live: readonly FindingOf<'live-metal'>[]): FindingOf<'live-metal'> | undefined {
  // The metal the fault reaches stands first; another must be clearly worse to be told instead.
  return live.reduce<FindingOf<'live-metal'> | undefined>(
    (most, one) => (most === undefined || one.volts > most.volts * 1.1 ? one : most),
    undefined,
  );
}

function all<K extends Finding['kind']>(found: readonly Finding[], kind: K): readonly FindingOf<K>[] {
  return found.filter((finding): finding is FindingOf<K> => finding.kind === kind);
}

function first<K extends Finding['kind']>(found: readonly Finding[], kind: K): FindingOf<K> | undefined {
  return found.find((finding): finding is FindingOf<K> => finding.kind === kind);
}
