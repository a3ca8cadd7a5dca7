import { abs, add, div, mul, scale, sub, type Complex } from '../../electrics/index.ts';
import { circuitOf, opening, type Circuit } from './circuit.ts';
import type { End, Point } from './points.ts';
import type { Roads } from './roads.ts';
import { across, across_V, at, type Standing } from './standing.ts';

/** A fault from one live conductor to the metal at its point, solid. */
interface Fault {
  readonly live: End;
  readonly metal: End;
}

/** Two solid faults at once on a supply that nothing earths: a short circuit by way of the metal between them. */
export interface SecondFault {
  /** Where the other one is, and by which of its live conductors. */
  readonly other: Point;
  readonly live: End;
  /** Through the fault that is judged. */
  readonly amperes: number;
  /** Between the two live conductors before anything fails. */
  readonly volts: number;
  /** All that those volts drive the current round, Ω: both circuits. */
  readonly loop_ohm: number;
  /** Of the metal at the fault that is judged, to the floor. */
  readonly case_V: number;
  /** Whether the metal at both is joined by metal, not by soil alone. */
  readonly bonded: boolean;
  /** When a device of the circuit that is judged opens, from cold, s. */
  readonly ended: ReturnType<typeof opening>;
}

/** Volts between two conductors below this share of the nominal drive no fault: they are of one phase. */
const APART_SHARE = 0.3;
/** So many other points are tried, the farthest from the source, where a supply has more. */
const MOST_OTHERS = 64;

/** The second fault that draws least of all that a first one at this point may meet: at every other point of the supply by
 *  every conductor of another phase, the neutral where it is distributed. Undefined where there is no other point.
 *  @param most_A what the source gives at most */
export function weakestSecondFault(
  standing: Standing,
  roads: Roads,
  points: readonly Point[],
  point: Point,
  fault: Fault,
  floor: number,
  most_A: number,
): SecondFault | undefined {
  const far = (one: Point): number => roads.up(one.lines[0]?.node ?? 0).length;
  const others = points
    .filter(({ part, source, metal }) => part !== point.part && source === point.source && metal !== undefined)
    .toSorted((one, other) => far(other) - far(one))
    .slice(0, MOST_OTHERS);
  const circuit = circuitOf(standing, roads, point, fault.live.node);
  const met = others.flatMap((other) => {
    const metal = other.metal;
    if (metal === undefined || metal.node === fault.metal.node) return [];
    // A fault before the first device of the place is in none of its circuits.
    if (other.lines.every(({ node }) => circuitOf(standing, roads, other, node).guard === undefined)) return [];
    return [...other.lines, ...(other.neutral === undefined ? [] : [other.neutral])].flatMap((live) => {
      if (across_V(standing, fault.live.node, live.node) < APART_SHARE * point.nominal_V) return [];
      const second = circuitOf(standing, roads, other, live.node);
      const bonded = roads.together(fault.metal.node, metal.node);
      return [{ other, live, second, bonded, ...twoShorted(standing, fault, { live, metal }, floor, most_A) }];
    });
  });
  const weakest = met.toSorted((one, other) => one.amperes - other.amperes)[0];
  if (weakest === undefined) return undefined;
  const { second, ...found } = weakest;
  return { ...found, ended: endedBy(standing, circuit, second, found.amperes) };
}

/** Both circuits pass the devices they share, so there the whole comes back; from those of its own it does not. */
function endedBy(standing: Standing, circuit: Circuit, second: Circuit, amperes: number): SecondFault['ended'] {
  const shared = new Set(second.devices);
  const own = { ...circuit, devices: circuit.devices.filter((device) => !shared.has(device)) };
  const common = { ...circuit, devices: circuit.devices.filter((device) => shared.has(device)) };
  const [first, last] = [opening(own, standing, amperes, true), opening(common, standing, amperes, false)];
  const sooner = last.device !== undefined && last.latest_s < first.latest_s ? last : first;
  return { ...sooner, earliest_s: Math.min(first.earliest_s, last.earliest_s) };
}

/** Joins two live conductors each to metal of its own by nothing at all. */
function twoShorted(
  standing: Standing,
  one: Fault,
  other: Fault,
  floor: number,
  most_A: number,
): Pick<SecondFault, 'amperes' | 'volts' | 'loop_ohm' | 'case_V'> {
  const nodes = [one.live, one.metal, other.live, other.metal].map(({ node }) => node);
  const all = [...nodes, floor];
  const seen = standing.solver.impedanceSeenFrom(all);
  const z = (row: number, column: number): Complex => at(seen, row * all.length + column);
  /** Volts that an ampere through the fault from this place to the next sets at a place. */
  const sets = (place: number, from: number): Complex => sub(z(place, from + 1), z(place, from));
  const meets = (row: number, column: number): Complex => sub(sets(row + 1, column), sets(row, column));
  const [a, b, c, d] = [meets(0, 0), meets(0, 2), meets(2, 0), meets(2, 2)];
  const v = across(standing, one.live.node, one.metal.node);
  const w = across(standing, other.live.node, other.metal.node);
  const determinant = sub(mul(a, d), mul(b, c));
  const free = [div(sub(mul(d, v), mul(b, w)), determinant), div(sub(mul(a, w), mul(c, v)), determinant)] as const;
  const share = Math.min(1, most_A / abs(free[0]));
  const flows = [scale(free[0], share), scale(free[1], share)] as const;
  const standsAt = (place: number): Complex =>
    add(
      scale(at(standing.volts, all[place] ?? 0), share),
      add(mul(flows[0], sets(place, 0)), mul(flows[1], sets(place, 2))),
    );
  const volts = across_V(standing, one.live.node, other.live.node);
  return {
    amperes: abs(flows[0]),
    volts,
    loop_ohm: volts / abs(free[0]),
    case_V: abs(sub(standsAt(1), standsAt(4))),
  };
}
