/** How a current divides on its way home: named ways from the winding back to the winding, in amperes. */
import type { Complex, Phasors } from './complex.ts';
import { abs } from './complex.ts';
import type { Network } from './network.ts';

/** One way home: the branches in order, each walked along (`forward`, from → to) or against its direction, and the
 *  amperes that take exactly this way, > 0. The one way without branches gathers all that are too small to list. */
export interface Path {
  readonly branches: readonly { readonly branch: number; readonly forward: boolean }[];
  readonly amperes: number;
}

/** All ways, the largest first, what is left over last; their amperes sum to `total_A`. */
export interface Division {
  readonly paths: readonly Path[];
  /** What the sources deliver, A. */
  readonly total_A: number;
  /** What only goes round in circles and never through a source, A, summed over the circles. */
  readonly circulating_A: number;
}

/** Part of what a node sees, relative to the largest current, that may be missing from Kirchhoff's sum. */
const KIRCHHOFF = 1e-6; // a projected solution keeps 1e-12; anything near 1e-6 is another mistake
/** Below this share of the largest current a flow is rounding. */
const NOTHING = 1e-15;
const MOST_PATHS = 2000;

/** Parts of these currents in phase with one of them, A; projection keeps Kirchhoff's law.
 *  @throws RangeError if `on` is zero, which has no phase
 *  @example project({ re: new Float64Array([3]), im: new Float64Array([4]) }, { re: 0, im: 2 }) // [4] */
export function project(amperes: Phasors, on: Complex): Float64Array {
  const size = abs(on);
  if (!(size > 0 && size < Infinity)) {
    throw new RangeError(
      `project: ${on.re} + j${on.im} has no phase; give a current that is neither zero nor infinite`,
    );
  }
  const cos = on.re / size;
  const sin = on.im / size;
  return amperes.re.map((re, b) => re * cos + amperes.im[b]! * sin);
}

/** Divides a flow into ways home by proportional sharing: at every node each incoming ampere takes the outgoing
 *  branches in proportion to what they carry. Currents that only circulate are taken out first.
 *  @param flow A per branch, from → to, obeying Kirchhoff at every node with the `through` branches included
 *  @param through branches that close the circle, such as both halves of a winding: ways start where these deliver
 *  more than they collect and end where they collect more than they deliver
 *  @param options.least_A ways below this are gathered in one without branches; 1e-6 unless said
 *  @throws RangeError naming the node at which the flow does not sum to zero */
export function dividePaths(
  network: Network,
  flow: Float64Array,
  through: readonly number[],
  options: { readonly least_A?: number } = {},
): Division {
  const graph = arcsOf(network, flow, through);
  const circulating_A = cancelCircles(graph);
  const total_A = graph.supply.reduce((sum, amperes) => sum + Math.max(0, amperes), 0);
  let least_A = options.least_A ?? 1e-6;
  for (;;) {
    const paths = walk(graph, least_A);
    if (paths !== undefined) return { paths, total_A, circulating_A };
    // A mesh of equals has more ways than anyone reads: list the larger ones only.
    least_A = Math.max(least_A * 4, total_A * 1e-6);
  }
}

/** One branch as it is walked. */
interface Arc {
  readonly branch: number;
  readonly forward: boolean;
  readonly to: number;
  amperes: number;
}

/** The flow as arcs out of every node, all positive; `supply` is what the sources put in (> 0) or take out. */
interface Graph {
  readonly arcs: readonly Arc[][];
  readonly supply: Float64Array;
}

function arcsOf(network: Network, flow: Float64Array, through: readonly number[]): Graph {
  const { nodes, branches } = network;
  if (flow.length !== branches.length) {
    throw new RangeError(
      `dividePaths: flow has ${flow.length} places; give one for each of the ${branches.length} branches`,
    );
  }
  const largest = flow.reduce((most, amperes) => Math.max(most, Math.abs(amperes)), 0);
  const arcs: Arc[][] = nodes.map(() => []);
  const supply = new Float64Array(nodes.length);
  const sum = new Float64Array(nodes.length);
  const sources = new Set(through);
  branches.forEach(({ name, from, to }, b) => {
    const amperes = flow[b]!;
    if (!Number.isFinite(amperes)) throw new RangeError(`dividePaths: branch "${name}" carries ${amperes} A`);
    sum[from]! -= amperes;
    sum[to]! += amperes;
    if (sources.has(b)) {
      supply[from]! -= amperes;
      supply[to]! += amperes;
    } else if (from !== to && Math.abs(amperes) > NOTHING * largest) {
      if (amperes > 0) arcs[from]!.push({ branch: b, forward: true, to, amperes });
      else arcs[to]!.push({ branch: b, forward: false, to: from, amperes: -amperes });
    }
  });
  sum.forEach((amperes, node) => {
    if (Math.abs(amperes) > KIRCHHOFF * largest) {
      throw new RangeError(
        `dividePaths: ${amperes} A are left over at node "${nodes[node]}"; the flow must sum to zero`,
      );
    }
  });
  supply.forEach((amperes, node) => {
    if (Math.abs(amperes) <= NOTHING * largest) supply[node] = 0;
  });
  return { arcs, supply };
}

