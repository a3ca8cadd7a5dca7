import type { Conditions, DeviceInfo } from '../installation/index.ts';
import type { Operation } from '../protection/index.ts';
import { COLD, outlook } from './device.ts';

/** When this device would operate, from cold, at what stays: a current, if it compares any a residual current, A, and if it
 *  watches one the insulation to earth, Ω. */
export function coldOutlook(
  info: DeviceInfo,
  conditions: Conditions,
  {
    amperes,
    residual_A,
    frequency_Hz,
    insulation_ohm = Infinity,
  }: {
    readonly amperes: number;
    readonly residual_A: number;
    readonly frequency_Hz: number;
    readonly insulation_ohm?: number;
  },
): Operation {
  const seen = {
    info,
    settings: info.settings(conditions),
    amperes,
    ...(info.residual === undefined ? {} : { residual_A, frequency_Hz }),
    ...(info.monitors === undefined ? {} : { insulation_ohm }),
  };
  return outlook(seen, COLD, 'middle');
}
