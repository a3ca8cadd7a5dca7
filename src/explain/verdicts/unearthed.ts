import { TOUCH_LIMIT_V } from '../metal.ts';
import { coldOutlook } from '../../scenario/index.ts';
import { askedOf, loopAllowed, touchVerdict } from './asked.ts';
import type { Circuit } from './circuit.ts';
import { disconnectionTime_s, LEAST_VOLTAGE } from './disconnection.ts';
import type { End, Point } from './points.ts';
import type { Roads } from './roads.ts';
import { weakestSecondFault } from './secondFault.ts';
import type { Standing } from './standing.ts';
import type { Verdict } from './verdict.ts';

/** What a supply that nothing earths asks at a point: a first fault that does no harm, and a second one elsewhere that ends
 *  (IEC 60364-4-41:2005 411.6, from memory).
 *  @param case_V of the metal while the first fault lasts
 *  @param most_A what the source gives at most */
export function unearthedVerdicts(
  calm: Standing,
  roads: Roads,
  points: readonly Point[],
  {
    point,
    line,
    metal,
    circuit,
  }: { readonly point: Point; readonly line: End; readonly metal: End; readonly circuit: Circuit },
  case_V: number,
  floor: number,
  most_A: number,
): readonly Verdict[] {
  const { part } = point;
  const first = {
    ...touchVerdict(part, line, case_V, case_V <= TOUCH_LIMIT_V ? 'yes' : 'no'),
    clause: 'touch.first',
  } as const;
  const second = weakestSecondFault(calm, roads, points, point, { live: line, metal }, floor, most_A);
  if (second === undefined) return [first];
  const { amperes, volts, loop_ohm, bonded, ended } = second;
  const about = { part, line: line.terminal, other: second.other.part } as const;
  const told = { sense: 'at most', holds: 'told', clause: 'none' } as const;
  // Metal that only soil joins is held to the times of TT; its loop is a matter of the electrodes.
  const asked = askedOf(calm.build, point, circuit, 'IT');
  const american = asked.loop === 'loop.north-america';
  const limit_s = bonded || american ? asked.limit_s : disconnectionTime_s('TT', point.nominal_V);
  const holds = ended.latest_s <= limit_s ? 'yes' : ended.earliest_s <= limit_s ? 'maybe' : 'no';
  const driving = american ? volts : LEAST_VOLTAGE * volts;
  const allowed = loopAllowed(circuit, calm, point, { ...asked, volts: driving });
  const loop: Verdict = {
    ...about,
    kind: 'loop',
    value: loop_ohm,
    unit: 'Ω',
    limit: allowed.limit_ohm,
    sense: 'at most',
    holds: most_A < Infinity ? holds : loop_ohm <= allowed.limit_ohm ? 'yes' : holds === 'maybe' ? 'maybe' : 'no',
    clause: asked.loop,
    ...(allowed.device === undefined ? {} : { device: allowed.device }),
  };
  return [
    first,
    { ...about, ...told, kind: 'second-fault', value: amperes, unit: 'A' },
    ...(bonded ? [loop] : []),
    {
      ...about,
      kind: 'disconnection',
      value: ended.latest_s,
      unit: 's',
      limit: limit_s,
      sense: 'at most',
      holds,
      clause: bonded || american ? asked.time : 'time.it.apart',
      ...(ended.device === undefined ? {} : { device: ended.device.name }),
    },
    {
      ...touchVerdict(part, line, second.case_V, second.case_V <= TOUCH_LIMIT_V ? 'yes' : holds),
      other: second.other.part,
    },
  ];
}

/** Whether a first fault on a supply that nothing earths is told, and how soon at the latest. */
export function monitored(calm: Standing, source: string, roads: Roads): Verdict {
  const { build, conditions } = calm;
  const about = { kind: 'monitor', part: source, unit: 's', sense: 'at most', clause: 'monitor' } as const;
  const told = build.devices.flatMap((device) => {
    const watching = device.monitors === undefined ? undefined : build.network.branches[device.monitors];
    if (watching === undefined || !device.fitted(conditions)) return [];
    if (![watching.from, watching.to].some((node) => roads.source(node) === source)) return [];
    const { latest_s } = coldOutlook(device, conditions, {
      amperes: 0,
      residual_A: 0,
      frequency_Hz: build.installation.frequency_Hz,
      insulation_ohm: SOLID_OHM,
    });
    return [{ device: device.name, value: latest_s }];
  });
  const soonest = told.toSorted((one, other) => one.value - other.value)[0];
  if (soonest === undefined) return { ...about, value: Infinity, holds: 'no' };
  return { ...about, ...soonest, holds: soonest.value < Infinity ? 'yes' : 'no' };
}

/** What a solid fault leaves of the insulation, Ω. */
const SOLID_OHM = 1;
