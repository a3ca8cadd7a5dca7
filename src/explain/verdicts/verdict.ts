import type { Unit } from '../quantity.ts';

/** What is judged about an installation before anything happens in it. */
export type VerdictKind =
  | 'fault-to-metal'
  | 'fault-to-neutral'
  | 'fault-between-lines'
  | 'second-fault'
  | 'loop'
  | 'disconnection'
  | 'case-volts'
  | 'longest-run'
  | 'protective-size'
  | 'overload'
  | 'monitor'
  | 'grounding-current';

/** In general words what a limit is taken from; its sentence stands in the words of verdicts. */
export type Clause =
  | 'loop.iec'
  | 'loop.tt'
  | 'loop.it'
  | 'loop.north-america'
  | 'time.tn'
  | 'time.tt'
  | 'time.it'
  | 'time.it.apart'
  | 'time.north-america'
  | 'touch'
  | 'touch.first'
  | 'run'
  | 'protective.adiabatic'
  | 'protective.table'
  | 'protective.north-america'
  | 'overload.iec'
  | 'overload.north-america'
  | 'monitor'
  | 'grounding'
  | 'none';

/** One answer a designer needs, at one point, with its limit. */
export interface Verdict {
  readonly kind: VerdictKind;
  /** The appliance, outlet, panel or winding it is about; for a cable's own verdicts the cable. */
  readonly part: string;
  /** The terminal of the line, where there is one. */
  readonly line?: string;
  /** Where the other one of two faults is, on a supply that nothing earths. */
  readonly other?: string;
  /** Who is to open, or to warn. */
  readonly device?: string;
  readonly value: number;
  readonly unit: Unit | 'mm²';
  /** Absent where nothing limits it. */
  readonly limit?: number;
  readonly sense: 'at most' | 'at least';
  /** `maybe`: between what every device of the kind does and what none does; `told`: there is no limit. */
  readonly holds: 'yes' | 'maybe' | 'no' | 'told';
  readonly clause: Clause;
  /** A size as it is written on a drum, where the limit is one. */
  readonly size?: string;
}

/** What is left of the limit, as a share of it; below zero it is exceeded. Undefined without a finite limit. */
export function margin({ value, limit, sense }: Verdict): number | undefined {
  if (limit === undefined || !(limit > 0) || limit === Infinity) return undefined;
  return (sense === 'at most' ? limit - value : value - limit) / limit;
}
