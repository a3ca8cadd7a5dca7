import type { Build } from '../../installation/index.ts';
import type { Earthing } from './disconnection.ts';

/** How the metal behind a supply finds home, as it is built.
 *  @param source part of the supply; the first unless said */
export function earthingOf({ supplies }: Build, source?: string): Earthing {
  const system = (supplies.find(({ part }) => part === source) ?? supplies[0])?.system ?? 'TN-S';
  if (system === 'TT') return 'TT';
  return system === 'IT' || system === 'separated' ? 'IT' : 'TN';
}
