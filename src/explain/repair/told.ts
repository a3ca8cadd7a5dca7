import type { Installation } from '../../installation/index.ts';
import { conditionSentence, label, name } from '../name.ts';
import { quantity } from '../quantity.ts';
import { filled, list, lowerCase, type WordValues } from '../say.ts';
import type { Vocabulary } from '../vocabulary.ts';
import { REPAIR_WORDS, type RepairKey } from '../words/repairs.ts';
import type { Repair } from './repairs.ts';
import type { SmallestRepair } from './smallest.ts';
import type { Tempting } from './tempting.ts';

/** The smallest repairs in words. */
export interface ToldRepair {
  readonly heading: string;
  /** Rules that do not hold, one sentence each. */
  readonly brokenHeading: string;
  readonly broken: readonly string[];
  /** How many repairs there are, or that there is none. */
  readonly verdict: string;
  readonly sets: readonly string[];
  readonly temptingHeading: string;
  readonly tempting: readonly string[];
  readonly caution: string;
}

/** The smallest repairs and the tempting ones in words. */
export function tellRepair(
  found: SmallestRepair,
  tempting: readonly Tempting[],
  vocabulary: Vocabulary,
  installation?: Installation,
): ToldRepair {
  const say = (key: RepairKey, values?: WordValues): string => filled(REPAIR_WORDS[key], vocabulary, values);
  return {
    heading: say('heading'),
    brokenHeading: say('broken'),
    broken: found.broken.map((rule) => say(`rule.${rule}`)),
    verdict: verdictOf(found, say),
    sets: found.sets.map((set) => together(set, vocabulary, say, installation)),
    temptingHeading: say('tempting'),
    tempting: tempting.map((one) => temptingText(one, vocabulary, say)),
    caution: say('caution'),
  };
}

type Say = (key: RepairKey, values?: WordValues) => string;

function verdictOf({ broken, sets, offered, mostAtOnce }: SmallestRepair, say: Say): string {
  if (broken.length === 0) return say('nothing');
  if (sets.length > 0) return say('sets', { count: sets.length });
  return mostAtOnce < offered.length
    ? say('none.most', { most: mostAtOnce, offered: offered.length })
    : say('none', { offered: offered.length });
}

function together(set: readonly Repair[], vocabulary: Vocabulary, say: Say, installation?: Installation): string {
  const [first = '', ...rest] = set.map((repair) =>
    repair.kind === 'condition'
      ? conditionSentence(repair.condition, repair.option, vocabulary, installation?.conditions[repair.condition])
      : say('do.conductor', { cable: label(repair.cable, vocabulary), size: repair.size }),
  );
  return rest.length === 0 ? first : say('together', { first, rest: list(rest.map(lowerCase)) });
}

function temptingText(one: Tempting, vocabulary: Vocabulary, say: Say): string {
  switch (one.kind) {
    case 'rod':
      return say('tempting.rod', {
        part: name(one.part, vocabulary),
        ohms: quantity(one.ohm, 'Ω'),
        amperes: quantity(one.amperes, 'A'),
        volts: quantity(one.volts, 'V'),
        rating: quantity(one.rating_A, 'A'),
      });
    case 'bigger-breaker':
      return say('tempting.bigger-breaker', {
        larger: quantity(one.larger_A, 'A'),
        device: name(one.device, vocabulary),
        ends: one.larger_opens_s < Infinity ? 'later' : 'never',
        later: one.larger_opens_s < Infinity ? quantity(one.larger_opens_s, 's') : '',
      });
    case 'residual-device':
      if (one.untilTouched) return say('tempting.residual-device.touch');
      return one.comesBack
        ? say('tempting.residual-device.back')
        : say('tempting.residual-device.little', { missing: quantity(one.residual_A, 'A') });
    default:
      return one satisfies never;
  }
}
