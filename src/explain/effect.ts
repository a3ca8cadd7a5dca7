import { severity } from '../body/index.ts';
import type { Zone } from '../body/index.ts';
import type { Finding, FindingOf } from './finding.ts';
import { say } from './say.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A current that lasts longer is beyond the zones, which end at 10 s (IEC 60479-1:2018 figure 20, from memory), s. */
const LONG_S = 10;
/** From here breathing can stop while the current lasts, A: 20 mA to 40 mA are told as respiratory arrest in prolonged
 *  contact (after Dalziel, from memory). */
const BREATH_A = 0.02;
/** The zones from here on are those of fibrillation. */
const FIBRILLATION = 3;

/** What a current does to somebody. The words of a zone that lets people recover are not used for a current that holds
 *  them longer than the zones reach. */
export function effect(zone: Zone, person: string, found: readonly Finding[], vocabulary: Vocabulary): string {
  const felt = of(found, 'person-feels', person);
  const held = of(found, 'person-held', person);
  const told = say(`zone.${zone}`, vocabulary);
  if (felt === undefined || held === undefined || held.until_s - held.at_s <= LONG_S) return told;
  if (severity(zone) >= FIBRILLATION)
    return felt.body_A < BREATH_A ? told : say('zone.held.chest', vocabulary, { effect: told });
  return say(felt.body_A < BREATH_A ? 'zone.held' : 'zone.held.breath', vocabulary);
}

function of<K extends 'person-feels' | 'person-held'>(
  found: readonly Finding[],
  kind: K,
  person: string,
): FindingOf<K> | undefined {
  return found.find((one): one is FindingOf<K> => one.kind === kind && one.person === person);
}
