import type { Branch, Network, Winding } from '../electrics/index.ts';
import type { BranchInfo, Build, DeviceInfo } from './build.ts';
import { actionOf, type Action, type Joins } from './effects.ts';
import { currentSourcesOf } from './currentSources.ts';
import { deviceInfo } from './device.ts';
import type { Installation } from './installation.ts';
import { joinRole } from './joinRole.ts';
import { partKind, type Part } from './parts/index.ts';
import { personInfo } from './personInfo.ts';
import { pieces } from './pieces.ts';
import { GAP_OHM, leakage, type Plan } from './plan.ts';
import { terminalFinder, terminalsOf } from './directory.ts';
import { EARTH, partOf } from './terminal.ts';
import { LARGEST_OHM } from './quantity.ts';
import { suppliesOf } from './supplies.ts';
import type { Laid } from './laid.ts';
import { known, phasorsOf, valuesOf } from './values.ts';

/** Compiles an installation once. Conditions only change values, so a toggle is `values` and a solve.
 *  @param installation one that `readInstallation` accepted
 *  @throws RangeError naming what is unknown, if it was not read by the loader */
export function compile(installation: Installation): Build {
  const parts = Object.entries(installation.parts);
  const terminals = terminalsOf(parts);
  const find = terminalFinder(terminals);
  const node = (terminal: string): number => known(find(terminal), 'terminal', terminal);

  // Direct current: an inductance is wire, a capacitance a gap.
  const direct = installation.frequency_Hz === 0;
  const reacting = (ohm: number): number => (direct ? (ohm < 0 ? -LARGEST_OHM : 0) : ohm);
  const plans = new Map<string, Plan>(
    parts.map(([name, part]) => [name, partKind(part.kind).plan(name, part, installation)]),
  );
  const fixed: readonly Laid[] = [
    ...[...plans].flatMap(([part, plan]) =>
      plan.branches.map((branch) => ({ ...branch, reactance_ohm: reacting(branch.reactance_ohm), part })),
    ),
    ...joinBranches(installation),
  ];
  const joins = joinsOf(installation, node, terminals);
  const actions = new Map<string, Action>(
    Object.entries(installation.conditions).map(([name, condition]) => [
      name,
      actionOf(name, condition, joins, installation),
    ]),
  );
  const own = [...actions].flatMap(([condition, action]) =>
    action.own.map((branch): Laid => ({
      ...branch,
      part: condition,
      condition,
      medium: 'metal',
      resistance_ohm: GAP_OHM,
      reactance_ohm: 0,
    })),
  );
  const tied = [...fixed, ...own];
  const laid = [...tied, ...lonelyLeakages(tied, terminals, node)];

  const branches: readonly BranchInfo[] = laid.map(({ name, part, role, medium, condition, metal }) => ({
    name,
    part,
    role,
    medium,
    ...(condition === undefined ? {} : { condition }),
    ...(metal === undefined ? {} : { metal }),
  }));
  const index = new Map(laid.map(({ name }, at) => [name, at]));
  const branch = (name: string): number => known(index.get(name), 'branch', name);
  const devices = [...plans].flatMap(([name, { device }]): DeviceInfo[] =>
    device === undefined ? [] : [deviceInfo(name, device, installation, branch)],
  );
  const windings = [...plans.values()].flatMap(({ winding }) => (winding === undefined ? [] : [winding]));
  const cores = [...plans.values()].flatMap(({ cores: own = [] }) => own);

  const network: Network = {
    nodes: terminals,
    branches: laid.map(({ name, from, to }): Branch => ({ name, from: node(from), to: node(to) })),
    windings: windings.map((winding): Winding => ({ branches: winding.branches.map(branch) })),
    ...(cores.length === 0 ? {} : { cores: cores.map((core) => ({ ...core, branches: core.branches.map(branch) })) }),
  };
  const coupling = windings.map(({ resistance_ohm, reactance_ohm }) => ({
    re: Float64Array.from(resistance_ohm),
    im: Float64Array.from(reactance_ohm, reacting),
  }));

  const currentSources = currentSourcesOf(laid, node, phasorsOf(laid));

  return {
    installation,
    network,
    branches,
    sources: indexesWhere(laid, ({ role }) => role === 'winding'),
    limits: laid.flatMap(({ limit_A }, at) => (limit_A === undefined ? [] : [{ branch: at, limit_A }])),
    supplies: suppliesOf(
      [...plans].flatMap(([part, { supply }]) => (supply === undefined ? [] : [{ part, ...supply }])),
      fixed,
      parts.flatMap(([name, part]) => casesOf(name, part)),
      terminals,
      node,
    ),
    devices,
    people: [...plans].flatMap(([name, { person }]) =>
      person === undefined ? [] : [personInfo(name, person, installation, branch, node)],
    ),
    electrodes: indexesWhere(laid, ({ medium, role }) => medium === 'soil' && role !== 'floor'),
    unreached: unreachedPieces(tied, terminals, node, installation),
    unearthed: unearthedSources(tied, terminals, node),
    branch,
    node,
    harmonics: currentSources.harmonics,
    values: valuesOf(laid, coupling, actions, devices, installation, branch, currentSources),
  };
}

