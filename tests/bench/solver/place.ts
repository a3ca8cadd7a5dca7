/** One network with somebody in it, timed by all sides in turns. */
import { complex, lusolve } from 'mathjs';
import { roomForBody, solveBody } from '../../../src/body/index.ts';
import type { Body, Contact } from '../../../src/body/index.ts';
import {
  analyse,
  createSolver,
  factor,
  phasors,
  refactorAndSolve,
  seenFrom,
  solve,
} from '../../../src/electrics/index.ts';
import type { Network, Phasors, Values } from '../../../src/electrics/index.ts';
import { median } from '../row.ts';
import type { Row } from '../row.ts';
import { admittances, injections, nodalRows } from './nodal.ts';
import { kluInput, kluTurn, ngspiceTurn, unknowns } from './peers.ts';
import { timed } from './timed.ts';

/** What is solved, and who touches it where. */
export interface Place {
  readonly name: string;
  /** Whether the budgets, set for a network of forty nodes, are kept here. */
  readonly judged: boolean;
  readonly network: Network;
  readonly values: Values;
  readonly body: Body;
  readonly contacts: readonly Contact[];
  /** The node of each contact. */
  readonly nodes: readonly number[];
  /** The node inside the body, if the network has one; its volts mean nothing until the body is put in. */
  readonly trunk?: number;
  /** The same network with these ohms from each contact to the trunk, for comparison. */
  readonly touched: (limb_ohm: readonly number[]) => { readonly network: Network; readonly values: Values };
}

const ROUNDS = 11;
const REPEATS = 20_000;

/** Every side's time on this place, and what they must find alike.
 *  @throws Error if somebody finds other volts */
export function placeRows(place: Place, klu: string, ngspice: string | undefined): readonly Row[] {
  const { network, values, body, contacts, nodes } = place;
  const siemens = admittances(network, values);
  const injection = injections(network, values, siemens);
  const factors = factor(analyse(network), siemens);
  const volts = phasors(network.nodes.length);
  const once = (): void => refactorAndSolve(factors, siemens, injection, volts);

  const solver = createSolver(network);
  const solution = solver.solve(values);
  const rows = nodalRows(network, siemens);
  const dense = rows.map((row) => rows.map((_, c) => complex(row.get(c)?.re ?? 0, row.get(c)?.im ?? 0)));
  const right = rows.map((_, n) => complex(injection.re[n + 1]!, injection.im[n + 1]!));
  const input = kluInput(rows, injection, REPEATS);

  const open = phasors(nodes.length);
  const seen = phasors(nodes.length ** 2);
  const solved = roomForBody(nodes.length);
  const taken = phasors(network.nodes.length);
  const drop = phasors(network.nodes.length);
  /** Factors, solves with nobody there, solves the body on what its contacts see, and lets its currents pull. */
  const withPerson = (): void => {
    once();
    for (let k = 0; k < nodes.length; k++) {
      open.re[k] = volts.re[nodes[k]!]!;
      open.im[k] = volts.im[nodes[k]!]!;
    }
    solveBody(body, contacts, open, seenFrom(factors, nodes, seen), solved);
    for (let k = 0; k < nodes.length; k++) {
      taken.re[nodes[k]!] = -solved.amperes.re[k]!;
      taken.im[nodes[k]!] = -solved.amperes.im[k]!;
    }
    solve(factors, taken, drop);
    for (let n = 0; n < drop.re.length; n++) {
      volts.re[n]! += drop.re[n]!;
      volts.im[n]! += drop.im[n]!;
    }
  };

  /** @throws Error naming the first node where somebody's volts are farther off */
  const expectNear = (name: string, theirs: Phasors, least_V: number, hidden?: number): void => {
    volts.re.forEach((re, n) => {
      const off = Math.hypot(re - theirs.re[n]!, volts.im[n]! - theirs.im[n]!);
      if (n !== hidden && !(off < least_V))
        throw new Error(`${name} finds other volts at ${network.nodes[n]}, off by ${off} V`);
    });
  };
  once();
  expectNear('the checked solution', solution.volts, 1e-6);
  // A plain matrix loses digits on its diagonal where something hangs on gigaohms, such as a limb that touches nothing.
  expectNear('KLU', kluTurn(klu, input).volts, 0.02);
  const found = lusolve(dense, right) as unknown as { re: number; im: number }[][];
  expectNear('mathjs', unknowns(found.map(([value]) => [value!.re, value!.im])), 0.02);
  withPerson();
  const touched = place.touched([...solved.limb_ohm]);
  const settled = createSolver(touched.network).solve(touched.values).volts;
  expectNear('the checked solution with a person', settled, 1e-6, place.trunk);

  const times = { klu: [] as number[], verbs: [] as number[], mathjs: [] as number[], person: [] as number[] };
  const whole: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    times.klu.push(kluTurn(klu, input).time_us);
    times.verbs.push(timed(once, REPEATS));
    times.mathjs.push(timed(() => lusolve(dense, right), 2));
    times.person.push(timed(withPerson, REPEATS / 2));
    whole.push(timed(() => solver.solveInto(values, solution), REPEATS / 4));
  }
  const ratio = (one: readonly number[], other: readonly number[]): number => median(one.map((t, k) => t / other[k]!));
  const size = `${rows.length} nodes`;
  const budget = (most: number): number | null => (place.judged ? most : null);
  const spice: readonly Row[] =
    ngspice === undefined
      ? []
      : [
          {
            name: `every current of ${place.name}`,
            value: median([1, 2, 3].map(() => ngspiceTurn(ngspice, network, values))) / median(whole),
            unit: '× faster',
            budget: 1000,
            bound: 'at least',
            peer: `ngspice as a process, same network, ${size}`,
          },
        ];
  return [
    {
      name: `refactor and solve ${place.name}`,
      value: ratio(times.verbs, times.klu),
      unit: '× the time',
      budget: budget(0.75),
      bound: 'at most',
      peer: `SuiteSparse KLU refactor and solve, same matrix, ${size}`,
    },
    {
      name: `refactor and solve ${place.name}`,
      value: ratio(times.mathjs, times.verbs),
      unit: '× faster',
      budget: 1000,
      bound: 'at least',
      peer: `mathjs lusolve, same matrix, ${size}`,
    },
    {
      name: `refactor and solve ${place.name} with a person`,
      value: median(times.person),
      unit: 'µs',
      budget: budget(5),
      bound: 'at most',
      peer: `${contacts.length} contacts, ${size}; ${median(times.verbs).toPrecision(3)} µs without`,
    },
    {
      name: `every current of ${place.name}, checked to the last digit`,
      value: median(whole),
      unit: 'µs',
      budget: null,
      bound: 'at most',
      peer: `${network.branches.length} branches; KLU refactor and solve ${median(times.klu).toPrecision(3)} µs`,
    },
    ...spice,
  ];
}
