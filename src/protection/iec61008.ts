import type { Band, Edge } from './band.ts';
import type { ResidualContent, Seen } from './operation.ts';

/** Wave-form type of a residual-current device. */
export type ResidualType = 'AC' | 'A' | 'F' | 'B';

/** A residual-current device to IEC 61008-1 (or the residual part of one to IEC 61009-1), types F and B to IEC 62423. */
export interface Iec61008Settings {
  readonly family: 'iec61008';
  /** IΔn, A. */
  readonly residual_A: number;
  readonly type: ResidualType;
  /** Type S. */
  readonly selective: boolean;
}

/** Break times at multiples of IΔn, s. IEC 61008-1 (2010, A1:2012, A2:2013) table 1, a.c., seen second-hand; of S the least
 *  at 2 IΔn (one manual prints 0.05) and above 5 IΔn from memory. 0.25 A, allowed in place of 5 IΔn up to 30 mA, is not used. */
const BREAK_TIMES = {
  general: { longest: [0.3, 0.15, 0.04] },
  selective: { longest: [0.5, 0.2, 0.15], least: [0.13, 0.06, 0.05] },
} as const;
const AT_MULTIPLES = [1, 2, 5] as const;

/** A fast general one needs half a cycle of 50 Hz, s: common practice, no source. */
const FASTEST_S = 0.01;

/** Multiples of IΔn between which each type acts, by wave: never up to the first, always from the second on; null: it owes
 *  nothing. IEC 61008-1 and IEC 62423; AC and A seen second-hand, F and B from memory. */
const BANDS: Readonly<Record<ResidualType, Readonly<Record<ResidualContent, readonly [number, number] | null>>>> = {
  AC: { sinusoidal: [0.5, 1], pulsating: null, composite: null, smooth: null },
  A: { sinusoidal: [0.5, 1], pulsating: [0.35, 1.4], composite: null, smooth: null },
  F: { sinusoidal: [0.5, 1], pulsating: [0.35, 1.4], composite: [0.5, 1.4], smooth: null },
  B: { sinusoidal: [0.5, 1], pulsating: [0.35, 1.4], composite: [0.5, 1.4], smooth: [0.5, 2] },
};
/** Up to 10 mA a pulsating current may have to reach this multiple. IEC 61008-1, seen second-hand. */
const PULSATING_SMALL = { upTo_A: 0.01, must: 2 } as const;

/** What type B must act on above mains frequency: up to this frequency, between these multiples. IEC 62423, from memory. */
const TYPE_B_FREQUENCIES = [
  { upTo_Hz: 150, band: [0.5, 2.4] },
  { upTo_Hz: 400, band: [0.5, 6] },
  { upTo_Hz: 1000, band: [1, 14] },
] as const;
const MAINS_HZ = { from: 45, to: 65 } as const;

/** Smooth d.c. beside the residual current up to which a type still does what it must, A. IEC 61008-1, IEC 62423, seen
 *  second-hand. */
export function smoothDcTolerated_A(type: ResidualType, residual_A: number): number {
  return { AC: 0, A: 0.006, F: 0.01, B: Math.max(0.4 * residual_A, 0.01) }[type];
}

/** What this device makes of a residual current of this wave. Where it owes nothing, a fast one is drawn as if it were
 *  sinusoidal (it may act) and all others never act. */
export function iec61008Band(
  { residual_A, type, selective }: Iec61008Settings,
  { content = 'sinusoidal', frequency_Hz, smoothDc_A = 0 }: Pick<Seen, 'content' | 'frequency_Hz' | 'smoothDc_A'>,
): Band {
  const blind = smoothDc_A > smoothDcTolerated_A(type, residual_A);
  const owed = blind ? null : owes(type, residual_A, content, frequency_Hz);
  const [from, must] = owed ?? [0.5, null];
  const { longest } = selective ? BREAK_TIMES.selective : BREAK_TIMES.general;
  // Half of IΔn itself is still a value at which it must not act.
  const least = from * residual_A * (1 + 1e-9);
  const edge = (times: readonly number[], scale: number): Edge['points'] =>
    times.map((time_s, index) => [scale * (AT_MULTIPLES[index] ?? 1), time_s] as const);
  const fast: Edge['points'] = selective
    ? [
        [least, BREAK_TIMES.selective.least[0]],
        ...edge(BREAK_TIMES.selective.least, residual_A * Math.max(1, from * 2)),
      ]
    : [[least, FASTEST_S]];
  return {
    acts: 'residual',
    feels: 'residual',
    fast: { points: fast, beyond: 'flat' },
    slow: must === null ? null : { points: edge(longest, must * residual_A), beyond: 'flat' },
  };
}

function owes(
  type: ResidualType,
  residual_A: number,
  content: ResidualContent,
  frequency_Hz: number | undefined,
): readonly [number, number] | null {
  const band = BANDS[type][content];
  if (content === 'pulsating' && band !== null && residual_A <= PULSATING_SMALL.upTo_A)
    return [band[0], PULSATING_SMALL.must];
  if (content !== 'sinusoidal' || frequency_Hz === undefined) return band;
  if (frequency_Hz >= MAINS_HZ.from && frequency_Hz <= MAINS_HZ.to) return band;
  if (type !== 'B' || frequency_Hz < MAINS_HZ.from) return null;
  return TYPE_B_FREQUENCIES.find(({ upTo_Hz }) => frequency_Hz <= upTo_Hz)?.band ?? null;
}
