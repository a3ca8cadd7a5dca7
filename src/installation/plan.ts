import type { z } from 'zod';
import type { Area, Limb, Size, Skin } from '../body/index.ts';
import type { DeviceSettings } from '../protection/index.ts';
import type { Medium, Role } from './role.ts';
import type { TerminalName } from './terminal.ts';

/** Which world of the trade: vocabulary, colours, devices, limits. */
export type Region = 'north-america' | 'iec';

/** What every part is planned in. */
export interface Surroundings {
  readonly region: Region;
  readonly frequency_Hz: number;
}

/** One two-terminal branch a part puts into the network. Current counts from → to; an EMF drives it out at `to`. */
export interface PlannedBranch {
  readonly name: string;
  readonly from: TerminalName;
  readonly to: TerminalName;
  readonly role: Role;
  readonly medium: Medium;
  readonly resistance_ohm: number;
  readonly reactance_ohm: number;
  readonly emf_V?: number;
  readonly angle_rad?: number;
  /** Of a source that folds back: it never gives more than this. */
  readonly limit_A?: number;
  /** What the conductor is made of, where a table says so: what its heat while a fault lasts depends on. */
  readonly metal?: ConductorMetal;
  /** A source of current beside the impedance, from → to: A r.m.s. at each order of the frequency. */
  readonly injection?: readonly { readonly order: number; readonly current_A: number; readonly angle_rad: number }[];
}

/** The metal of a conductor and its section. */
export interface ConductorMetal {
  readonly of: 'Cu' | 'Al' | 'steel';
  readonly area_mm2: number;
}

/** Branches that share a core: `resistance_ohm` and `reactance_ohm` are n×n, row by row, in the order of `branches`. */
export interface PlannedWinding {
  readonly branches: readonly string[];
  readonly resistance_ohm: readonly number[];
  readonly reactance_ohm: readonly number[];
}

/** Windings on one core of iron: volts go as the turns and turns times amperes add up to nothing; each branch keeps its own leakage. */
export interface PlannedCore {
  readonly branches: readonly string[];
  readonly turns: readonly number[];
}

/** What a part supplies: its lines with their no-load volts to the neutral, or to the middle of a delta, which has none. */
export interface PlannedSupply {
  readonly phases: 1 | 2 | 3;
  readonly neutral?: TerminalName;
  readonly lines: readonly { readonly terminal: TerminalName; readonly emf_V: number; readonly angle_rad: number }[];
}

/** The kinds of device, as the file calls them. */
export type DeviceKind =
  | 'breaker'
  | 'residual-device'
  | 'rcbo'
  | 'afci'
  | 'adjustable-breaker'
  | 'fuse'
  | 'device-by-points'
  | 'insulation-monitor';

/** A device whose `poles` open together; `residual` branches all count from supply to load. */
export interface PlannedDevice {
  readonly kind: DeviceKind;
  /** Empty for a device that only warns. */
  readonly poles: readonly string[];
  readonly residual?: readonly string[];
  /** The branch through which a monitor measures the insulation of the system. */
  readonly monitors?: string;
  readonly settings: DeviceSettings;
}

/** A place a person touches with: its branch, the thing at its far end, whether the branch counts into the body, and whether
 *  that thing is somebody else who takes hold. */
export interface PlannedLimb {
  readonly limb: Limb;
  readonly branch: string;
  readonly touches: TerminalName;
  readonly into: 1 | -1;
  readonly held?: boolean;
}

/** A person and the branches of the limbs; `touches` is the thing at the far end. */
export interface PlannedPerson {
  readonly percentile: 5 | 50 | 95;
  readonly skin: Skin;
  readonly area: Area;
  readonly size: Size;
  readonly trunk: TerminalName;
  readonly limbs: readonly PlannedLimb[];
}

/** All a part is to the network. */
export interface Plan {
  readonly branches: readonly PlannedBranch[];
  readonly winding?: PlannedWinding;
  readonly cores?: readonly PlannedCore[];
  readonly supply?: PlannedSupply;
  readonly device?: PlannedDevice;
  readonly person?: PlannedPerson;
  /** The branch that a running condition switches. */
  readonly load?: string;
}

/** A kind of part: what may be written about it, its terminals, and what it is electrically. */
export interface PartKind<P extends { readonly kind: string }> {
  readonly kind: P['kind'];
  readonly schema: z.ZodType<P>;
  /** True for what drives current. */
  readonly source?: boolean;
  /** Its terminals in words, for the JSON Schema. */
  readonly ends: string;
  /** Names after the dot. */
  terminals(part: P): readonly string[];
  /** Terminals of other parts it is fixed to (an impedance `between`, a person's hands). */
  touches?(part: P): readonly { readonly key: readonly (string | number)[]; readonly terminal: TerminalName }[];
  /** Terminals that carry its current and so must be joined to something. */
  mustJoin?(part: P): readonly string[];
  plan(name: string, part: P, surroundings: Surroundings): Plan;
}

/** What the insulation of a run of a core or a terminal lets through, Ω (typical of sound insulation, common practice,
 *  no source); capacitance is left out. */
export const INSULATION_OHM = 1e9;

/** An open contact, a gap, an insulation that holds, Ω (invented: large, yet a physical thing with a value). */
export const GAP_OHM = 1e9;

/** A limb that touches nothing, Ω (invented: larger than any insulation here). */
export const AWAY_OHM = 1e10;

/** A screwed joint as it should be, Ω (typical, common practice, no source). */
export const JOINT_OHM = 0.0005;

/** Below this a branch is a superconductor to the solver: every resistance is at least this, Ω. */
export const LEAST_OHM = 1e-5;

/** A branch of sound insulation from a terminal to earth. */
export function leakage(name: string, from: TerminalName, resistance_ohm: number = INSULATION_OHM): PlannedBranch {
  return { name, from, to: 'earth', role: 'insulation', medium: 'insulation', resistance_ohm, reactance_ohm: 0 };
}
