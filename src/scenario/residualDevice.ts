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

/** What a residual device feels: the magnitude of the phasor sum of what passes through it, A; undefined for a device
 *  that compares nothing. */
export function residual_A({ residual }: DeviceInfo, amperes: Phasors): number | undefined {
  if (residual === undefined) return undefined;
  let re = 0;
  let im = 0;
  for (const { branch, sign } of residual) {
    re += sign * (amperes.re[branch] ?? NaN);
    im += sign * (amperes.im[branch] ?? NaN);
  }
  return Math.hypot(re, im);
}
