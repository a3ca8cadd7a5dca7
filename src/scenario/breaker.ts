import type { Phasors } from '../electrics/index.ts';
import type { DeviceInfo } from '../installation/index.ts';

/** Region of a device: it trips when it operates (a fuse melts, a monitor warns) and stays so until it is closed, replaced or
 *  reset by hand. */
export function deviceRegion(device: string) {
  const isThisDevice = { type: 'isThisDevice', params: { device } } as const;
  return {
    initial: 'closed',
    states: {
      closed: { on: { 'device.operated': { guard: isThisDevice, target: 'tripped' } } },
      tripped: { on: { 'handle.closed': { guard: isThisDevice, target: 'closed' } } },
    },
  } as const;
}

/** What a breaker feels: the r.m.s. of its largest pole, A, harmonics included. Its poles share one trip bar. */
export function largestPole_A({ poles }: DeviceInfo, amperes: Phasors, harmonics: readonly Phasors[] = []): number {
  return Math.max(
    0,
    ...poles.map((pole) =>
      Math.hypot(...[amperes, ...harmonics].flatMap(({ re, im }) => [re[pole] ?? NaN, im[pole] ?? NaN])),
    ),
  );
}
