import type { Phasors } from '../electrics/index.ts';
import type { DeviceInfo } from '../installation/index.ts';

/** Region of a residual-current device: it trips when it operates and stays so until it is reset by hand. */
export function residualDeviceRegion(device: string) {
  const isThisDevice = { type: 'isThisDevice', params: { device } } as const;
  return {
    initial: 'closed',
    states: {
      closed: { on: { 'device.operated': { guard: isThisDevice, target: 'tripped' } } },
      tripped: { on: { 'handle.closed': { guard: isThisDevice, target: 'closed' } } },
    },
  } as const;
}

/** What a residual device feels: the magnitude of the phasor sum of what passes through it, A, of each harmonic by itself
 *  and then their r.m.s.; undefined for a device that compares nothing. */
export function residual_A(
  { residual }: DeviceInfo,
  amperes: Phasors,
  harmonics: readonly Phasors[] = [],
): number | undefined {
  if (residual === undefined) return undefined;
  const sums = [amperes, ...harmonics].map(({ re, im }) =>
    residual.reduce(
      (sum, { branch, sign }) => ({ re: sum.re + sign * (re[branch] ?? NaN), im: sum.im + sign * (im[branch] ?? NaN) }),
      { re: 0, im: 0 },
    ),
  );
  return Math.hypot(...sums.flatMap(({ re, im }) => [re, im]));
}
