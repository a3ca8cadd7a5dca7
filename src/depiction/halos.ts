import { aboveFloor_V } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { Halo } from './depiction.ts';
import type { Place } from './place.ts';

/** Conventional limits of touch voltage, V a.c.: 50 in ordinary places (IEC 60364-4-41:2005, 411.3.2.1 and IEC 61140),
 *  25 where people are wet or barefoot (IEC 60364-7-705 and others, from memory). */
const LIMIT_V = { ordinary: 50, wet: 25 } as const;

/** Volts above the floor of everything metal that can be touched, by part. */
export function touchable(build: Build, { solution }: Interval): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const [part, made] of Object.entries(build.installation.parts)) {
    const terminal = metalOf(made);
    if (terminal) found.set(part, aboveFloor_V(build, solution, `${part}.${terminal}`));
  }
  return found;
}

/** Where touchable metal stands at a voltage, and how high. */
export function halos(volts: ReadonlyMap<string, number>, place: Place): readonly Halo[] {
  return [...volts].flatMap(([part, reached]): Halo[] => {
    const rect = place.targets[part];
    if (!rect) return [];
    return [{ part, volts: reached, level: levelOf(reached), rect, drawings: place.metal[part] ?? [part] }];
  });
}

/** The threshold that volts on touchable metal have reached. */
export function levelOf(volts: number): Halo['level'] {
  return volts >= LIMIT_V.ordinary ? '50' : volts >= LIMIT_V.wet ? '25' : 'none';
}

function metalOf(made: Build['installation']['parts'][string]): string | undefined {
  switch (made.kind) {
    case 'appliance':
      return made.case === 'metal' ? 'case' : undefined;
    case 'fitting':
      return 'metal';
    case 'service-panel':
      return 'earth bar';
    default:
      return undefined;
  }
}
