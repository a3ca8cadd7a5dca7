import { name, say, type Vocabulary } from '../explain/index.ts';
import type { Interval, Timeline } from '../scenario/index.ts';
import type { Depiction, Sounding } from './depiction.ts';
import { LEAST_A } from './flow.ts';
import { largestSource_A } from './source.ts';

/** From here on, and with a fault, the transformer is heard to swell, A. */
const SWELLS_A = 80;

/** All that is heard along a run, in order of time. */
export function sounds({ intervals, build }: Timeline, vocabulary: Vocabulary): readonly Sounding[] {
  return intervals.flatMap(({ because, start_s, fault }, i): Sounding[] => {
    if (because.kind === 'fault-strikes' && fault && Math.hypot(fault.amperes.re, fault.amperes.im) >= LEAST_A)
      return [{ id: `${i} contact`, kind: 'contact', time_s: start_s, caption: say('caption.spark', vocabulary) }];
    if (because.kind !== 'device-operated') return [];
    const residual = build.devices.find(({ name }) => name === because.device)?.kind === 'residual-device';
    const values = { device: name(because.device, vocabulary) };
    return residual
      ? [{ id: `${i} gfci`, kind: 'gfci', time_s: start_s, caption: say('caption.residual', vocabulary, values) }]
      : [{ id: `${i} breaker`, kind: 'breaker', time_s: start_s, caption: say('caption.breaker', vocabulary, values) }];
  });
}

/** The steady hum: by the logarithm of what leaves the winding, 0 at half an ampere, 1 at 500 A. */
export function hum(timeline: Timeline, interval: Interval, vocabulary: Vocabulary): Depiction['hum'] {
  const amperes = largestSource_A(timeline.build, interval);
  const level = Math.min(1, Math.max(0, Math.log10(amperes / 0.5) / 3));
  const key =
    level === 0 ? 'caption.quiet' : interval.fault && amperes >= SWELLS_A ? 'caption.hum.fault' : 'caption.hum';
  return { level, caption: say(key, vocabulary) };
}
