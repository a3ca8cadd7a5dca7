import type { Phasors } from '../electrics/index.ts';
import type { DeviceInfo } from '../installation/index.ts';

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
