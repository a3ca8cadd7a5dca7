/** How the exposed metal of a supply finds home: by metal, by soil alone, or not at all until a second fault. */
export type Earthing = 'TN' | 'TT' | 'IT';

/** Longest time a final circuit may take to disconnect, s, by the voltage of a line against earth.
 *  @see IEC 60364-4-41:2005 table 41.1, kept 2017; seen second-hand. An IT supply whose metal is bonded together is held to
 *  the times of TN at its second fault (411.6.4, from memory). */
const FINAL = [
  { upTo_V: 120, TN: 0.8, TT: 0.3 },
  { upTo_V: 230, TN: 0.4, TT: 0.2 },
  { upTo_V: 400, TN: 0.2, TT: 0.07 },
  { upTo_V: Infinity, TN: 0.1, TT: 0.04 },
] as const;

/** The same for circuits that feed others, s (IEC 60364-4-41:2005 411.3.2.3 and 411.3.2.4; 1 s from memory). */
const DISTRIBUTION = { TN: 5, TT: 1 } as const;

/** A nominal voltage as it is computed differs from the printed one by rounding. */
const NEAR = 1.02;

/** Longest disconnection time for this supply at this nominal voltage to earth, s. */
export function disconnectionTime_s(
  earthing: Earthing,
  nominal_V: number,
  circuit: 'final' | 'distribution' = 'final',
): number {
  const column = earthing === 'TT' ? 'TT' : 'TN';
  if (circuit === 'distribution') return DISTRIBUTION[column];
  return FINAL.find(({ upTo_V }) => nominal_V <= upTo_V * NEAR)?.[column] ?? FINAL[3][column];
}

/** Where no table of times holds, a fault counts as ended at once by then, s: six cycles of 60 Hz (common practice, no
 *  source). The North American rule asks for a current that operates the device, not for a time: NFPA 70 250.4(A)(5). */
export const AT_ONCE_S = 0.1;

/** Share of the nominal voltage a fault must still be cleared at: BS 7671:2018 411.4.4 (C_min = 0.95), seen second-hand;
 *  IEC 60364-4-41 itself asks for the whole voltage, the less careful side. */
export const LEAST_VOLTAGE = 0.95;

/** Largest impedance of a loop that still drives this current, Ω.
 *  @param share of the nominal voltage that is counted on
 *  @see IEC 60364-4-41:2005 411.4.4: Zs·Ia ≤ U0 */
export function loopLimit_ohm(nominal_V: number, operating_A: number, share: number = LEAST_VOLTAGE): number {
  return (share * nominal_V) / operating_A;
}

/** Least current at which a device surely opens within this time, A; Infinity if none does.
 *  @param latest_s its latest opening at a steady current, from cold; never longer at a larger current */
export function operatingCurrent_A(latest_s: (amperes: number) => number, within_s: number): number {
  let [low, high] = [1e-4, 1e6];
  if (latest_s(high) > within_s) return Infinity;
  for (let round = 0; round < 60; round += 1) {
    const middle = Math.sqrt(low * high);
    if (latest_s(middle) <= within_s) high = middle;
    else low = middle;
  }
  return high;
}
