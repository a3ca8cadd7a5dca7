import { mildest, severity, zone, zoneChanges } from '../body/index.ts';
import type { Limits, Zone } from '../body/index.ts';

/** What somebody has been through so far. The standard's curves hold for one current; where it changed, each level of
 *  current counts all the time spent at it *or above it*, the worst level decides, and a zone once reached stays: the
 *  careful side of looking at each current alone (common practice, no source). */
export interface Exposure {
  /** Worst zone so far. */
  readonly zone: Zone;
  /** Time with a perceptible current, s. */
  readonly time_s: number;
  /** Levels of heart current met, largest first, each with the time spent at it or above it. */
  readonly levels: readonly Level[];
  /** The boundaries that hold for this person and this frequency. */
  readonly limits: Limits;
}

interface Level {
  readonly heart_A: number;
  readonly time_s: number;
}

/** A moment, s from now, at which the zone gets worse. */
export interface ZoneRise {
  readonly time_s: number;
  readonly zone: Zone;
}

/** Nothing has flowed through this person yet. */
export function untouched(limits: Limits): Exposure {
  return { zone: mildest(limits), time_s: 0, levels: [], limits };
}

/** How the zone gets worse while this heart current, A, flows after this exposure, in order of time. The first entry
 *  is the zone at once (0 s). */
export function zoneRises(exposure: Exposure, heart_A: number): readonly [ZoneRise, ...ZoneRise[]] {
  const levels = levelsDuring(exposure, heart_A);
  const atOnce = levels.reduce(
    (worst, level) => worse(worst, zone(level.heart_A, level.time_s, exposure.limits)),
    exposure.zone,
  );
  const later = levels
    .flatMap((level) =>
      zoneChanges(level.heart_A, exposure.limits).map((change) => ({
        time_s: change.time_s - level.time_s,
        zone: change.zone,
      })),
    )
    .filter((change) => change.time_s > 0)
    .sort((one, other) => one.time_s - other.time_s);
  const rises: [ZoneRise, ...ZoneRise[]] = [{ time_s: 0, zone: atOnce }];
  let worst = atOnce;
  for (const rise of later) {
    if (worse(worst, rise.zone) === worst) continue;
    worst = rise.zone;
    rises.push(rise);
  }
  return rises;
}

/** The exposure after this heart current, A, has flowed for this time, s. */
export function exposureAfter(exposure: Exposure, heart_A: number, time_s: number): Exposure {
  if (heart_A <= exposure.limits.perception_A) return exposure;
  const during = levelsDuring(exposure, heart_A).map((level) => ({ ...level, time_s: level.time_s + time_s }));
  const above = exposure.levels.filter((level) => level.heart_A > heart_A);
  const reached = zoneRises(exposure, heart_A).findLast((rise) => rise.time_s < time_s);
  return {
    zone: reached?.zone ?? exposure.zone,
    time_s: exposure.time_s + time_s,
    levels: [...above, ...during],
    limits: exposure.limits,
  };
}

/** The levels that gain time while this current flows, with the time they have already, largest first. */
function levelsDuring(exposure: Exposure, heart_A: number): readonly Level[] {
  if (heart_A <= exposure.limits.perception_A) return [];
  const above = exposure.levels.filter((level) => level.heart_A > heart_A);
  const below = exposure.levels.filter((level) => level.heart_A < heart_A);
  const same = exposure.levels.find((level) => level.heart_A === heart_A);
  return [same ?? { heart_A, time_s: above.at(-1)?.time_s ?? 0 }, ...below];
}

function worse(one: Zone, other: Zone): Zone {
  return severity(one) >= severity(other) ? one : other;
}
