/** The greatest 50/60 Hz current at which everyone, children included, can let go, A.
 *  IEC 60479-1:2005/2018, curve b for long times, seen second-hand. */
export const LET_GO_A = 0.005;

/** Let-go currents as Dalziel measured them at 60 Hz, A: the one that 99.5 % can let go of, and the median.
 *  C. F. Dalziel, let-go currents (134 men, 28 women). Men and women at 99.5 %: seen in a copy; medians seen second-hand; children: an
 *  estimate, from memory. */
export const dalzielLetGo = {
  men: { nearlyAll_A: 0.009, median_A: 0.016 },
  women: { nearlyAll_A: 0.006, median_A: 0.0105 },
  children: { nearlyAll_A: 0.0045 },
} as const;

/** Whether anyone at all can let go of what this hand holds, at this current (r.m.s. A), under limits for its frequency. */
export function canLetGo(hand_A: number, { letGo_A }: { readonly letGo_A: number } = { letGo_A: LET_GO_A }): boolean {
  return hand_A <= letGo_A;
}
