/** The laws, checked from outside on any solution. */
import type { Network, Solution, Values } from './network.ts';

/** Worst relative residuals of a solution; all near 1e-15 when it is right, 0 when nothing flows. */
export interface Balance {
  /** Kirchhoff: largest sum of currents at a node, earth included, over the largest current; and of ampere-turns on a
   *  core, over the largest current in as many turns as its largest winding. */
  readonly kirchhoff: number;
  /** Power that the sources give less what the impedances take, over the sum of all volt-amperes the sources give. */
  readonly power: number;
  /** Ohm: largest |V_from − V_to + E − Z·(I − J)| over the largest voltage or EMF; on a core what is not in proportion to
   *  the turns. */
  readonly ohm: number;
}

/** How well a solution obeys Kirchhoff, Ohm and the conservation of power. */
export function balance(network: Network, values: Values, solution: Solution): Balance {
  const { volts, amperes } = solution;
  const { impedance, emf, injection } = values;
  const count = network.branches.length;
  /** What goes through the impedances, I − J. */
  const ownRe = amperes.re.map((re, b) => re - (injection?.re[b] ?? 0));
  const ownIm = amperes.im.map((im, b) => im - (injection?.im[b] ?? 0));
  const fallRe = new Float64Array(count);
  const fallIm = new Float64Array(count);
  for (let b = 0; b < count; b++) {
    fallRe[b] = impedance.re[b]! * ownRe[b]! - impedance.im[b]! * ownIm[b]!;
    fallIm[b] = impedance.re[b]! * ownIm[b]! + impedance.im[b]! * ownRe[b]!;
  }
  const ohms = impedance.re.map((re, b) => Math.hypot(re, impedance.im[b]!));
  network.windings.forEach(({ branches }, w) => {
    const z = values.coupling[w]!;
    branches.forEach((b, k) => {
      ohms[b] = Math.hypot(z.re[k * branches.length + k]!, z.im[k * branches.length + k]!);
      fallRe[b] = 0;
      fallIm[b] = 0;
      branches.forEach((other, l) => {
        const at = k * branches.length + l;
        fallRe[b]! += z.re[at]! * ownRe[other]! - z.im[at]! * ownIm[other]!;
        fallIm[b]! += z.re[at]! * ownIm[other]! + z.im[at]! * ownRe[other]!;
      });
    });
  });
  let turning = 0;
  for (const { branches, turns } of network.cores ?? []) {
    let square = 0;
    let most = 0;
    const sum = { re: 0, im: 0 };
    const perTurn = { re: 0, im: 0 };
    branches.forEach((b, k) => {
      const n = turns[k]!;
      const { from, to } = network.branches[b]!;
      square += n * n;
      most = worst(most, Math.abs(n));
      sum.re += n * ownRe[b]!;
      sum.im += n * ownIm[b]!;
      // The volts a turn that fit all windings best, by least squares.
      perTurn.re += n * (volts.re[from]! - volts.re[to]! + emf.re[b]! - fallRe[b]!);
      perTurn.im += n * (volts.im[from]! - volts.im[to]! + emf.im[b]! - fallIm[b]!);
    });
    branches.forEach((b, k) => {
      fallRe[b]! += (turns[k]! * perTurn.re) / square;
      fallIm[b]! += (turns[k]! * perTurn.im) / square;
    });
    turning = worst(turning, Math.hypot(sum.re, sum.im) / most);
  }

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
    // S = V·conj(I), summed over all branches, is nothing by Tellegen's theorem; −V = E − Z·(I − J) where J does not go.
    const riseRe = er - fallRe[b]!;
    const riseIm = ei - fallIm[b]!;
    surplusRe += riseRe * ownRe[b]! + riseIm * ownIm[b]!;
    surplusIm += riseIm * ownRe[b]! - riseRe * ownIm[b]!;
    given += Math.hypot(er, ei) * Math.hypot(ownRe[b]!, ownIm[b]!);
    if (injection === undefined) return;
    const jr = injection.re[b]!;
    const ji = injection.im[b]!;
    const vr = volts.re[from]! - volts.re[to]!;
    const vi = volts.im[from]! - volts.im[to]!;
    surplusRe -= vr * jr + vi * ji;
    surplusIm -= vi * jr - vr * ji;
    given += Math.hypot(vr, vi) * Math.hypot(jr, ji);
    // What is injected has its share of rounding even where nothing of it is left over.
    largest = worst(largest, Math.hypot(jr, ji));
    highest = worst(highest, ohms[b]! * Math.hypot(jr, ji));
  });
  let sum = 0;
  for (let node = 0; node < sumRe.length; node++) sum = worst(sum, Math.hypot(sumRe[node]!, sumIm[node]!));
  return {
    kirchhoff: ratio(worst(sum, turning), largest),
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
