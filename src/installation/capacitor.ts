import { LEAST_OHM, type PlannedBranch, type Surroundings } from './plan.ts';
import { LARGEST_OHM } from './quantity.ts';

/** A branch that is a capacitance: −1/(ωC) at the installation's own frequency; at the h-th harmonic an h-th of it. */
export function capacitor(
  branch: Omit<PlannedBranch, 'resistance_ohm' | 'reactance_ohm'>,
  farad: number,
  { frequency_Hz }: Pick<Surroundings, 'frequency_Hz'>,
): PlannedBranch {
  const reactance_ohm =
    frequency_Hz === 0 ? -LARGEST_OHM : Math.max(-1 / (2 * Math.PI * frequency_Hz * farad), -LARGEST_OHM);
  return { ...branch, resistance_ohm: LEAST_OHM, reactance_ohm };
}
