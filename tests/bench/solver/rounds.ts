/** Runs in a Node of its own: argument 1 is the KLU program; prints rows as JSON. All sides take turns, round by round,
 *  each timed by the processor's clock, so that a busy machine slows all alike. */
import { complex, lusolve } from 'mathjs';
import { spawnSync } from 'node:child_process';
import bakeryText from '../../../lessons/places/bakery.yaml?raw';
import { population, solveBody } from '../../../src/body/index.ts';
import type { People } from '../../../src/body/index.ts';
import {
  analyse,
  createSolver,
  factor,
  phasors,
  refactorAndSolve,
  seenFrom,
  solve,
} from '../../../src/electrics/index.ts';
import type { Phasors } from '../../../src/electrics/index.ts';
import { compile, initialConditions, readInstallation } from '../../../src/installation/index.ts';
import { median } from '../row.ts';
import type { Row } from '../row.ts';
import { admittances, injections, nodalRows } from './nodal.ts';

const ROUNDS = 11;
const REPEATS = 20_000;

const reading = readInstallation(bakeryText, 'bakery.yaml');
if (!reading.ok) throw new Error(reading.diagnostics.map(({ message }) => message).join('\n'));
const { network, people, values: valuesAt } = compile(reading.installation);
const conditions = {
  ...initialConditions(reading.installation),
  'line touches the case': 'solid',
  'protective conductor open': 'yes',
  'baker touches': 'the case and the sink',
  'baker wears': 'wet shoes',
};
const values = valuesAt(conditions, new Set());
const siemens = admittances(network, values);
const injection = injections(network, values, siemens);
const factors = factor(analyse(network), siemens);
const volts = phasors(network.nodes.length);
const refactorAndSolve = (): void => {
  refactorAndSolve(factors, siemens, injection, volts);
};

const solver = createSolver(network);
const solution = solver.solve(values);
const wholeSolve = (): void => solver.solveInto(values, solution);

const rows = nodalRows(network, siemens);
const dense = rows.map((row) => rows.map((_, c) => complex(row.get(c)?.re ?? 0, row.get(c)?.im ?? 0)));
const right = rows.map((_, n) => complex(injection.re[n + 1]!, injection.im[n + 1]!));

const kluInput = forKlu();
const klu = process.argv[2] ?? '';
const [person] = people;
if (person === undefined) throw new Error('nobody is in the bakery');
const { body, contacts } = person.contacts(conditions);
const limbs = contacts.map(({ limb }) => person.limbs.find((one) => one.limb === limb)!);
const nodes = limbs.map(({ node }) => node);
const open = phasors(nodes.length);
const withBody = phasors(network.nodes.length);

/** Factors, solves with nobody there, solves the body on what its contacts see, and puts its currents back. */
const refactorAndSolveWithPerson = () => {
  refactorAndSolve();
  for (let k = 0; k < nodes.length; k++) {
    open.re[k] = volts.re[nodes[k]!]!;
    open.im[k] = volts.im[nodes[k]!]!;
  }
  const solved = solveBody(body, contacts, open, seenFrom(factors, nodes));
  withBody.re.set(injection.re);
  withBody.im.set(injection.im);
  for (let k = 0; k < nodes.length; k++) {
    withBody.re[nodes[k]!]! -= solved.amperes.re[k]!;
    withBody.im[nodes[k]!]! -= solved.amperes.im[k]!;
  }
  solve(factors, withBody, volts);
  const [first = 0] = nodes;
  volts.re[person.trunk] = volts.re[first]! - solved.limb_ohm[0]! * solved.amperes.re[0]!;
  volts.im[person.trunk] = volts.im[first]! - solved.limb_ohm[0]! * solved.amperes.im[0]!;
  return solved;
};

