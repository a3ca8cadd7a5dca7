import type { DeviceInfo } from './build.ts';
import type { Condition, Conditions } from './conditions.ts';
import type { Installation } from './installation.ts';
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
    settings: (conditions) =>
      set.reduce(
        (settings, { condition, what }) =>
          chosen(conditions, condition) && 'rating_A' in settings ? { ...settings, rating_A: what.rating_A } : settings,
        device.settings,
      ),
    jammed: (conditions) => jams.some(({ condition }) => chosen(conditions, condition)),
    fitted: (conditions) => fits.every(({ condition }) => chosen(conditions, condition)),
  };
}
