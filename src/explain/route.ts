import type { Path } from '../electrics/index.ts';
import { EARTH, type BranchInfo, type Build, type Part } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { WayKind } from './finding.ts';

/** One branch as it is walked. */
export interface Step {
  readonly info: BranchInfo;
  readonly branch: number;
  readonly from: number;
  readonly to: number;
}

/** The branches of a path as they are walked. */
export function stepsOf(build: Build, path: Path): readonly Step[] {
  return path.branches.flatMap(({ branch, forward }) => {
    const info = build.branches[branch];
    const ends = build.network.branches[branch];
    if (info === undefined || ends === undefined) return [];
    return [{ info, branch, from: forward ? ends.from : ends.to, to: forward ? ends.to : ends.from }];
  });
}

/** What a way is, by what distinguishes it: the person it passes, the electrode where it leaves metal, the pipe, other
 *  loads, the link, the protective conductor, the neutral; in this order; otherwise the plain impedances it passes. */
export function nameWay(
  build: Build,
  of: 'fault' | 'load',
  steps: readonly Step[],
): { readonly key: string; readonly kind: WayKind; readonly by: readonly string[] } {
  const way = (kind: WayKind, ...by: readonly string[]) => ({ key: [kind, ...by].join(':'), kind, by });
  const rest = () => {
    const passed = impedancesOf(build, steps);
    const straight = passed.length === 0 && steps.length > 0 && steps.every(({ info }) => info.medium === 'metal');
    return straight ? way('other', 'straight') : way('other', ...passed);
  };
  const limbs = steps.filter(({ info }) => info.role === 'person').map(({ info }) => info);
  const person = limbs[0]?.part;
  if (person !== undefined) return way('person', person, ...limbs.map(innerName).sort());
  const leak = steps.find(({ info }) => info.role === 'insulation')?.info;
  if (leak !== undefined) {
    if (innerName(leak) === 'feet') return way('soil', leak.part, 'feet');
    if (!isCapacitance(build, leak)) return way('other');
    const earthed = steps.some(({ info }) => info.role === 'protective');
    return way(earthed ? 'protective' : 'other', 'leak', leak.part);
  }
  const soil = steps.find(({ info }) => info.medium === 'soil')?.info;
  if (soil !== undefined) return soil.role === 'pipe' ? way('pipe', soil.part, EARTH) : way('soil', soil.part);
  const pipe = steps.find(({ info }) => info.role === 'pipe')?.info;
  if (pipe !== undefined) return way('pipe', pipe.part);
  const screen = steps.find(({ info }) => innerName(info) === 'screen')?.info;
  if (screen !== undefined) return way('other', 'screen', screen.part);
  if (of === 'fault' && steps.some(({ info }) => info.role === 'load'))
    return plain(build, steps) ? rest() : way('load');
  const link = steps.findIndex((step) => isTouch(build, step));
  const roles = steps.slice(link + 1).map(({ info }) => info.role);
  const first = roles.find((role) => role === 'protective' || role === 'neutral');
  if (link >= 0) return first === undefined ? rest() : way(first, 'link');
  if (roles.includes('protective')) return way('protective');
  if (of === 'load' && !sameWinding(build, steps) && !plain(build, steps)) {
    // Where several loads share the way, each is named: those beyond the first, or the one there is.
    const passed = [...new Set(steps.filter(({ info }) => info.role === 'load').map(({ info }) => info.part))];
    const over = build.sources.length > 2 ? 'phase' : 'leg';
    return { key: `load:${over}`, kind: 'load', by: [over, ...(passed.length > 1 ? passed.slice(1) : passed)] };
  }
  return first === 'neutral' ? way('neutral') : rest();
}

/** Parts of a textbook circuit, which distinguish a way by their own names. */
const PLAIN: ReadonlySet<string | undefined> = new Set<Part['kind']>([
  'impedance',
  'capacitance',
  'coupled-windings',
  'ideal-transformer',
  'harmonic-source',
]);

function isImpedance(build: Build, { info }: Step): boolean {
  return PLAIN.has(build.installation.parts[info.part]?.kind);
}

/** Whether insulation is told as a capacitance of its own: of a cable, a filter or a winding, or a plain one. */
export function isCapacitance(build: Build, info: BranchInfo): boolean {
  return /(capacitance|filter)$/.test(info.name) || build.installation.parts[info.part]?.kind === 'capacitance';
}

function impedancesOf(build: Build, steps: readonly Step[]): readonly string[] {
  return steps.filter((step) => isImpedance(build, step)).map(({ info }) => info.part);
}

/** Whether all that takes current on a way are plain impedances, as in a textbook circuit. */
function plain(build: Build, steps: readonly Step[]): boolean {
  const loads = steps.filter(({ info }) => info.role === 'load');
  return loads.length > 0 && loads.every((step) => isImpedance(build, step));
}

/** The steps of a working current from the impedance it feeds, where a way is told by its impedances. */
export function fromImpedance(build: Build, steps: readonly Step[]): readonly Step[] {
  const first = steps.findIndex((step) => isImpedance(build, step));
  return first < 0 ? [] : steps.slice(first);
}

/** Whether a step leads from a live conductor or a neutral over to the metal of the protective side: a link or a fault. */
export function isTouch(build: Build, { info }: Step): boolean {
  if (info.role === 'fault') return true;
  return info.condition !== undefined && build.installation.conditions[info.condition]?.kind === 'link';
}

/** Where a way passes, from its start: terminals, joints and impedances that have a name of their own; a residual device that is not
 *  fitted is passed over. */
export function stationsOf(
  build: Build,
  { conditions }: Interval,
  start: number,
  steps: readonly Step[],
): readonly string[] {
  const { parts } = build.installation;
  const absent = build.devices.filter((device) => !device.fitted(conditions)).map(({ name }) => name);
  const terminal = (node: number) => (node === 0 ? EARTH : (build.network.nodes[node] ?? ''));
  const passed = steps.flatMap(({ info, to }) => [
    ...(parts[info.part]?.kind === 'joint' || PLAIN.has(parts[info.part]?.kind) ? [info.part] : []),
    ...(PLAIN.has(parts[partOf(terminal(to))]?.kind) ? [] : [terminal(to)]),
  ]);
  return [terminal(start), ...passed].filter((station) => !absent.includes(partOf(station)));
}

/** The part a terminal belongs to. */
export function partOf(terminal: string): string {
  const dot = terminal.indexOf('.');
  return dot < 0 ? terminal : terminal.slice(0, dot);
}

function innerName({ name, part }: BranchInfo): string {
  return name.slice(part.length + 1);
}

/** Whether a path leaves and comes home at the two ends of one and the same winding. */
function sameWinding(build: Build, steps: readonly Step[]): boolean {
  const start = steps[0]?.from;
  const end = steps.at(-1)?.to;
  return build.sources.some((source) => {
    const ends = build.network.branches[source];
    return (ends?.from === end && ends?.to === start) || (ends?.from === start && ends?.to === end);
  });
}
