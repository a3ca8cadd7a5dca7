import { dividePaths, project, type Complex, type Path } from '../electrics/index.ts';
import { EARTH, type BranchInfo, type Build } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { WayKind } from './finding.ts';

/** One way home before it is worded. */
export interface Way {
  readonly key: string;
  readonly kind: WayKind;
  /** What distinguishes it: the electrode where it leaves metal, the person, the load; empty where the kind says it all. */
  readonly by: readonly string[];
  readonly amperes: number;
  /** Terminals from the fault or the load to the winding, of the path with most current. */
  readonly stations: readonly string[];
  readonly branches: readonly number[];
  /** True if it is metal from the fault or load to the winding. */
  readonly metal: boolean;
}

/** How one current divides, before it is worded. */
export interface Division {
  readonly of: 'fault' | 'load';
  readonly total_A: number;
  readonly circulating_A: number;
  readonly ways: readonly Way[];
}

/** Below this a way is counted among the smaller ones, A: a fiftieth of what anybody can feel (0.5 mA, IEC 60479-1). */
const SMALL_A = 1e-5;
/** Below this a fault current is no current to divide, A. */
const NO_CURRENT_A = 1e-4;

const known = new WeakMap<Interval, Division | 'none'>();

/** Divides the current of an interval into its ways home, or null if no current leaves the windings.
 *  A fault is counted as the change that closing it makes, in phase with the fault current, loops cut at the windings;
 *  without one (or where the fault only diverts a load) the whole current of the windings is divided. */
export function divide(build: Build, interval: Interval): Division | null {
  const before = known.get(interval);
  if (before !== undefined) return before === 'none' ? null : before;
  const division = ofFault(build, interval) ?? ofLoad(build, interval);
  known.set(interval, division ?? 'none');
  return division;
}

function ofFault(build: Build, { fault }: Interval): Division | null {
  if (fault === undefined) return null;
  const size = Math.hypot(fault.amperes.re, fault.amperes.im);
  if (size < NO_CURRENT_A) return null;
  const division = divided(build, 'fault', project(fault.change.amperes, fault.amperes), fault.branch);
  return division.total_A < size / 2 ? null : division;
}

function ofLoad(build: Build, { solution, values }: Interval): Division | null {
  const source = build.sources[0];
  if (source === undefined) return null;
  const phase: Complex = { re: values.emf.re[source] ?? 1, im: values.emf.im[source] ?? 0 };
  const division = divided(build, 'load', project(solution.amperes, phase), null);
  return division.total_A < NO_CURRENT_A ? null : division;
}

function divided(build: Build, of: 'fault' | 'load', flow: Float64Array, fault: number | null): Division {
  const { paths, total_A, circulating_A } = dividePaths(build.network, flow, build.sources);
  const groups = new Map<string, { way: Way; largest: number }>();
  for (const path of paths) {
    const way = wayOf(build, of, path, fault);
    const group = groups.get(way.key);
    if (group === undefined) groups.set(way.key, { way, largest: path.amperes });
    else groups.set(way.key, joined(group, way, path.amperes));
  }
  return {
    of,
    total_A,
    circulating_A,
    ways: tidy(
      [...groups.values()].map(({ way }) => way),
      total_A,
    ),
  };
}

function joined(group: { way: Way; largest: number }, way: Way, amperes: number): { way: Way; largest: number } {
  const [main, side] = amperes > group.largest ? [way, group.way] : [group.way, way];
  const sum = group.way.amperes + amperes;
  const branches = [...new Set([...main.branches, ...side.branches])];
  return {
    way: { ...main, amperes: sum, branches, metal: main.metal && side.metal },
    largest: Math.max(group.largest, amperes),
  };
}

/** Largest first; what is too small to tell apart goes into one last way, and into the largest if it is nothing beside it. */
function tidy(ways: readonly Way[], total_A: number): readonly Way[] {
  const least = Math.min(SMALL_A, total_A / 100);
  const told = ways.filter(({ kind, amperes }) => kind !== 'other' && amperes >= least);
  const small = ways.filter((way) => !told.includes(way));
  told.sort((a, b) => b.amperes - a.amperes);
  const rest_A = small.reduce((sum, { amperes }) => sum + amperes, 0);
  const [largest, ...others] = told;
  if (largest !== undefined && rest_A < total_A * 1e-6)
    return [{ ...largest, amperes: largest.amperes + rest_A }, ...others];
  const rest: Way = {
    key: 'other',
    kind: 'other',
    by: [],
    amperes: rest_A,
    stations: [],
    branches: [...new Set(small.flatMap(({ branches }) => branches))],
    metal: false,
  };
  return [...told, rest];
}