agree();
const times: Record<'klu' | 'verbs' | 'mathjs' | 'person' | 'whole', number[]> = {
  klu: [],
  verbs: [],
  mathjs: [],
  person: [],
  whole: [],
};
for (let round = 0; round < ROUNDS; round++) {
  times.klu.push(kluTurn().time_us);
  times.verbs.push(timed(refactorAndSolve, REPEATS));
  times.mathjs.push(timed(() => lusolve(dense, right), 2));
  times.person.push(timed(refactorAndSolveWithPerson, REPEATS / 4));
  times.whole.push(timed(wholeSolve, REPEATS / 4));
}
const crowd: People = {
  touches: { 'right hand to feet': 7, 'left hand to feet': 2, 'hand to hand': 1 },
  skins: { dry: 7, 'water-wet': 3 },
  areas: { large: 8, medium: 2 },
  shoe_ohm: { median: 5000, factor: 20 },
  floor_ohm: { median: 150, factor: 4 },
  time_s: { median: 0.5, factor: 6 },
  size: 'adult',
};
const touched = { volts: 230, impedance_ohm: { re: 20, im: 2 }, frequency_Hz: 50 };
const TENTH = 100_000;
const tenths = Array.from({ length: 5 }, () => timed(() => population(touched, crowd, 1, 0, TENTH), 2) / 1e6);
const ratio = (one: readonly number[], other: readonly number[]): number => median(one.map((t, k) => t / other[k]!));
const size = `${rows.length} nodes`;
const result: readonly Row[] = [
  {
    name: 'refactor and solve the bakery',
    value: ratio(times.verbs, times.klu),
    unit: '× the time',
    budget: 1.5,
    bound: 'at most',
    peer: `SuiteSparse KLU refactor and solve, same matrix, ${size}`,
  },
  {
    name: 'refactor and solve the bakery',
    value: ratio(times.mathjs, times.verbs),
    unit: '× faster',
    budget: 500,
    bound: 'at least',
    peer: `mathjs lusolve, same matrix, ${size}`,
  },
  {
    name: 'refactor and solve the bakery with a person',
    value: median(times.person),
    unit: 'µs',
    budget: 10,
    bound: 'at most',
    peer: `hand, other hand and feet; ${median(times.verbs).toPrecision(3)} µs without`,
  },
  {
    name: 'a million people who touch one source',
    value: 10 * median(tenths),
    unit: 's',
    budget: 2,
    bound: 'at most',
    peer: 'processor time on one core; two workers halve it',
  },
  {
    name: 'every current, checked to the last digit',
    value: median(times.whole),
    unit: 'µs',
    budget: null,
    bound: 'at most',
    peer: `${network.branches.length} branches; KLU refactor and solve ${median(times.klu).toPrecision(3)} µs`,
  },
];
console.log(JSON.stringify(result));

/** Microseconds of processor time a call takes, after a warm-up of as many. */
function timed(call: () => unknown, repeats: number): number {
  for (let k = 0; k < repeats / 4; k++) call();
  const start = process.cpuUsage();
  for (let k = 0; k < repeats; k++) call();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / repeats;
}

function kluTurn(): { time_us: number; volts: Phasors } {
  const { stdout, stderr, status } = spawnSync(klu, { input: kluInput, encoding: 'utf8' });
  if (status !== 0) throw new Error(`KLU ended with ${status}: ${stderr}`);
  const [time = '', ...lines] = stdout.trim().split('\n');
  const pairs = lines.map((line) => line.split(' ').map(Number));
  return { time_us: Number(time) / 1000, volts: unknowns(pairs) };
}

function unknowns(pairs: readonly (readonly number[])[]): Phasors {
  return {
    re: Float64Array.of(0, ...pairs.map(([re = NaN]) => re)),
    im: Float64Array.of(0, ...pairs.map(([, im = NaN]) => im)),
  };
}

/** All sides must find the same, or their times mean nothing. @throws Error if they don't */
function agree(): void {
  refactorAndSolve();
  expectNear('the checked solution', solution.volts, 1e-6);
  // A plain matrix loses digits on its diagonal where something hangs on gigaohms, such as a limb that touches nothing.
  expectNear('KLU', kluTurn().volts, 0.02);
  const solved = lusolve(dense, right) as unknown as { re: number; im: number }[][];
  expectNear('mathjs', unknowns(solved.map(([value]) => [value!.re, value!.im])), 0.02);
  const { limb_ohm } = refactorAndSolveWithPerson();
  const put = new Map(limbs.map(({ branch }, k) => [branch, limb_ohm[k]!]));
  const withPerson = createSolver(network).solve(valuesAt(conditions, new Set(), put));
  expectNear('the checked solution with a person', withPerson.volts, 1e-6);
}

/** Compares somebody's volts with those solved last. @throws Error naming the first node that is farther off */
function expectNear(name: string, theirs: Phasors, least_V: number): void {
  theirs.re.forEach((re, n) => {
    const off = Math.hypot(re - volts.re[n]!, theirs.im[n]! - volts.im[n]!);
    if (!(off < least_V)) throw new Error(`${name} finds ${re} V at ${network.nodes[n]}, off by ${off} V`);
  });
}

/** The matrix in compressed columns and the right-hand side, as `klu.c` reads them. */
function forKlu(): string {
  const columns = rows.map((row) => [...row].sort(([a], [b]) => a - b)); // symmetric: rows are columns
  const starts = [0];
  for (const column of columns) starts.push(starts.at(-1)! + column.length);
  return [
    [rows.length, starts.at(-1), REPEATS],
    starts,
    columns.flatMap((column) => column.map(([row]) => row)),
    columns.flatMap((column) => column.flatMap(([, { re, im }]) => [re, im])),
    rows.flatMap((_, n) => [injection.re[n + 1], injection.im[n + 1]]),
  ]
    .map((line) => line.join(' '))
    .join('\n');
}
