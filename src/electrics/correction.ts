/** Corrects the currents of the links until the voltages around every loop fit: through the nodal factors, or
 *  through the loop factors where those lose digits. */
import type { Admittance } from './admittance.ts';
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import { growth, solve } from './factors.ts';
import type { Factors } from './factors.ts';
import { atRest, lift, solveLoops } from './loops.ts';
import type { Loops } from './loops.ts';
import type { Network, Solution, Values } from './network.ts';
import { closeLoops, layOut } from './tree.ts';
import type { Tree } from './tree.ts';

/** Relative to the largest EMF: a link's misfit not worth another step. */
const FINE = 1e-13;
/** Relative to the largest EMF: a misfit that no longer counts as an answer. */
const COARSE = 1e-9;
/** Growth of the nodal factors above which digits are lost that a correction may not bring back. */
const TRUSTED = 1e4;
/** More steps than any network needs that can be solved at all. */
export const STEPS = 5;

/** Everything a solve writes to. */
export interface Bench {
  readonly network: Network;
  readonly tree: Tree;
  readonly admittance: Admittance;
  readonly factors: Factors;
  /** V per branch: E − Z·I. */
  readonly rise: Phasors;
  /** V per branch: what a link does not fit by; 0 in the tree. */
  readonly misfit: Phasors;
  /** A per branch: what a misfit drives. */
  readonly driven: Phasors;
  /** V per node. */
  readonly drop: Phasors;
}

/** Corrects the currents of the links until every loop fits; how many steps it took, more than `STEPS` if it never did. */
export function settle(bench: Bench, values: Values, out: Solution, loops: Loops | undefined): number {
  const { network, tree, rise } = bench;
  const { emf } = values;
  const { amperes, volts } = out;
  amperes.re.fill(0);
  amperes.im.fill(0);
  bench.misfit.re.fill(0);
  bench.misfit.im.fill(0);
  let highest = 0;
  for (let b = 0; b < rise.re.length; b++) {
    const er = emf.re[b]!;
    const ei = emf.im[b]!;
    rise.re[b] = er;
    rise.im[b] = ei;
    const square = er * er + ei * ei;
    if (square > highest) highest = square;
  }
  let before = Infinity;
  for (let step = 0; ; step++) {
    layOut(tree, rise, volts);
    const worst = fit(bench, volts);
    if (worst <= FINE * FINE * highest) return step;
    if (step === STEPS || !(worst < before / 4)) {
      // No step halves the misfit any more. That is the limit of the arithmetic, unless the factors have lost digits.
      const limit = loops === undefined && !trusted(bench.factors) ? FINE : COARSE;
      return worst <= limit * limit * highest ? step : STEPS + 1;
    }
    before = step === 0 ? Infinity : worst;
    if (loops === undefined) driveNodes(bench, amperes);
    else driveLoops(bench, loops, amperes);
    closeLoops(tree, amperes);
    lift(network, values, amperes, rise);
  }
}

/** Whether an answer can be had from the nodal factors in one step. */
export function trusted(factors: Factors): boolean {
  return growth(factors) <= TRUSTED;
}

/** Writes what each link does not fit by; the largest |V|². */
function fit({ tree, rise, misfit }: Bench, volts: Phasors): number {
  const { links, from, to } = tree;
  let worst = 0;
  for (let k = 0; k < links.length; k++) {
    const b = links[k]!;
    const vr = volts.re[from[b]!]! - volts.re[to[b]!]! + rise.re[b]!;
    const vi = volts.im[from[b]!]! - volts.im[to[b]!]! + rise.im[b]!;
    misfit.re[b] = vr;
    misfit.im[b] = vi;
    const square = vr * vr + vi * vi;
    if (!(square <= worst)) worst = square;
  }
  return worst;
}

/** The link that fits worst. */
export function worstLink({ tree, misfit }: Bench): number {
  return tree.links.reduce((worst, b) => {
    const here = Math.hypot(misfit.re[b]!, misfit.im[b]!);
    return worst < 0 || here > Math.hypot(misfit.re[worst]!, misfit.im[worst]!) ? b : worst;
  }, -1);
}

