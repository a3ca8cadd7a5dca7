import type { Build } from '../../installation/index.ts';
import { at, type Standing } from './standing.ts';

/** How every node is reached over metal from a source, by the fewest branches. */
export interface Roads {
  /** The source part whose metal a node hangs on; undefined where no metal leads. */
  source(node: number): string | undefined;
  /** Branches from a node up to its source, the nearest first. */
  up(node: number): readonly number[];
  /** Whether metal leads from one node to the other, with no winding and no soil between. */
  together(one: number, other: number): boolean;
}

/** From here a branch of metal counts as open, Ω. */
const OPEN_OHM = 1e4;

/** Walks outward from all ends of all windings over metal that conducts. */
export function roadsOf({ build, impedance }: Standing): Roads {
  const { network, branches } = build;
  const joined = new Map<number, { readonly branch: number; readonly node: number }[]>();
  const join = (from: number, branch: number, node: number): void => {
    const here = joined.get(from);
    if (here === undefined) joined.set(from, [{ branch, node }]);
    else here.push({ branch, node });
  };
  network.branches.forEach(({ from, to }, branch) => {
    if (!leads(build, branch)) return;
    const { re, im } = at(impedance, branch);
    if (Math.hypot(re, im) >= OPEN_OHM) return;
    join(from, branch, to);
    join(to, branch, from);
  });
  const reached = new Map<number, { readonly source: string; readonly by?: number; readonly before?: number }>();
  const queue: number[] = [];
  for (const winding of build.sources) {
    const ends = network.branches[winding];
    const source = branches[winding]?.part ?? '';
    for (const node of ends === undefined ? [] : [ends.from, ends.to]) {
      if (node === 0 || reached.has(node)) continue;
      reached.set(node, { source });
      queue.push(node);
    }
  }
  for (let next = 0; next < queue.length; next += 1) {
    const node = queue[next] ?? 0;
    const here = reached.get(node);
    if (here === undefined) continue;
    for (const { branch, node: beyond } of joined.get(node) ?? []) {
      if (beyond === 0 || reached.has(beyond)) continue;
      reached.set(beyond, { source: here.source, by: branch, before: node });
      queue.push(beyond);
    }
  }
  return {
    source: (node) => reached.get(node)?.source,
    up(node) {
      const road: number[] = [];
      let here = reached.get(node);
      while (here?.by !== undefined && here.before !== undefined) {
        road.push(here.by);
        here = reached.get(here.before);
      }
      return road;
    },
    together(one, other) {
      const met = new Set([one]);
      for (const node of met) for (const next of joined.get(node) ?? []) if (next.node !== 0) met.add(next.node);
      return met.has(other);
    },
  };
}

function leads(build: Build, branch: number): boolean {
  const info = build.branches[branch];
  return info !== undefined && info.medium === 'metal' && info.role !== 'winding' && info.role !== 'fault';
}
