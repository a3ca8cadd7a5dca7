/** κ of the first peak of a short-circuit current, i_peak = κ·√2·I: what an instantaneous element that answers to peaks
 *  sees at most, as a multiple of the steady wave. At least 1.02 by the fitted formula, never above 2.
 *  @param xOverR reactance over resistance of the loop, 0 or more; Infinity for no resistance
 *  @throws RangeError for a ratio that is no such thing
 *  @see IEC 60909-0:2016 4.3.1, κ = 1.02 + 0.98·exp(−3·R/X), seen second-hand */
export function peakFactor(xOverR: number): number {
  if (!(xOverR >= 0)) throw new RangeError(`X/R is ${xOverR}: write zero or more`);
  return 1.02 + 0.98 * Math.exp(-3 / xOverR);
}
