import { initialConditions, type Build, type Conditions, type DeviceInfo } from '../../installation/index.ts';
import { circuitOf, rating } from '../verdicts/circuit.ts';
import { americanArea_mm2, carries_A, groundingConductor } from '../verdicts/conductorLimits.ts';
import { pointsOf } from '../verdicts/points.ts';
import { roadsOf } from '../verdicts/roads.ts';
import { standing } from '../verdicts/standing.ts';

/** A cable and the device that guards it, as they are built. */
export interface Guarded {
  readonly cable: string;
  readonly device: DeviceInfo;
  /** Largest device its line conductor and its protective conductor stand, A. */
  readonly most_A: number;
  readonly lineSize: string;
}

const known = new WeakMap<Build, readonly Guarded[]>();

/** Every cable that is fixed behind a device and written by size; found once, on the installation as it should be. */
export function guarded(build: Build): readonly Guarded[] {
  let found = known.get(build);
  if (found === undefined) known.set(build, (found = find(build)));
  return found;
}

/** Whether the device, as it is set now, is small enough for its cable and can open. */
export function isGuarded({ device, most_A }: Guarded, conditions: Conditions): boolean {
  return !device.jammed(conditions) && (rating(device, conditions) ?? 0) <= most_A;
}

function find(build: Build): readonly Guarded[] {
  const calm = standing(build, sound(build));
  const roads = roadsOf(calm);
  const all = pointsOf(calm, roads).flatMap((point) =>
    point.lines.flatMap(({ node }): readonly Guarded[] => {
      const { guard, runs } = circuitOf(calm, roads, point, node);
      return runs.flatMap(({ cable, plugged, lineSize, protective }): readonly Guarded[] => {
        const line_A = lineSize === undefined ? undefined : carries_A(lineSize);
        if (guard === undefined || plugged || lineSize === undefined || line_A === undefined) return [];
        const metal = protective === undefined ? undefined : build.branches[protective]?.metal;
        const most_A = Math.min(line_A, metal === undefined ? Infinity : protectiveAllows_A(build, metal));
        return [{ cable, device: guard, most_A, lineSize }];
      });
    }),
  );
  return all.filter(({ cable }, index) => all.findIndex((other) => other.cable === cable) === index);
}

/** Largest device whose equipment grounding conductor this section still is, A (NFPA 70 table 250.122); without a bound where
 *  the section is left to the adiabatic check. */
function protectiveAllows_A(
  { installation }: Build,
  { of, area_mm2 }: { readonly of: 'Cu' | 'Al' | 'steel'; readonly area_mm2: number },
): number {
  if (installation.region !== 'north-america' || of === 'steel') return Infinity;
  const ratings = [15, 20, 60, 100, 200, 300, 400, 500, 600, 800, 1000, 1200];
  const allowed = ratings.filter((rating_A) => {
    const size = groundingConductor(rating_A, of);
    return size !== undefined && americanArea_mm2(size) <= area_mm2 * 1.01;
  });
  return Math.max(0, ...allowed);
}

/** Every condition as it should be; what is switched on stays so. */
function sound(build: Build): Conditions {
  const { installation } = build;
  const initial = initialConditions(installation);
  return Object.fromEntries(
    Object.entries(installation.conditions).map(([name, { group, options }]) => [
      name,
      group === 'load' ? (initial[name] ?? options[0] ?? '') : (options[0] ?? ''),
    ]),
  );
}
