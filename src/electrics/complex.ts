/** Complex numbers for the edges, one at a time; inside the solver they are paired arrays (`Phasors`). */

/** One complex number: a phasor in r.m.s. units, an impedance in ohm or an admittance in siemens. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** Many complex numbers, same length, index = node, branch or matrix place row by row. */
export interface Phasors {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** A complex number from its parts.
 *  @example complex(3) // { re: 3, im: 0 } */
export function complex(re: number, im = 0): Complex {
  return { re, im };
}

/** A phasor from its magnitude and angle in radians. */
export function polar(magnitude: number, angle_rad: number): Complex {
  return { re: magnitude * Math.cos(angle_rad), im: magnitude * Math.sin(angle_rad) };
}

/** Sum. */
export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

/** Difference, a − b. */
export function sub(a: Complex, b: Complex): Complex {
  return { re: a.re - b.re, im: a.im - b.im };
}

/** Product. */
export function mul(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/** Quotient a / b; dividing by zero gives non-finite parts, as with real numbers. */
export function div(a: Complex, b: Complex): Complex {
  const size = Math.max(Math.abs(b.re), Math.abs(b.im));
  const re = b.re / size;
  const im = b.im / size;
  const square = (re * re + im * im) * size;
  return { re: (a.re * re + a.im * im) / square, im: (a.im * re - a.re * im) / square };
}

/** A phasor stretched by a real factor. */
export function scale(a: Complex, factor: number): Complex {
  return { re: a.re * factor, im: a.im * factor };
}

/** Opposite, −a. */
export function neg(a: Complex): Complex {
  return { re: -a.re, im: -a.im };
}

/** Conjugate. */
export function conj(a: Complex): Complex {
  return { re: a.re, im: -a.im };
}

/** Magnitude, |a|; safe where the square would overflow. */
export function abs(a: Complex): number {
  return Math.hypot(a.re, a.im);
}

/** Angle in radians, −π to π; 0 for zero. */
export function arg(a: Complex): number {
  return Math.atan2(a.im, a.re);
}

/** One phasor out of many.
 *  @throws RangeError if there is no such index */
export function phasor(phasors: Phasors, index: number): Complex {
  const re = phasors.re[index];
  const im = phasors.im[index];
  if (re === undefined || im === undefined) {
    throw new RangeError(`phasor: index ${index} is outside 0…${phasors.re.length - 1}`);
  }
  return { re, im };
}

/** A fresh row of zero phasors.
 *  @param length how many, ≥ 0 */
export function phasors(length: number): Phasors {
  return { re: new Float64Array(length), im: new Float64Array(length) };
}
