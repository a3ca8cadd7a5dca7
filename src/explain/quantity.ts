/** Units that figures are shown in. */
export type Unit = 'A' | 'V' | 'Ω' | 's' | 'W' | 'VA' | 'Hz' | 'm';

const NBSP = '\u00a0';
const MINUS = '\u2212';
const PREFIXES = [
  { factor: 1e9, symbol: 'G' },
  { factor: 1e6, symbol: 'M' },
  { factor: 1e3, symbol: 'k' },
  { factor: 1, symbol: '' },
  { factor: 1e-3, symbol: 'm' },
  { factor: 1e-6, symbol: 'µ' },
  { factor: 1e-9, symbol: 'n' },
] as const;
/** Below this many of the unit nothing is left to tell: the solver's own rounding lies near it. */
const NOTHING = 1e-10;

/** A number in at most three significant figures, true minus, no unit; zeros after the point are left out.
 *  @example figure(19.04) // "19" */
export function figure(value: number): string {
  if (Number.isNaN(value)) throw new RangeError('figure: the value is not a number');
  if (!Number.isFinite(value)) return value > 0 ? '∞' : `${MINUS}∞`;
  const rounded = Number(value.toPrecision(3));
  if (rounded === 0) return '0';
  const text = Math.abs(rounded) >= 1e-6 ? String(Math.abs(rounded)) : Math.abs(rounded).toFixed(12).replace(/0+$/, '');
  return rounded < 0 ? `${MINUS}${text}` : text;
}

/** A quantity as the trade writes it: at most three significant figures, SI prefix, no-break space, true minus.
 *  Seconds from 120 s up are told in minutes, from 7200 s up in hours.
 *  @param value in the unit without prefix
 *  @throws RangeError if the value is not a number
 *  @example quantity(0.0112, 'A') // "11.2 mA" */
export function quantity(value: number, unit: Unit): string {
  if (Number.isNaN(value)) throw new RangeError(`quantity: the value in ${unit} is not a number`);
  if (!Number.isFinite(value)) return `${value > 0 ? '∞' : `${MINUS}∞`}${NBSP}${unit}`;
  const size = Math.abs(value);
  if (size < NOTHING) return `0${NBSP}${unit}`;
  if (unit === 's' && size >= 120) return duration(value);
  const rounded = Number(size.toPrecision(3));
  const prefixes = unit === 's' ? PREFIXES.filter(({ factor }) => factor <= 1) : PREFIXES;
  const prefix = prefixes.find(({ factor }) => rounded >= factor) ?? PREFIXES[PREFIXES.length - 1];
  if (prefix === undefined) throw new RangeError('quantity: no prefix');
  return `${figure((Math.sign(value) * rounded) / prefix.factor)}${NBSP}${prefix.symbol}${unit}`;
}

function duration(value: number): string {
  return Math.abs(value) < 7200 ? `${figure(value / 60)}${NBSP}min` : `${figure(value / 3600)}${NBSP}h`;
}

/** A share of one as a percentage to three figures. */
export function percent(share: number): string {
  return `${figure(share * 100)}\u00a0%`;
}
