/** The laws, checked from outside on any solution. */
import type { Network, Solution, Values } from './network.ts';

/** Worst relative residuals of a solution; all near 1e-15 when it is right, 0 when nothing flows. */
export interface Balance {
  /** Kirchhoff: largest sum of currents at a node, earth included, over the largest current. */
  readonly kirchhoff: number;
  /** Power that the sources give less what the impedances take, over the sum of all volt-amperes the sources give. */
  readonly power: number;
  /** Ohm: largest |V_from − V_to + E − Z·I| over the largest voltage or EMF. */
  readonly ohm: number;
}

/** How well a solution obeys Kirchhoff, Ohm and the conservation of power. */
export function balance(network: Network, values: Values, solution: Solution): Balance {
  const { volts, amperes } = solution;
  const { impedance, emf } = values;
  const count = network.branches.length;
  const fallRe = new Float64Array(count);
  const fallIm = new Float64Array(count);
  for (let b = 0; b < count; b++) {
    fallRe[b] = impedance.re[b]! * amperes.re[b]! - impedance.im[b]! * amperes.im[b]!;
    fallIm[b] = impedance.re[b]! * amperes.im[b]! + impedance.im[b]! * amperes.re[b]!;
  }
  network.windings.forEach(({ branches }, w) => {
    const z = values.coupling[w]!;
    branches.forEach((b, k) => {
      fallRe[b] = 0;
      fallIm[b] = 0;
      branches.forEach((other, l) => {
        const at = k * branches.length + l;
        fallRe[b]! += z.re[at]! * amperes.re[other]! - z.im[at]! * amperes.im[other]!;
        fallIm[b]! += z.re[at]! * amperes.im[other]! + z.im[at]! * amperes.re[other]!;
      });
    });
  });

  const sumRe = new Float64Array(network.nodes.length);
  const sumIm = new Float64Array(network.nodes.length);
  let largest = 0;
  let highest = 0;
  let ohm = 0;
  let surplusRe = 0;
  let surplusIm = 0;
  let given = 0;
  network.branches.forEach(({ from, to }, b) => {
    const ir = amperes.re[b]!;
    const ii = amperes.im[b]!;
    sumRe[from]! += ir;
    sumIm[from]! += ii;
    sumRe[to]! -= ir;
    sumIm[to]! -= ii;
    const er = emf.re[b]!;
    const ei = emf.im[b]!;
    const mismatchRe = volts.re[from]! - volts.re[to]! + er - fallRe[b]!;
    const mismatchIm = volts.im[from]! - volts.im[to]! + ei - fallIm[b]!;
    ohm = worst(ohm, Math.hypot(mismatchRe, mismatchIm));
    largest = worst(largest, Math.hypot(ir, ii));
    highest = worst(highest, Math.hypot(volts.re[from]!, volts.im[from]!));
    highest = worst(highest, Math.hypot(volts.re[to]!, volts.im[to]!));
    highest = worst(highest, Math.hypot(er, ei));
    // S = (E − Z·I)·conj(I), summed over all branches, is nothing by Tellegen's theorem.
    surplusRe += (er - fallRe[b]!) * ir + (ei - fallIm[b]!) * ii;
    surplusIm += (ei - fallIm[b]!) * ir - (er - fallRe[b]!) * ii;
    given += Math.hypot(er, ei) * Math.hypot(ir, ii);
  });
  let sum = 0;
  for (let node = 0; node < sumRe.length; node++) sum = worst(sum, Math.hypot(sumRe[node]!, sumIm[node]!));
  return {
    kirchhoff: ratio(sum, largest),
    power: ratio(Math.hypot(surplusRe, surplusIm), given),
    ohm: ratio(ohm, highest),
  };
}

/** The larger of two; NaN wins and stays, so that it cannot hide. */
function worst(a: number, b: number): number {
  return b > a || Number.isNaN(b) ? b : a;
}

function ratio(part: number, whole: number): number {
  return part === 0 ? 0 : part / whole;
}