interface Step {
  readonly info: BranchInfo;
  readonly branch: number;
  readonly from: number;
  readonly to: number;
}

function wayOf(build: Build, of: 'fault' | 'load', path: Path, fault: number | null): Way {
  const steps = outward(build, of, stepsOf(build, path));
  const turn = steps.findIndex(({ info, branch }) => (fault === null ? info.role === 'load' : branch === fault));
  const home = steps.slice(turn + 1);
  const nodes = [...steps.slice(turn, turn + 1), ...home].map(({ to }) => to);
  return {
    ...kindOf(build, of, of === 'load' ? steps : home, steps),
    amperes: path.amperes,
    stations: nodes.map((node) => (node === 0 ? EARTH : (build.network.nodes[node] ?? ''))),
    branches: path.branches.map(({ branch }) => branch),
    metal: home.every(({ info }) => info.medium === 'metal'),
  };
}

function stepsOf(build: Build, path: Path): readonly Step[] {
  return path.branches.flatMap(({ branch, forward }) => {
    const info = build.branches[branch];
    const ends = build.network.branches[branch];
    if (info === undefined || ends === undefined) return [];
    return [{ info, branch, from: forward ? ends.from : ends.to, to: forward ? ends.to : ends.from }];
  });
}

/** A working current that sets out from the middle of a winding is told the other way round: out on the line, home on
 *  the rest. It alternates; which half cycle is looked at is ours to choose. */
function outward(build: Build, of: 'fault' | 'load', steps: readonly Step[]): readonly Step[] {
  const start = steps[0]?.from;
  if (of === 'fault' || !build.sources.some((source) => build.network.branches[source]?.from === start)) return steps;
  return steps.toReversed().map((step) => ({ ...step, from: step.to, to: step.from }));
}

function kindOf(
  build: Build,
  of: 'fault' | 'load',
  told: readonly Step[],
  steps: readonly Step[],
): Pick<Way, 'key' | 'kind' | 'by'> {
  const way = (kind: WayKind, ...by: readonly string[]) => ({ key: [kind, ...by].join(':'), kind, by });
  const limbs = steps.filter(({ info }) => info.role === 'person').map(({ info }) => info);
  const person = limbs[0]?.part;
  if (person !== undefined) return way('person', person, ...limbs.map(limbOf).sort());
  if (told.some(({ info }) => info.role === 'insulation')) return way('other');
  const soil = told.find(({ info }) => info.medium === 'soil')?.info;
  if (soil !== undefined) return soil.role === 'pipe' ? way('pipe', soil.part, EARTH) : way('soil', soil.part);
  const pipe = told.find(({ info }) => info.role === 'pipe')?.info;
  if (pipe !== undefined) return way('pipe', pipe.part);
  if (of === 'fault' && told.some(({ info }) => info.role === 'load')) return way('load');
  const link = told.findIndex(({ info }) => info.role === 'link');
  const roles = told.slice(link + 1).map(({ info }) => info.role);
  const first = roles.find((role) => role === 'protective' || role === 'neutral');
  if (link >= 0) return way(first ?? 'other', 'link');
  if (roles.includes('protective')) return way('protective');
  if (of === 'load' && !sameWinding(build, steps)) return way('load', 'leg');
  return first === 'neutral' ? way('neutral') : way('other');
}

function limbOf({ name, part }: BranchInfo): string {
  return name.slice(part.length + 1);
}

/** Whether a path leaves and comes home at the two ends of one and the same winding. */
function sameWinding(build: Build, steps: readonly Step[]): boolean {
  const start = steps[0]?.from;
  const end = steps[steps.length - 1]?.to;
  return build.sources.some((source) => {
    const ends = build.network.branches[source];
    return (ends?.from === end && ends?.to === start) || (ends?.from === start && ends?.to === end);
  });
}
