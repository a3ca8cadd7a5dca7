import type { Contact, Limb, Zone } from '../body/index.ts';
import type { Complex, Solution, Values } from '../electrics/index.ts';
import type { Build, Conditions } from '../installation/index.ts';
import type { Operation, Tolerance } from '../protection/index.ts';

/** What starts an interval of the timeline: nothing else ever changes between two of these. */
export type Happening =
  | { readonly kind: 'begins' }
  | { readonly kind: 'fault-strikes'; readonly condition: string }
  | { readonly kind: 'touches'; readonly person: string }
  | { readonly kind: 'device-operated'; readonly device: string; readonly operation: Operation }
  | { readonly kind: 'device-warned'; readonly device: string; readonly operation: Operation }
  | { readonly kind: 'person-released'; readonly person: string }
  | { readonly kind: 'zone-reached'; readonly person: string; readonly zone: Zone };

/** The state value of the scenario machine as plain data: what has struck, what has opened, who touches. */
export interface ScenarioSnapshot {
  /** Insulation faults by condition name; `absent` also while one that is given has not struck yet. */
  readonly defects: Readonly<Record<string, 'absent' | 'struck'>>;
  /** Handles of breakers and residual devices by name. */
  readonly devices: Readonly<Record<string, 'closed' | 'tripped'>>;
  /** People by name; `released` is one who touched and has let go. */
  readonly people: Readonly<Record<string, 'away' | 'touching' | 'released'>>;
}

/** One device during one interval. */
export interface DeviceMoment {
  readonly device: string;
  readonly state: 'closed' | 'open' | 'warning' | 'jammed' | 'not fitted';
  /** Largest pole, A r.m.s. */
  readonly amperes: number;
  /** What a residual device sees: the magnitude of the phasor sum, A; absent for breakers. */
  readonly residual_A?: number;
  /** What a device that sends something out itself reads, Ω: a GFCI the loop of a grounded neutral, a monitor the insulation. */
  readonly reads_ohm?: number;
  /** Outlook from the start of this interval (of 0 s in the first). A jammed device keeps the outlook it would have if it
   *  worked, one that is not fitted the outlook it would have if it were, at 0 s once that is overdue; an open one has region `none`. */
  readonly operation: Operation;
}

/** One person during one interval; amperes and volts r.m.s. Everything is zero while nothing is touched. */
export interface PersonMoment {
  readonly person: string;
  readonly touching: readonly Limb[];
  /** Largest open-circuit difference between the contacts, V: what a voltmeter finds before the person touches. */
  readonly prospective_V: number;
  /** Largest difference across the skin and body while touching, V. */
  readonly touch_V: number;
  readonly limbs_A: Readonly<Partial<Record<Limb, number>>>;
  /** Current of the limb that carries most, A. */
  readonly body_A: number;
  /** Left-hand-to-feet equivalent, A (IEC 60479-1 heart-current factor). */
  readonly heart_A: number;
  readonly heartFactor: number;
  readonly path: string;
  /** Zone at the end of this interval, for the whole exposure so far. */
  readonly zone: Zone;
  /** Time with a heart current above perception by the end of this interval, s; Infinity when it never ends. */
  readonly exposure_s: number;
  /** Whether the hand that carries most can be opened at will. */
  readonly letGo: boolean;
  /** Up to here nothing is felt at this frequency, A. */
  readonly perception_A: number;
  readonly contacts: readonly Contact[];
}

/** What closing the first fault in force changes (superposition; people frozen at their solved ohms). */
export interface FaultShare {
  readonly condition: string;
  readonly branch: number;
  /** Through the fault, from → to of its branch. */
  readonly amperes: Complex;
  /** Difference of every potential and current between the fault closed and the fault away. */
  readonly change: Solution;
}

/** The network at one multiple of its frequency. */
export interface Harmonic {
  readonly order: number;
  readonly solution: Solution;
}

/** A stretch of time in which nothing changes: one snapshot, one solution. */
export interface Interval {
  readonly start_s: number;
  /** Infinity for the last one; the start itself where two things happen at the same moment. */
  readonly end_s: number;
  readonly because: Happening;
  readonly snapshot: ScenarioSnapshot;
  /** As they are in this interval: a fault that has not struck and a hand that has let go read as the first option. */
  readonly conditions: Conditions;
  readonly values: Values;
  readonly solution: Solution;
  readonly devices: readonly DeviceMoment[];
  readonly people: readonly PersonMoment[];
  /** In ascending order; absent where nothing but the installation's own frequency flows. People are looked at at that alone. */
  readonly harmonics?: readonly Harmonic[];
  /** Absent while no insulation fault is closed. */
  readonly fault?: FaultShare;
}

/** A whole run: intervals that tile the time from −1 s (standing for "long before") to Infinity. */
export interface Timeline {
  readonly build: Build;
  /** As they were asked for. */
  readonly conditions: Conditions;
  readonly tolerance: Tolerance;
  readonly intervals: readonly Interval[];
  /** Events later than this are not looked for, s. */
  readonly horizon_s: number;
}

/** The interval that holds this moment, s; before the first one the first, after all of them the last. */
export function at(timeline: Timeline, time_s: number): Interval {
  let found = timeline.intervals[0];
  for (const interval of timeline.intervals) if (interval.start_s <= time_s) found = interval;
  if (found === undefined) throw new RangeError('at: a timeline has at least one interval');
  return found;
}
