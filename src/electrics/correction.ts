/** Corrects the currents of the links until the voltages around every loop fit: through the nodal factors, or
 *  through the loop factors where those lose digits. */
import type { Admittance } from './admittance.ts';
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import { highestTurned, magnetise, relieve, saturate, sumTurns } from './cores.ts';
import { growth, refactor, refactorAndSolve, solve } from './factors.ts';
import type { Factors } from './factors.ts';
import { atRest, lift, solveLoops } from './loops.ts';
import type { Loops } from './loops.ts';
import type { Network, Solution, Values } from './network.ts';
import { closeLoops, layOut } from './tree.ts';
import type { Tree } from './tree.ts';

/** Relative to the largest EMF, or voltage of an injection or winding: a link's misfit not worth another step. */
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
  /** Whether the admittances have changed since they were factored. */
  stale: boolean;
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
  const { injection } = values;
  const { amperes } = out;
  begin(bench, values, amperes);
  const steps = correct(bench, values, out, loops);
  if (bench.stale) refactor(bench.factors, bench.admittance.siemens);
  bench.stale = false;
  if (injection === undefined) return steps;
  for (let b = 0; b < amperes.re.length; b++) {
    amperes.re[b]! += injection.re[b]!;
    amperes.im[b]! += injection.im[b]!;
  }
  return steps;
}

/** What flows and rises before any loop is closed: what is injected goes home through the tree. */
function begin({ network, tree, rise, misfit, admittance }: Bench, values: Values, amperes: Phasors): void {
  const { emf, injection } = values;
  clear(amperes);
  clear(misfit);
  clear(admittance.cores.perTurn);
  if (injection === undefined) {
    rise.re.set(emf.re);
    rise.im.set(emf.im);
    return;
  }
  closeLoops(tree, amperes, injection);
  lift(network, values, admittance.cores, amperes, rise);
}

function clear({ re, im }: Phasors): void {
  re.fill(0);
  im.fill(0);
}

/** The steps of `settle`, on what goes through the impedances without what is injected beside them. */
function correct(bench: Bench, values: Values, { amperes, volts }: Solution, loops: Loops | undefined): number {
  const { network, tree, rise } = bench;
  const { cores } = bench.admittance;
  let highest = 0;
  for (let b = 0; b < rise.re.length; b++) {
    const square = rise.re[b]! ** 2 + rise.im[b]! ** 2;
    if (square > highest) highest = square;
  }
  // A volt not worth correcting may still be a large part of what magnetises nothing: an open transformer's leakage.
  const least = cores.members.length > 0 ? 2 : 0;
  let before = Infinity;
  for (let step = 0; ; step++) {
    layOut(tree, rise, volts);
    const worst = Math.max(fit(bench, volts), sumTurns(cores, amperes));
    if (worst <= FINE * FINE * highest && step >= least) return step;
    if (step === STEPS || !(worst < before / 4)) {
      // No step halves the misfit any more. That is the limit of the arithmetic, unless the factors have lost digits.
      const limit = loops === undefined && !trusted(bench.factors) ? FINE : COARSE;
      return worst <= limit * limit * highest ? step : STEPS + 1;
    }
    before = step === 0 ? Infinity : worst;
    if (loops === undefined) driveNodes(bench, amperes);
    else driveLoops(bench, loops, amperes);
    closeLoops(tree, amperes, values.injection);
    lift(network, values, cores, amperes, rise);
    highest = Math.max(highest, highestTurned(cores));
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
    if (square > worst || Number.isNaN(square)) worst = square;
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
  clear(drop);
  drive(bench, undefined);
  for (let k = 0; k < links.length; k++) inject(drop, from, to, driven, links[k]!);
  for (const members of bench.admittance.coupled) {
    for (let k = 0; k < members.length; k++) {
      if (tree.inTree[members[k]!] === 1) inject(drop, from, to, driven, members[k]!);
    }
  }
  if (bench.stale) refactorAndSolve(factors, bench.admittance.siemens, drop, drop);
  else solve(factors, drop, drop);
  bench.stale = false;
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
function drive({ tree, admittance, misfit, driven }: Bench, drop: Phasors | undefined): void {
  const { links, from, to } = tree;
  const { siemens, isWound, coupled, wound, cores } = admittance;
  const windings = wound.length - cores.members.length;
  for (let k = 0; k < links.length; k++) {
    const b = links[k]!;
    if (isWound[b] !== 0) continue;
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
    const members = coupled[w]!;
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
      if (w >= windings && drop !== undefined) magnetise(cores, w - windings, l, vr, vi);
    }
    if (w < windings) continue;
    relieve(cores, w - windings, driven);
    if (drop !== undefined) saturate(cores, w - windings);
  }
}

/** Adds to the links the amperes that their misfit drives, through the loop factors. */
function driveLoops({ tree, misfit, admittance }: Bench, loops: Loops, amperes: Phasors): void {
  const { links } = tree;
  const { excess, perTurn } = admittance.cores;
  const volts = phasors(loops.rows.length);
  links.forEach((b, k) => {
    volts.re[k] = misfit.re[b]!;
    volts.im[k] = misfit.im[b]!;
  });
  for (let c = 0; c < excess.re.length; c++) {
    volts.re[links.length + c] = -excess.re[c]!;
    volts.im[links.length + c] = -excess.im[c]!;
  }
  const more = solveLoops(loops, volts);
  links.forEach((b, k) => {
    amperes.re[b]! += more.re[k]!;
    amperes.im[b]! += more.im[k]!;
  });
  for (let c = 0; c < excess.re.length; c++) {
    perTurn.re[c]! += more.re[links.length + c]!;
    perTurn.im[c]! += more.im[links.length + c]!;
  }
}

/** As `seenFrom`, through the loop factors: 1 A led to earth along the tree, then every loop made to fit. */
export function seenThroughLoops(bench: Bench, values: Values, loops: Loops, nodes: readonly number[]): Phasors {
  const { network, tree, rise } = bench;
  const passive = atRest(values);
  const count = nodes.length;
  const out = phasors(count * count);
  const amperes = phasors(network.branches.length);
  const volts = phasors(network.nodes.length);
  const { cores } = bench.admittance;
  const lead = (node: number): void => {
    closeLoops(tree, amperes, undefined, node);
    lift(network, passive, cores, amperes, rise);
    layOut(tree, rise, volts);
  };
  nodes.forEach((node, n) => {
    clear(amperes);
    clear(cores.perTurn);
    lead(node);
    fit(bench, volts);
    sumTurns(cores, amperes);
    driveLoops(bench, loops, amperes);
    lead(node);
    nodes.forEach((other, m) => {
      out.re[n * count + m] = volts.re[other]!;
      out.im[n * count + m] = volts.im[other]!;
    });
  });
  return out;
}
