import { abs, add, complex, phasor, phasors, scale } from '../electrics/index.ts';
import type { Complex, Phasors, Solver, Values } from '../electrics/index.ts';
import type { Build } from '../installation/index.ts';

const ROUNDS = 200;
const SETTLED = 1e-12; // change of a share of the EMF
const KEPT = 1e-9; // how far over its limit a current may be and still count as kept

/** A source that folds back: the branches it gives current through, and the most that each may carry. */
interface Folding {
  readonly name: string;
  readonly branches: readonly { readonly branch: number; readonly limit_A: number }[];
}

/** The values with the EMF of every source that folds back lowered until no line of it gives more than its limit.
 *
 *  Up to its limit such a source is its EMF behind its impedance. Beyond it all lines of the one machine keep their EMFs'
 *  angles and are lowered by one share, the largest at which each current is within the limit; the phase of the currents is
 *  what the network makes of it. By superposition every current is a sum over the shares, solved once for each source.
 *  @throws RangeError naming a source through which others drive more than its limit, or sources that do not settle */
export function limited(build: Build, solver: Solver, values: Values): Values {
  const sources = foldingOf(build);
  if (sources.length === 0) return values;
  const within = ({ branches }: Folding, amperes: Phasors): boolean =>
    branches.every(({ branch, limit_A }) => abs(phasor(amperes, branch)) <= limit_A * (1 + KEPT));
  const free = solver.solve(values).amperes;
  if (sources.every((source) => within(source, free))) return values;

  const rest = solver.solve({ ...values, emf: lowered(values.emf, sources, () => 0) }).amperes;
  const alone = sources.map((source) => {
    const { injection: _, ...passive } = values;
    return solver.solve({ ...passive, emf: only(values.emf, source) }).amperes;
  });
  const shares = sources.map(() => 1);
  const others = (branch: number, but: number): Complex =>
    alone.reduce(
      (sum, amperes, at) => (at === but ? sum : add(sum, scale(phasor(amperes, branch), shares[at] ?? 0))),
      phasor(rest, branch),
    );
  let moved = Infinity;
  for (let round = 0; round < ROUNDS && moved > SETTLED; round += 1) {
    moved = 0;
    sources.forEach(({ branches }, at) => {
      const share = branches.reduce((least, { branch, limit_A }) => {
        const own = alone[at] === undefined ? complex(0) : phasor(alone[at], branch);
        return Math.min(least, largestShare(others(branch, at), own, limit_A));
      }, 1);
      moved = Math.max(moved, Math.abs(share - (shares[at] ?? 0)));
      shares[at] = share;
    });
  }
  const held = { ...values, emf: lowered(values.emf, sources, (at) => shares[at] ?? 0) };
  const { amperes } = solver.solve(held);
  const driven = sources.find((source) => !within(source, amperes));
  if (driven !== undefined)
    throw new RangeError(
      `${driven.name} cannot keep to its limit of ${driven.branches[0]?.limit_A ?? 0} A: ` +
        (moved > SETTLED
          ? `it does not settle beside ${sources.map(({ name }) => name).join(', ')}; let one of them be open`
          : 'another source drives more than that through it; open one of the two'),
    );
  return held;
}

/** The largest share s ≤ 1 with |others + s·own| ≤ limit; nothing where there is none. */
function largestShare(others: Complex, own: Complex, limit_A: number): number {
  if (abs(add(others, own)) <= limit_A) return 1;
  const a = own.re ** 2 + own.im ** 2;
  const b = others.re * own.re + others.im * own.im;
  const c = others.re ** 2 + others.im ** 2 - limit_A ** 2;
  const root = b * b - a * c;
  return root < 0 ? 0 : Math.max(0, (Math.sqrt(root) - b) / a);
}

/** The sources that fold back, each with its lines. */
function foldingOf({ limits, branches }: Build): readonly Folding[] {
  const names = [...new Set(limits.map(({ branch }) => branches[branch]?.part ?? ''))];
  return names.map((name) => ({ name, branches: limits.filter(({ branch }) => branches[branch]?.part === name) }));
}

function lowered(emf: Phasors, sources: readonly Folding[], share: (source: number) => number): Phasors {
  const out = { re: emf.re.slice(), im: emf.im.slice() };
  sources.forEach(({ branches }, at) => {
    for (const { branch } of branches) {
      out.re[branch] = (emf.re[branch] ?? 0) * share(at);
      out.im[branch] = (emf.im[branch] ?? 0) * share(at);
    }
  });
  return out;
}

function only(emf: Phasors, { branches }: Folding): Phasors {
  const out = phasors(emf.re.length);
  for (const { branch } of branches) {
    out.re[branch] = emf.re[branch] ?? 0;
    out.im[branch] = emf.im[branch] ?? 0;
  }
  return out;
}
