/** The slow and careful way: one unknown a link and one a core, every loop's impedances summed, dense LU with scaled pivots.
 *  Used when the nodal factors lose digits, as they do where reactances cancel at a node. */
import { phasors } from './complex.ts';
import type { Phasors } from './complex.ts';
import { sumTurns } from './cores.ts';
import type { Cores } from './cores.ts';
import type { Network, Values } from './network.ts';
import type { Tree } from './tree.ts';
import { closeLoops } from './tree.ts';

/** Factors of the loop matrix Cᵀ·Z·C, bordered by the turns of the cores that each loop goes through. */
export interface Loops {
  /** n × n row by row, n = links + cores: L below the diagonal, U on and above. */
  readonly matrix: Phasors;
  /** size n: which row went where. */
  readonly rows: Int32Array;
}

/** Volts by which each branch lifts its end above its beginning, E − Z·I, windings and cores included.
 *  @param amperes I per branch, without what is injected beside it */
export function lift(network: Network, values: Values, cores: Cores, amperes: Phasors, out: Phasors): void {
  const { impedance, emf, coupling } = values;
  const zr = impedance.re;
  const zi = impedance.im;
  const ar = amperes.re;
  const ai = amperes.im;
  for (let b = 0; b < ar.length; b++) {
    const r = zr[b]!;
    const x = zi[b]!;
    const ir = ar[b]!;
    const ii = ai[b]!;
    out.re[b] = emf.re[b]! - (r * ir - x * ii);
    out.im[b] = emf.im[b]! - (r * ii + x * ir);
  }
  for (let w = 0; w < network.windings.length; w++) {
    const members = network.windings[w]!.branches;
    const z = coupling[w]!;
    const n = members.length;
    for (let k = 0; k < n; k++) {
      const b = members[k]!;
      let sr = emf.re[b]!;
      let si = emf.im[b]!;
      for (let l = 0; l < n; l++) {
        const r = z.re[k * n + l]!;
        const x = z.im[k * n + l]!;
        const other = members[l]!;
        const ir = ar[other]!;
        const ii = ai[other]!;
        sr -= r * ir - x * ii;
        si -= r * ii + x * ir;
      }
      out.re[b] = sr;
      out.im[b] = si;
    }
  }
  for (let c = 0; c < cores.members.length; c++) {
    for (let k = 0; k < cores.members[c]!.length; k++) {
      const b = cores.members[c]![k]!;
      out.re[b]! -= cores.turns[c]![k]! * cores.perTurn.re[c]!;
      out.im[b]! -= cores.turns[c]![k]! * cores.perTurn.im[c]!;
    }
  }
}

/** The same values with every EMF and injection at rest. */
export function atRest({ impedance, emf, coupling }: Values): Values {
  return { impedance, coupling, emf: phasors(emf.re.length) };
}

/** More loops than can be solved this way in about a second. */
const MOST_LOOPS = 600;

/** Factors the loop matrix of these values on this tree.
 *  @param cores written to: volts a turn are all zero afterwards
 *  @param at a branch in the loop that would not fit
 *  @throws RangeError naming a branch in whose loop the impedances cancel, if there are too many loops, or windings that nothing sets the volts of */
export function factorLoops(network: Network, values: Values, tree: Tree, cores: Cores, at: number): Loops {
  const links = tree.links.length;
  const n = links + cores.members.length;
  if (n > MOST_LOOPS) {
    throw new RangeError(
      `impedances nearly cancel around branch "${network.branches[at]?.name ?? at}", and ${n} loops are too many to solve ` +
        `with care, ${MOST_LOOPS} at most; give a branch there a resistance, or leave out what is far away`,
    );
  }
  const count = network.branches.length;
  const courses: Float64Array[] = [];
  const lifts: Phasors[] = [];
  const passive = atRest(values);
  const matrix = phasors(n * n);
  cores.perTurn.re.fill(0);
  cores.perTurn.im.fill(0);
  for (let l = 0; l < links; l++) {
    const one = phasors(count);
    one.re[tree.links[l]!] = 1;
    closeLoops(tree, one);
    const volts = phasors(count);
    lift(network, passive, cores, one, volts);
    courses.push(one.re);
    lifts.push(volts);
    sumTurns(cores, one);
    for (let c = links; c < n; c++) {
      matrix.re[c * n + l] = cores.excess.re[c - links]!;
      matrix.re[l * n + c] = cores.excess.re[c - links]!;
    }
  }
  for (let r = 0; r < links; r++) {
    const course = courses[r]!;
    for (let c = 0; c < links; c++) {
      const volts = lifts[c]!;
      let sr = 0;
      let si = 0;
      for (let b = 0; b < count; b++) {
        if (course[b] === 0) continue;
        sr -= course[b]! * volts.re[b]!;
        si -= course[b]! * volts.im[b]!;
      }
      matrix.re[r * n + c] = sr;
      matrix.im[r * n + c] = si;
    }
  }
  const loops = { matrix, rows: Int32Array.from({ length: n }, (_, r) => r) };
  const worst = decompose(loops);
  if (worst >= links) throw unset(network, worst - links);
  if (worst >= 0) throw resonance(network, tree.links[worst] ?? -1);
  return loops;
}

