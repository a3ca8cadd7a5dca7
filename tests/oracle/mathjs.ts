/** mathjs as a third opinion: mesh analysis, one unknown a loop and one a core, by its pivoted LU. Our solver has one
 *  unknown a node. */
import { complex, lusolve } from 'mathjs';
import type { Complex } from 'mathjs';
import { add, complex as plain, mul, phasor, phasors, scale, sub } from '../../src/electrics/index.ts';
import type { Complex as Plain, Network, Phasors, Solution, Values } from '../../src/electrics/index.ts';

/** V and A by `lusolve` on the loops of this network. What is injected by a link goes round its loop;
 *  what its loop, or a tree branch that injects too, makes of that is a voltage like any other. */
export function solveWithMathjs(network: Network, values: Values): Solution {
  const { branches, cores = [] } = network;
  const forest = forestOf(network, values);
  const links = branches.flatMap((_, b) => (forest.chosen.has(b) ? [] : [b]));
  const loops = links.map((link) => {
    const loop = new Map([[link, 1]]);
    // Home from the link's end to its beginning.
    for (const [b, sign] of wayBetween(forest, branches[link]!.to, branches[link]!.from)) loop.set(b, sign);
    return loop;
  });
  const amperes = phasors(branches.length);
  const go = (loop: ReadonlyMap<number, number>, { re, im }: Plain): void => {
    for (const [b, sign] of loop) {
      amperes.re[b]! += sign * re;
      amperes.im[b]! += sign * im;
    }
  };
  const { injection } = values;
  if (injection) links.forEach((link, k) => go(loops[k]!, phasor(injection, link)));
  const turnsIn = loops.map((loop) =>
    cores.map((core) => core.branches.reduce((sum, b, k) => sum + core.turns[k]! * (loop.get(b) ?? 0), 0)),
  );
  const matrix = loops.map((one, row) => [
    ...loops.map((other) => {
      let sum = plain(0);
      for (const [b, sign] of one) {
        for (const [c, z] of impedances(network, values, b)) {
          const turned = other.get(c);
          if (turned !== undefined) sum = add(sum, scale(z, sign * turned));
        }
      }
      return complex(sum.re, sum.im);
    }),
    ...turnsIn[row]!.map((turns) => complex(turns, 0)),
  ]);
  cores.forEach((_, c) => {
    matrix.push([...turnsIn.map((turns) => complex(turns[c]!, 0)), ...cores.map(() => complex(0, 0))]);
  });
  const right = loops.map((loop) => {
    let sum = plain(0);
    for (const [b, sign] of loop) sum = sub(sum, scale(fall(network, values, amperes, b), sign));
    return complex(sum.re, sum.im);
  });
  for (const core of cores) {
    let sum = plain(0);
    core.branches.forEach((b, k) => (sum = sub(sum, scale(own(values, amperes, b), core.turns[k]!))));
    right.push(complex(sum.re, sum.im));
  }
  const solved = right.length > 0 ? (lusolve(matrix, right) as unknown as (Complex | number)[][]) : [];

  // mathjs gives a plain 0 where a row is nothing.
  const found = solved.map(([value]): Plain => complex(value as Complex));
  loops.forEach((loop, k) => go(loop, found[k]!));
  return { volts: voltsAlong(network, values, forest, amperes, found.slice(loops.length)), amperes };
}

/** What goes through the impedance of a branch, A. */
function own({ injection }: Values, amperes: Phasors, b: number): Plain {
  return injection ? sub(phasor(amperes, b), phasor(injection, b)) : phasor(amperes, b);
}

/** Volts that a branch takes, Z·(I − J) − E, its core left out. */
function fall(network: Network, values: Values, amperes: Phasors, b: number): Plain {
  let sum = scale(phasor(values.emf, b), -1);
  for (const [other, z] of impedances(network, values, b)) sum = add(sum, mul(z, own(values, amperes, other)));
  return sum;
}

/** A tree of the branches with the least impedance, each node with the branch that leads on towards earth. */
interface Forest {
  readonly chosen: ReadonlySet<number>;
  readonly towards: ReadonlyMap<number, { readonly branch: number; readonly node: number; readonly forward: boolean }>;
}

function forestOf(network: Network, values: Values): Forest {
  const size = (b: number): number => {
    const z = impedances(network, values, b).find(([other]) => other === b)![1];
    return Math.hypot(z.re, z.im);
  };
  const group = network.nodes.map((_, node) => node);
  const chosen = new Set<number>();
  for (const b of network.branches.map((_, k) => k).sort((a, c) => size(a) - size(c))) {
    const { from, to } = network.branches[b]!;
    const [keep, gone] = [group[from]!, group[to]!];
    if (keep === gone) continue;
    chosen.add(b);
    group.forEach((g, node) => {
      if (g === gone) group[node] = keep;
    });
  }
  const towards = new Map<number, { branch: number; node: number; forward: boolean }>();
  const reached = [0];
  for (const node of reached) {
    for (const b of chosen) {
      const { from, to } = network.branches[b]!;
      const next = from === node ? to : to === node ? from : undefined;
      if (next === undefined || next === 0 || towards.has(next)) continue;
      towards.set(next, { branch: b, node, forward: from === next });
      reached.push(next);
    }
  }
  return { chosen, towards };
}

/** Branches and signs from one node to another along the tree. */
function wayBetween({ towards }: Forest, start: number, end: number): [number, number][] {
  const down = (node: number): [number, number][] => {
    const steps: [number, number][] = [];
    for (let at = towards.get(node); at !== undefined; at = towards.get(at.node)) {
      steps.push([at.branch, at.forward ? 1 : -1]);
    }
    return steps;
  };
  const out = down(start);
  const home = down(end);
  while (out.length > 0 && home.length > 0 && out.at(-1)![0] === home.at(-1)![0]) {
    out.pop();
    home.pop();
  }
  return [...out, ...home.map(([b, sign]): [number, number] => [b, -sign])];
}

/** V of every node from earth outwards. */
function voltsAlong(
  network: Network,
  values: Values,
  { towards }: Forest,
  amperes: Phasors,
  perTurn: readonly Plain[],
): Phasors {
  const volts = phasors(network.nodes.length);
  for (const [node, { branch, node: near, forward }] of towards) {
    let taken = fall(network, values, amperes, branch);
    network.cores?.forEach(({ branches, turns }, c) => {
      const k = branches.indexOf(branch);
      if (k >= 0) taken = add(taken, scale(perTurn[c]!, turns[k]!));
    });
    const from = phasor(volts, near);
    const here = forward ? add(from, taken) : sub(from, taken);
    volts.re[node] = here.re;
    volts.im[node] = here.im;
  }
  return volts;
}

/** The branches whose current costs voltage in this one, itself included, and by which impedance. */
function impedances(network: Network, values: Values, b: number): readonly (readonly [number, Plain])[] {
  const w = network.windings.findIndex(({ branches }) => branches.includes(b));
  if (w < 0) return [[b, phasor(values.impedance, b)]];
  const { branches } = network.windings[w]!;
  const row = branches.indexOf(b) * branches.length;
  return branches.map((other, l) => [other, phasor(values.coupling[w]!, row + l)] as const);
}
