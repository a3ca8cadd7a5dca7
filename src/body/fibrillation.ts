/** Constants of Dalziel's law, A·√s, by body mass in kg: half a per cent of people would fibrillate.
 *  116 (50 kg): Dalziel and Lee, IEEE Trans. IGA-4, 1968, seen in a copy; 157 (70 kg): IEEE 80, seen second-hand. */
export const dalzielConstants = { 50: 0.116, 70: 0.157 } as const;

/** Range in which the law was found, s. Dalziel and Lee 1968, seen in a copy. */
const dalzielRange_s = { from: 0.008, to: 5 } as const;

/** Second opinion on fibrillation: k/√t, A through hand and feet; null outside 8 ms to 5 s, where the law says nothing.
 *  Beyond about 3 s it lies above curve c1 of IEC 60479-1: the two are not interchangeable. */
export function dalzielFibrillation_A(time_s: number, mass_kg: keyof typeof dalzielConstants = 50): number | null {
  if (!(time_s >= dalzielRange_s.from && time_s <= dalzielRange_s.to)) return null;
  return dalzielConstants[mass_kg] / Math.sqrt(time_s);
}