/** Takes out every circle, each by its smallest current, nodes and branches in rising order; how much was taken. */
function cancelCircles({ arcs }: Graph): number {
  let taken = 0;
  const done = new Uint8Array(arcs.length);
  for (let start = 0; start < arcs.length; start++) {
    while (done[start] === 0) {
      const circle = descend(arcs, start, done);
      if (circle === undefined) continue;
      const least = circle.reduce((smallest, arc) => Math.min(smallest, arc.amperes), Infinity);
      taken += least;
      for (const arc of circle) arc.amperes -= least;
    }
  }
  return taken;
}

/** Walks from a node until it meets itself; the arcs of that circle, or nothing once all that follows is done. */
function descend(arcs: readonly Arc[][], start: number, done: Uint8Array): readonly Arc[] | undefined {
  const trail: Arc[] = [];
  const place = new Map<number, number>([[start, 0]]);
  const tried = new Map<number, number>();
  let node = start;
  for (;;) {
    const out = arcs[node]!;
    let next = tried.get(node) ?? 0;
    while (next < out.length && (out[next]!.amperes <= 0 || done[out[next]!.to] === 1)) next++;
    tried.set(node, next + 1);
    const arc = out[next];
    if (arc === undefined) {
      done[node] = 1;
      place.delete(node);
      const back = trail.pop();
      if (back === undefined) return undefined;
      node = trail.at(-1)?.to ?? start;
      continue;
    }
    trail.push(arc);
    const met = place.get(arc.to);
    if (met !== undefined) return trail.slice(met);
    node = arc.to;
    place.set(node, trail.length);
  }
}

/** A node on the way that is walked: the arcs out of it that carry enough, and which of them comes next. */
interface Stand {
  readonly arcs: readonly Arc[];
  /** A that each ampere of an arc stands for on this way. */
  readonly share: number;
  next: number;
}

/** Every way that carries at least this much, and one for the rest; nothing if there are too many. Ways may be as long as
 *  the network has nodes, so where one stands is kept here and not on the stack of calls. */
function walk({ arcs, supply }: Graph, least_A: number): Path[] | undefined {
  const paths: Path[] = [];
  const trail: { branch: number; forward: boolean }[] = [];
  const stands: Stand[] = [];
  let rest = 0;
  let visits = 0;
  const arrive = (node: number, amperes: number): void => {
    visits += 1;
    const ends = Math.max(0, -supply[node]!);
    const out = arcs[node]!.filter((arc) => arc.amperes > 0);
    const leaving = out.reduce((sum, arc) => sum + arc.amperes, ends);
    if (leaving === 0) {
      rest += amperes;
      stands.push({ arcs: [], share: 0, next: 0 });
      return;
    }
    const share = amperes / leaving;
    if (ends > 0) {
      if (share * ends < least_A) rest += share * ends;
      else paths.push({ branches: [...trail], amperes: share * ends });
    }
    const wide = out.filter((arc) => share * arc.amperes >= least_A);
    for (const arc of out) if (share * arc.amperes < least_A) rest += share * arc.amperes;
    stands.push({ arcs: wide, share, next: 0 });
  };
  for (let node = 0; node < arcs.length; node++) {
    if (supply[node]! <= 0) continue;
    arrive(node, supply[node]!);
    while (stands.length > 0) {
      if (paths.length > MOST_PATHS || visits > 50 * MOST_PATHS) return undefined;
      const stand = stands.at(-1)!;
      const arc = stand.arcs[stand.next++];
      if (arc === undefined) {
        stands.pop();
        trail.pop();
        continue;
      }
      trail.push({ branch: arc.branch, forward: arc.forward });
      arrive(arc.to, stand.share * arc.amperes);
    }
  }
  paths.sort((a, b) => b.amperes - a.amperes);
  if (rest > 0) paths.push({ branches: [], amperes: rest });
  return paths;
}
