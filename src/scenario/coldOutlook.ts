import type { Conditions, DeviceInfo } from '../installation/index.ts';
import type { Operation } from '../protection/index.ts';
import { COLD, outlook } from './device.ts';

/** When this device would open, from cold, at a current and, if it compares any, a residual current that stay, A. */
export function coldOutlook(
  info: DeviceInfo,
  conditions: Conditions,
  {
    amperes,
    residual_A,
    frequency_Hz,
  }: { readonly amperes: number; readonly residual_A: number; readonly frequency_Hz: number },
): Operation {
  const seen = {
    info,
    settings: info.settings(conditions),
    amperes,
    ...(info.residual === undefined ? {} : { residual_A, frequency_Hz }),
  };
  return outlook(seen, COLD, 'middle');
}
