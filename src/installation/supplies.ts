import type { Laid } from './laid.ts';
import { pieces } from './pieces.ts';
import type { PlannedSupply } from './plan.ts';
import type { TerminalName } from './terminal.ts';

/** How a supply and the cases behind it are earthed (IEC 60364-1). `separated`: neither the supply nor any case is. A case that
 *  nothing earths on an earthed supply counts as TT: the soil is its only way home. */
type EarthingSystem = 'TN-S' | 'TN-C-S' | 'TT' | 'IT' | 'separated';

/** A supply as it is built, whatever is the matter with it. */
export interface SupplyInfo {
  readonly part: string;
  readonly phases: 1 | 2 | 3;
  /** That of most cases it feeds; bars joined by less than 10 Ω are joined. */
  readonly system: EarthingSystem;
  /** The largest of its lines' volts to the point of it that is earthed, else to its neutral or middle, no load. */
  readonly nominal_V: number;
  readonly lines: readonly TerminalName[];
  /** The terminal of it that is earthed, or joined to the cases it feeds. */
  readonly earthed?: TerminalName;
}

// What is put in on purpose to keep a fault current low has more (invented: far over any conductor, under any such resistor).
const JOINED_OHM = 10;

/** What the plans of the parts supply, and how each of it is earthed.
 *  @param cases every metal case by its terminal, with the terminals it is fed by */
export function suppliesOf(
  supplies: readonly (PlannedSupply & { readonly part: string })[],
  laid: readonly Laid[],
  cases: readonly { readonly terminal: TerminalName; readonly fedBy: readonly TerminalName[] }[],
  terminals: readonly TerminalName[],
  node: (terminal: TerminalName) => number,
): readonly SupplyInfo[] {
  if (supplies.length === 0) return [];
  const metal = laid.filter(
    ({ medium, role, condition }) => medium === 'metal' && role !== 'winding' && condition === undefined,
  );
  const earths = new Set([
    0,
    ...laid.flatMap(({ medium, role, from, to }) =>
      medium === 'soil' && role !== 'floor' ? [node(from), node(to)] : [],
    ),
  ]);
  const joined = (kept: (branch: Laid) => boolean): Joined => {
    const links = metal.filter(kept).map(({ from, to }) => [node(from), node(to)] as const);
    const all = pieces(terminals.length, links);
    const piece = new Int32Array(terminals.length);
    all.forEach((members, at) => members.forEach((member) => piece.fill(at, member, member + 1)));
    const earthed = all.map((members) => members.some((member) => earths.has(member)));
    const of = (terminal: TerminalName): number => piece[node(terminal)] ?? -1;
    return { same: (a, b) => of(a) === of(b), earthed: (terminal) => earthed[of(terminal)] === true };
  };
  const closed = ({ resistance_ohm, reactance_ohm }: Laid) => Math.hypot(resistance_ohm, reactance_ohm) < JOINED_OHM;
  const throwOver = (branch: Laid) =>
    branch.name.endsWith('.alternative') || (closed(branch) && !branch.name.endsWith('.normal'));
  const positions = [closed, throwOver].map((kept) => ({
    all: joined(kept),
    withoutNeutrals: joined((branch) => kept(branch) && branch.role !== 'neutral'),
  }));

  return supplies.map(({ part, phases, lines, neutral }): SupplyInfo => {
    const ends = [...(neutral === undefined ? [] : [neutral]), ...lines.map(({ terminal }) => terminal)];
    const feeds = ({ all }: Position) =>
      cases.filter(({ fedBy }) => fedBy.some((terminal) => lines.some((line) => all.same(terminal, line.terminal))));
    const position = positions.find((one) => feeds(one).length > 0) ?? positions[0];
    if (position === undefined) throw new RangeError(`supplies: ${part} stands in no position`);
    const { all, withoutNeutrals } = position;
    const fed = feeds(position).map(({ terminal }) => terminal);
    const earthed = ends.find((end) => all.earthed(end) || fed.some((one) => all.same(one, end)));
    const systemOf = (one: TerminalName): EarthingSystem => {
      if (earthed !== undefined && all.same(one, earthed))
        return withoutNeutrals.same(one, earthed) ? 'TN-S' : 'TN-C-S';
      if (earthed !== undefined && all.earthed(earthed)) return 'TT';
      return all.earthed(one) ? 'IT' : 'separated';
    };
    const unfed: EarthingSystem = earthed === undefined ? 'IT' : 'TN-S';
    const at = earthed === undefined ? undefined : lines.find(({ terminal }) => terminal === earthed);
    const reference = { re: 0, im: 0, ...(at === undefined ? {} : phasor(at)) };
    return {
      part,
      phases,
      system: commonest(fed.map(systemOf)) ?? unfed,
      nominal_V: Math.max(
        ...lines.map((line) => Math.hypot(phasor(line).re - reference.re, phasor(line).im - reference.im)),
      ),
      lines: lines.map(({ terminal }) => terminal),
      ...(earthed === undefined ? {} : { earthed }),
    };
  });
}

interface Joined {
  same(a: TerminalName, b: TerminalName): boolean;
  earthed(terminal: TerminalName): boolean;
}

interface Position {
  readonly all: Joined;
  readonly withoutNeutrals: Joined;
}

function phasor({ emf_V, angle_rad }: PlannedSupply['lines'][number]): { readonly re: number; readonly im: number } {
  return { re: emf_V * Math.cos(angle_rad), im: emf_V * Math.sin(angle_rad) };
}

/** The first of those there are most of. */
function commonest<T>(list: readonly T[]): T | undefined {
  const count = new Map<T, number>();
  for (const one of list) count.set(one, (count.get(one) ?? 0) + 1);
  return [...count].toSorted(([, a], [, b]) => b - a)[0]?.[0];
}
