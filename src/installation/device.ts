import type { DeviceInfo } from './build.ts';
import type { Condition, Conditions } from './conditions.ts';
import type { Installation } from './installation.ts';
import type { DeviceSettings } from '../protection/index.ts';
import type { PlannedDevice } from './plan.ts';

/** A device with the conditions that set, jam or fit it. */
export function deviceInfo(
  name: string,
  device: PlannedDevice,
  installation: Installation,
  branch: (name: string) => number,
): DeviceInfo {
  const acting = <Kind extends 'setting' | 'jammed' | 'fitted'>(kind: Kind) =>
    Object.entries(installation.conditions).flatMap(([condition, what]) =>
      what.kind === kind && what.device === name
        ? [{ condition, what: what as Extract<Condition, { kind: Kind }> }]
        : [],
    );
  const [set, jams, fits] = [acting('setting'), acting('jammed'), acting('fitted')];
  const chosen = (conditions: Conditions, condition: string): boolean => conditions[condition] === 'yes';
  return {
    name,
    kind: device.kind,
    poles: device.poles.map(branch),
    ...(device.residual === undefined
      ? {}
      : { residual: device.residual.map((pole) => ({ branch: branch(pole), sign: 1 as const })) }),
    ...(device.monitors === undefined ? {} : { monitors: branch(device.monitors) }),
    settings: (conditions) =>
      set.reduce(
        (settings, { condition, what }) => (chosen(conditions, condition) ? withSetting(settings, what) : settings),
        device.settings,
      ),
    jammed: (conditions) => jams.some(({ condition }) => chosen(conditions, condition)),
    fitted: (conditions) => fits.every(({ condition }) => chosen(conditions, condition)),
  };
}

/** The same device with another rating or another residual current; what it does not have is not set. */
function withSetting(
  settings: DeviceSettings,
  { rating_A, residual_A }: { readonly rating_A?: number | undefined; readonly residual_A?: number | undefined },
): DeviceSettings {
  const rated = rating_A !== undefined && 'rating_A' in settings ? { ...settings, rating_A } : settings;
  if (residual_A === undefined) return rated;
  if ('residual_A' in rated) return { ...rated, residual_A };
  return 'residual' in rated && rated.residual !== undefined && 'residual_A' in rated.residual
    ? { ...rated, residual: { ...rated.residual, residual_A } }
    : rated;
}
