import { TOUCH_LIMIT_V } from '../metal.ts';
import type { Build } from '../../installation/index.ts';
import { residualMust_A } from '../devices.ts';
import { opening, type Circuit } from './circuit.ts';
import {
  AT_ONCE_S,
  disconnectionTime_s,
  LEAST_VOLTAGE,
  loopLimit_ohm,
  operatingCurrent_A,
  type Earthing,
} from './disconnection.ts';
import type { End, Point } from './points.ts';
import type { Standing } from './standing.ts';
import type { Clause, Verdict } from './verdict.ts';

/** What the rules of a supply ask of a circuit. */
export interface Asked {
  readonly limit_s: number;
  readonly time: Clause;
  readonly loop: Clause;
  /** Volts that must drive the operating current round the loop. */
  readonly volts: number;
}

/** Circuits with a device above this rating count as distribution, A: 63 A with socket-outlets (IEC 60364-4-41 AMD1:2017
 *  411.3.2.2, seen second-hand). */
const FINAL_A = 63;

/** What the rules of this supply ask of a circuit. */
export function askedOf(build: Build, { nominal_V }: Point, { rating_A = 0 }: Circuit, earthing: Earthing): Asked {
  if (build.installation.region === 'north-america')
    return { limit_s: AT_ONCE_S, time: 'time.north-america', loop: 'loop.north-america', volts: nominal_V };
  const limit_s = disconnectionTime_s(earthing, nominal_V, rating_A > FINAL_A ? 'distribution' : 'final');
  if (earthing === 'TT') return { limit_s, time: 'time.tt', loop: 'loop.tt', volts: TOUCH_LIMIT_V };
  const volts = LEAST_VOLTAGE * nominal_V;
  return earthing === 'IT'
    ? { limit_s, time: 'time.it', loop: 'loop.it', volts }
    : { limit_s, time: 'time.tn', loop: 'loop.iec', volts };
}

/** The largest loop that one of the devices still clears in time. In a TT supply a residual device is held to 50 V, one that
 *  counts overcurrent to the supply's own volts (IEC 60364-4-41:2005 411.5.3 and 411.5.4). */
export function loopAllowed(circuit: Circuit, calm: Standing, { nominal_V }: Point, asked: Asked) {
  let best: { limit_ohm: number; device?: string } = { limit_ohm: 0 };
  for (const device of circuit.devices) {
    // In a TT supply a residual device is held to what it must act on (411.5.3); its time is judged apart.
    const must_A = asked.loop === 'loop.tt' ? residualMust_A(device.settings(calm.conditions)) : undefined;
    const needed_A =
      must_A ??
      operatingCurrent_A(
        (amperes) => opening({ ...circuit, devices: [device] }, calm, amperes, true).latest_s,
        asked.limit_s,
      );
    const volts = asked.loop === 'loop.tt' && device.residual === undefined ? LEAST_VOLTAGE * nominal_V : asked.volts;
    const limit_ohm = loopLimit_ohm(volts, needed_A, 1);
    if (limit_ohm > best.limit_ohm) best = { limit_ohm, device: device.name };
  }
  return best;
}

/** What the metal at a point stands at while a fault lasts there. */
export function touchVerdict(part: string, line: End, case_V: number, holds: Verdict['holds']): Verdict {
  return {
    kind: 'case-volts',
    part,
    line: line.terminal,
    value: case_V,
    unit: 'V',
    limit: TOUCH_LIMIT_V,
    sense: 'at most',
    holds,
    clause: 'touch',
  };
}