/** Link currents that these link voltages drive, A, indexed by place in `tree.links`; behind them, for every core, volts
 *  a turn for ampere-turns. */
export function solveLoops(loops: Loops, volts: Phasors): Phasors {
  const n = loops.rows.length;
  const { re, im } = loops.matrix;
  const out = phasors(n);
  for (let r = 0; r < n; r++) {
    let sr = volts.re[loops.rows[r]!]!;
    let si = volts.im[loops.rows[r]!]!;
    for (let c = 0; c < r; c++) {
      const at = r * n + c;
      sr -= re[at]! * out.re[c]! - im[at]! * out.im[c]!;
      si -= re[at]! * out.im[c]! + im[at]! * out.re[c]!;
    }
    out.re[r] = sr;
    out.im[r] = si;
  }
  for (let r = n - 1; r >= 0; r--) {
    let sr = out.re[r]!;
    let si = out.im[r]!;
    for (let c = r + 1; c < n; c++) {
      const at = r * n + c;
      sr -= re[at]! * out.re[c]! - im[at]! * out.im[c]!;
      si -= re[at]! * out.im[c]! + im[at]! * out.re[c]!;
    }
    const pr = re[r * n + r]!;
    const pi = im[r * n + r]!;
    const square = pr * pr + pi * pi;
    out.re[r] = (sr * pr + si * pi) / square;
    out.im[r] = (si * pr - sr * pi) / square;
  }
  return out;
}

/** What to say when the impedances around a loop cancel, so that any current could flow. */
export function resonance(network: Network, branch: number): RangeError {
  const name = network.branches[branch]?.name ?? String(branch);
  return new RangeError(
    `the impedances in the loop of branch "${name}" cancel, so no current can be told; ` +
      'give a branch of that loop a resistance',
  );
}

/** What to say when all windings of a core hang open, so that it may have any voltage. */
function unset(network: Network, c: number): RangeError {
  const names = network.cores?.[c]?.branches.map((b) => `"${network.branches[b]?.name ?? b}"`).join(' and ');
  return new RangeError(
    `nothing sets the volts of the windings ${names} on one core; give one of them a load or a leakage`,
  );
}

/** LU in place, each pivot the largest of its column against the size of its row; a column without one, or −1. */
function decompose({ matrix, rows }: Loops): number {
  const n = rows.length;
  const { re, im } = matrix;
  const size = Float64Array.from(rows, (r) => {
    let most = 0;
    for (let c = 0; c < n; c++) most = Math.max(most, Math.hypot(re[r * n + c]!, im[r * n + c]!));
    return most;
  });
  for (let c = 0; c < n; c++) {
    let best = c;
    let most = -1;
    for (let r = c; r < n; r++) {
      const share = Math.hypot(re[r * n + c]!, im[r * n + c]!) / size[r]!;
      if (share > most) {
        most = share;
        best = r;
      }
    }
    if (!(most > 1e-15)) return c;
    if (best !== c) swapRows(matrix, rows, size, c, best);
    const pr = re[c * n + c]!;
    const pi = im[c * n + c]!;
    const square = pr * pr + pi * pi;
    for (let r = c + 1; r < n; r++) {
      const xr = re[r * n + c]!;
      const xi = im[r * n + c]!;
      const fr = (xr * pr + xi * pi) / square;
      const fi = (xi * pr - xr * pi) / square;
      re[r * n + c] = fr;
      im[r * n + c] = fi;
      for (let k = c + 1; k < n; k++) {
        const ur = re[c * n + k]!;
        const ui = im[c * n + k]!;
        re[r * n + k]! -= fr * ur - fi * ui;
        im[r * n + k]! -= fr * ui + fi * ur;
      }
    }
  }
  return -1;
}

/** Exchanges two rows with all that belongs to them. */
function swapRows({ re, im }: Phasors, rows: Int32Array, size: Float64Array, a: number, b: number): void {
  const n = rows.length;
  for (const array of [re, im]) {
    const row = array.slice(a * n, a * n + n);
    array.copyWithin(a * n, b * n, b * n + n);
    array.set(row, b * n);
  }
  const row = rows[a]!;
  rows[a] = rows[b]!;
  rows[b] = row;
  const most = size[a]!;
  size[a] = size[b]!;
  size[b] = most;
}
