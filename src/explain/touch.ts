import type { Limb } from '../body/index.ts';
import type { FindingOf } from './finding.ts';
import { somebody } from './name.ts';
import { say } from './say.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Across what of a body the largest volts stand. */
export function acrossText({ across }: FindingOf<'person-feels'>, vocabulary: Vocabulary): string {
  const hands = across?.filter((limb) => limb === 'right hand' || limb === 'left hand').length;
  if (hands === 2) return say('across.hands', vocabulary);
  const feet = across?.some((limb) => limb === 'feet' || limb === 'right foot' || limb === 'left foot');
  return say(hands === 1 && feet === true ? 'across.feet' : 'across', vocabulary);
}

/** What part of a body a current takes. */
export function pathText({ touching, holding }: FindingOf<'person-feels'>, vocabulary: Vocabulary): string {
  const path = say(pathKey(touching), vocabulary);
  return holding === undefined ? path : say('path.holding', vocabulary, { ...somebody(holding, vocabulary), path });
}

function pathKey(touching: readonly Limb[]) {
  const hands = touching.filter((limb) => limb === 'right hand' || limb === 'left hand').length;
  if (touching.some((limb) => limb === 'seat' || limb === 'chest' || limb === 'back')) return 'path.trunk';
  if (touching.includes('right foot') && touching.includes('left foot') && hands === 0) return 'path.feet';
  const feet = touching.length > hands;
  if (hands === 2) return feet ? 'path.hand-hand-feet' : 'path.hand-hand';
  return hands === 1 && feet ? 'path.hand-feet' : 'path.touch';
}