function casesOf(
  name: string,
  part: Part,
): readonly { readonly terminal: string; readonly fedBy: readonly string[] }[] {
  if (part.kind !== 'appliance' || part.case !== 'metal') return [];
  return [{ terminal: `${name}.case`, fedBy: part.supply.map((end) => `${name}.${end}`) }];
}

function joinBranches(installation: Installation): readonly Laid[] {
  const kindOf = (part: string) =>
    Object.hasOwn(installation.parts, part) ? installation.parts[part]?.kind : undefined;
  return installation.joins.map(({ between: [from, to], resistance_ohm }) => ({
    name: `${from} – ${to}`,
    part: partOf(from),
    from,
    to,
    role: joinRole([from, to], kindOf),
    medium: 'metal',
    resistance_ohm,
    reactance_ohm: 0,
  }));
}

function joinsOf(installation: Installation, node: (terminal: string) => number, terminals: readonly string[]): Joins {
  const ends = installation.joins.map(({ between: [from, to] }) => ({
    name: `${from} – ${to}`,
    ends: [node(from), node(to)] as const,
  }));
  const far = (at: number): string => known(terminals[at], 'terminal', String(at));
  return {
    between: (a, b) =>
      ends.find(({ ends: [from, to] }) => (from === node(a) && to === node(b)) || (from === node(b) && to === node(a)))
        ?.name,
    at: (terminal) =>
      ends.flatMap(({ name, ends: [from, to] }) =>
        from === node(terminal)
          ? [{ name, other: far(to) }]
          : to === node(terminal)
            ? [{ name, other: far(from) }]
            : [],
      ),
  };
}

/** A piece that nothing at all ties to earth gets the leakage of its own insulation, so that its potential is defined. */
function lonelyLeakages(
  laid: readonly Laid[],
  terminals: readonly string[],
  node: (terminal: string) => number,
): readonly Laid[] {
  const links = laid.map(({ from, to }) => [node(from), node(to)] as const);
  return pieces(terminals.length, links)
    .filter((piece) => !piece.includes(0))
    .map((piece) => {
      const terminal = terminals[piece[0] ?? 0] ?? EARTH;
      return { ...leakage(`${terminal}.insulation`, terminal), part: partOf(terminal) };
    });
}

function unreachedPieces(
  laid: readonly Laid[],
  terminals: readonly string[],
  node: (terminal: string) => number,
  installation: Installation,
): readonly (readonly string[])[] {
  const conducting = laid.filter(({ medium }) => medium === 'metal' || medium === 'load');
  const links = conducting
    .map(({ from, to }) => [node(from), node(to)] as const)
    .filter(([from, to]) => from !== 0 && to !== 0);
  const supplied = new Set(
    laid.filter(({ role }) => role === 'winding').flatMap(({ from, to }) => [node(from), node(to)]),
  );
  const stoodOn = new Set(
    Object.entries(installation.parts).flatMap(([name, { kind }]) =>
      kind === 'floor' || kind === 'soil' || kind === 'person' ? [name] : [],
    ),
  );
  return pieces(terminals.length, links)
    .filter((piece) => !piece.includes(0) && !piece.some((at) => supplied.has(at)))
    .map((piece) => piece.flatMap((at) => terminals[at] ?? []))
    .filter((piece) => piece.some((terminal) => !stoodOn.has(partOf(terminal))));
}

function unearthedSources(
  laid: readonly Laid[],
  terminals: readonly string[],
  node: (terminal: string) => number,
): readonly string[] {
  const links = laid
    .filter(({ medium, role }) => medium !== 'insulation' && medium !== 'body' && role !== 'floor' && role !== 'fault')
    .map(({ from, to }) => [node(from), node(to)] as const);
  const returns = laid.filter(({ role }) => role === 'winding').map(({ from }) => from);
  return pieces(terminals.length, links)
    .filter((piece) => !piece.includes(0))
    .flatMap((piece) => returns.find((from) => piece.includes(node(from))) ?? []);
}

function indexesWhere<T>(list: readonly T[], holds: (item: T) => boolean): readonly number[] {
  return list.flatMap((item, at) => (holds(item) ? [at] : []));
}
