import type { PlannedBranch } from './plan.ts';

/** A planned branch with the part it belongs to and, if a condition owns it, that condition. */
export interface Laid extends PlannedBranch {
  readonly part: string;
  readonly condition?: string;
}
