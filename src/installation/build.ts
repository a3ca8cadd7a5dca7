import type { Body, Contact, Limb, Limits } from '../body/index.ts';
import type { Network, Values } from '../electrics/index.ts';
import type { DeviceSettings } from '../protection/index.ts';
import type { Conditions } from './conditions.ts';
import type { Installation } from './installation.ts';
import type { DeviceKind, ConductorMetal } from './plan.ts';
import type { Medium, Role } from './role.ts';
import type { SupplyInfo } from './supplies.ts';
import type { TerminalName } from './terminal.ts';

/** The real thing behind a branch of the network; parallel to `network.branches`.
 *  `part` is the part it belongs to; for a join the part of its first terminal, for a condition's own branch the condition's name. */
export interface BranchInfo {
  readonly name: string;
  readonly part: string;
  readonly role: Role;
  readonly medium: Medium;
  /** The condition that owns this branch (fault, link, …), if one does. */
  readonly condition?: string;
  /** Of a conductor by size: its metal and section. */
  readonly metal?: ConductorMetal;
}

/** A breaker, fuse, residual device or monitor. */
export interface DeviceInfo {
  readonly name: string;
  readonly kind: DeviceKind;
  /** Branches that open when it operates; a breaker measures the largest of them. A monitor has none. */
  readonly poles: readonly number[];
  /** Residual current = Σ sign · current of branch. Only where something passes through a core. */
  readonly residual?: readonly { readonly branch: number; readonly sign: 1 | -1 }[];
  /** The branch through which a monitor measures the insulation of the system. */
  readonly monitors?: number;
  settings(conditions: Conditions): DeviceSettings;
  jammed(conditions: Conditions): boolean;
  fitted(conditions: Conditions): boolean;
}

/** A place a person touches with: the branch to the trunk, the node of the thing touched, and whether the branch counts into the body. */
export interface PersonLimb {
  readonly limb: Limb;
  readonly branch: number;
  readonly node: number;
  readonly into: 1 | -1;
  /** Whether the thing touched is the hand of somebody else who takes hold. */
  readonly held: boolean;
}

/** One person: a trunk node with one branch for each limb that can touch something. */
export interface PersonInfo {
  readonly name: string;
  readonly trunk: number;
  readonly limbs: readonly PersonLimb[];
  /** The boundaries of the effects of current that hold for this person at this frequency. */
  readonly limits: Limits;
  /** Limbs in touch under these conditions, with what is worn outside the skin. */
  contacts(conditions: Conditions): { readonly body: Body; readonly contacts: readonly Contact[] };
}

/** An installation compiled once: its structure never changes while conditions do. */
export interface Build {
  readonly installation: Installation;
  readonly network: Network;
  /** Parallel to `network.branches`. */
  readonly branches: readonly BranchInfo[];
  /** Winding and source branches. */
  readonly sources: readonly number[];
  /** Sources that fold back, and the most each gives, A. */
  readonly limits: readonly { readonly branch: number; readonly limit_A: number }[];
  /** Multiples of the frequency, above the first, at which anything flows; ascending. */
  readonly harmonics: readonly number[];
  /** In the order of the file. */
  readonly supplies: readonly SupplyInfo[];
  readonly devices: readonly DeviceInfo[];
  readonly people: readonly PersonInfo[];
  /** Branches from metal into the soil. */
  readonly electrodes: readonly number[];
  /** Pieces of the installation that no conductor joins to a source, each by its terminals: a finding, not an error. */
  readonly unreached: readonly (readonly TerminalName[])[];
  /** The terminal at the return of each source that only insulation and people tie to earth: its volts to earth mean little. */
  readonly unearthed: readonly TerminalName[];
  /** Index of a branch. @throws RangeError naming what is unknown */
  branch(name: string): number;
  /** Index of the node of a terminal; `earth` is 0. @throws RangeError naming what is unknown */
  node(terminal: TerminalName): number;
  /** Values of every branch.
   *  @param open names of devices whose contacts are open now
   *  @param limb_ohm resistances put back for limbs, by branch index; a limb without one is 10 GΩ (not in touch)
   *  @param order 1 unless said; at a harmonic no EMF drives, and reactances are those of its frequency
   *  @throws RangeError naming an unknown condition or option */
  values(
    conditions: Conditions,
    open: ReadonlySet<string>,
    limb_ohm?: ReadonlyMap<number, number>,
    order?: number,
  ): Values;
}