/** Adds to the links the amperes that their misfit drives, through the nodal factors. */
function driveNodes(bench: Bench, amperes: Phasors): void {
  const { tree, factors, driven, drop } = bench;
  const { links, from, to } = tree;
  drop.re.fill(0);
  drop.im.fill(0);
  drive(bench, undefined);
  for (let k = 0; k < links.length; k++) inject(drop, from, to, driven, links[k]!);
  for (const { branches } of bench.network.windings) {
    for (let k = 0; k < branches.length; k++) {
      if (tree.inTree[branches[k]!] === 1) inject(drop, from, to, driven, branches[k]!);
    }
  }
  solve(factors, drop, drop);
  drive(bench, drop);
  for (let k = 0; k < links.length; k++) {
    const b = links[k]!;
    amperes.re[b]! += driven.re[b]!;
    amperes.im[b]! += driven.im[b]!;
  }
}

/** The current of a branch leaves one node and enters another. */
function inject(out: Phasors, from: Int32Array, to: Int32Array, driven: Phasors, b: number): void {
  const ir = driven.re[b]!;
  const ii = driven.im[b]!;
  out.re[from[b]!]! -= ir;
  out.im[from[b]!]! -= ii;
  out.re[to[b]!]! += ir;
  out.im[to[b]!]! += ii;
}

/** Amperes that the misfit drives through each link and winding, and with it the drop across them. */
function drive({ network, tree, admittance, misfit, driven }: Bench, drop: Phasors | undefined): void {
  const { links, from, to } = tree;
  const { siemens, isWound, wound } = admittance;
  for (let k = 0; k < links.length; k++) {
    const b = links[k]!;
    if (isWound[b] === 1) continue;
    let vr = misfit.re[b]!;
    let vi = misfit.im[b]!;
    if (drop !== undefined) {
      vr += drop.re[from[b]!]! - drop.re[to[b]!]!;
      vi += drop.im[from[b]!]! - drop.im[to[b]!]!;
    }
    const yr = siemens.re[b]!;
    const yi = siemens.im[b]!;
    driven.re[b] = yr * vr - yi * vi;
    driven.im[b] = yr * vi + yi * vr;
  }
  for (let w = 0; w < wound.length; w++) {
    const members = network.windings[w]!.branches;
    const y = wound[w]!;
    const n = members.length;
    for (let k = 0; k < n; k++) {
      driven.re[members[k]!] = 0;
      driven.im[members[k]!] = 0;
    }
    for (let l = 0; l < n; l++) {
      const b = members[l]!;
      let vr = misfit.re[b]!;
      let vi = misfit.im[b]!;
      if (drop !== undefined) {
        vr += drop.re[from[b]!]! - drop.re[to[b]!]!;
        vi += drop.im[from[b]!]! - drop.im[to[b]!]!;
      }
      for (let k = 0; k < n; k++) {
        const yr = y.re[k * n + l]!;
        const yi = y.im[k * n + l]!;
        driven.re[members[k]!]! += yr * vr - yi * vi;
        driven.im[members[k]!]! += yr * vi + yi * vr;
      }
    }
  }
}

/** Adds to the links the amperes that their misfit drives, through the loop factors. */
function driveLoops({ tree, misfit }: Bench, loops: Loops, amperes: Phasors): void {
  const { links } = tree;
  const volts = {
    re: Float64Array.from(links, (b) => misfit.re[b]!),
    im: Float64Array.from(links, (b) => misfit.im[b]!),
  };
  const more = solveLoops(loops, volts);
  links.forEach((b, k) => {
    amperes.re[b]! += more.re[k]!;
    amperes.im[b]! += more.im[k]!;
  });
}

/** As `seenFrom`, through the loop factors: 1 A led to earth along the tree, then every loop made to fit. */
export function seenThroughLoops(bench: Bench, values: Values, loops: Loops, nodes: readonly number[]): Phasors {
  const { network, tree, rise } = bench;
  const passive = atRest(values);
  const count = nodes.length;
  const out = phasors(count * count);
  const amperes = phasors(network.branches.length);
  const volts = phasors(network.nodes.length);
  const lead = (node: number): void => {
    closeLoops(tree, amperes, node);
    lift(network, passive, amperes, rise);
    layOut(tree, rise, volts);
  };
  nodes.forEach((node, n) => {
    amperes.re.fill(0);
    amperes.im.fill(0);
    lead(node);
    fit(bench, volts);
    driveLoops(bench, loops, amperes);
    lead(node);
    nodes.forEach((other, m) => {
      out.re[n * count + m] = volts.re[other]!;
      out.im[n * count + m] = volts.im[other]!;
    });
  });
  return out;
}
