import type { Limb, Zone } from '../body/index.ts';
import type { Operation } from '../protection/index.ts';

/** What kind of road home a current takes; decides its form and colour in a picture. */
export type WayKind = 'protective' | 'neutral' | 'soil' | 'pipe' | 'person' | 'load' | 'other';

/** Why a device that stays shut does so. */
export type ShutBecause =
  'below-rating' | 'may-not' | 'too-late' | 'jammed' | 'not-fitted' | 'balanced' | 'below-threshold';

/** A device at one moment: what it sees and what it makes of it. `rating_A` of a residual device is its threshold. */
export interface DeviceFact {
  readonly at_s: number;
  readonly device: string;
  readonly amperes: number;
  readonly rating_A: number;
  /** what it misses, A; only where that is what it acts on, or would */
  readonly residual_A?: number;
  /** what a device that sends something out itself reads, Ω */
  readonly reads_ohm?: number;
  readonly operation: Operation;
}

/** What is left to be put right where nobody is in danger of a shock. */
export interface Remaining {
  /** conditions of the wiring and the devices that are not as they should be */
  readonly left: readonly { readonly condition: string; readonly option: string }[];
  /** a device set larger than its circuit is built for, A */
  readonly oversized?: { readonly device: string; readonly rating_A: number; readonly built_A: number };
  /** a fault current that outlasts the disconnection time; absent where it does not */
  readonly flow?: {
    readonly amperes: number;
    /** in the fault itself, I²R */
    readonly heat_W: number;
    /** when it ends; Infinity = never */
    readonly until_s: number;
    readonly limit_s: number;
  };
}

/** A fact about one run, with its values: amperes and volts r.m.s.; seconds from the moment the fault strikes or the hand
 *  touches, before it −1. Words are made from findings and from nothing else. */
export type Finding =
  | {
      readonly kind: 'working';
      readonly at_s: number;
      /** from the winding that gives most */
      readonly source_A: number;
      /** from the other winding of a split supply, 0 where there is none */
      readonly other_A: number;
      /** true where the wiring itself closes a circuit that no load is in */
      readonly shorted: boolean;
      /** `both`: across both halves of a split supply */
      readonly loads: readonly { readonly part: string; readonly amperes: number; readonly both: boolean }[];
    }
  | {
      readonly kind: 'normal-state';
      readonly at_s: number;
      readonly neutral_A: number;
      /** on protective conductors, soil, pipes and people together */
      readonly stray_A: number;
    }
  | {
      readonly kind: 'stray-current';
      readonly at_s: number;
      readonly way: WayKind;
      /** the pipe, where it is one */
      readonly part?: string;
      readonly amperes: number;
    }
  | {
      readonly kind: 'leg-volts';
      readonly at_s: number;
      /** of the two halves of the supply, at the panel */
      readonly low_V: number;
      readonly high_V: number;
      readonly nominal_V: number;
    }
  | {
      readonly kind: 'load-volts';
      readonly at_s: number;
      readonly part: string;
      readonly volts: number;
      /** what it is built for */
      readonly nominal_V: number;
    }
  | {
      readonly kind: 'leakage';
      readonly at_s: number;
      /** through the capacitance of filters, cables and windings together */
      readonly total_A: number;
      readonly parts: readonly { readonly part: string; readonly amperes: number }[];
    }
  | {
      readonly kind: 'neutral-harmonics';
      readonly at_s: number;
      /** the part whose neutral it is */
      readonly part: string;
      /** r.m.s. with all harmonics */
      readonly amperes: number;
      /** of it at multiples of the frequency, r.m.s. */
      readonly harmonic_A: number;
      /** in the line beside it that carries most, r.m.s. */
      readonly line_A: number;
    }
  | { readonly kind: 'polarity-reversed'; readonly at_s: number; readonly condition: string }
  | {
      readonly kind: 'fault-current';
      readonly at_s: number;
      readonly condition: string;
      readonly option: string;
      readonly amperes: number;
      /** what drives it; absent where the fault only diverts a working current */
      readonly source_V?: number;
      readonly loop_ohm?: number;
    }
  | {
      readonly kind: 'no-fault-current';
      readonly at_s: number;
      readonly condition: string;
      readonly option: string;
      readonly amperes: number;
      /** what stood across it before */
      readonly volts: number;
      /** whether the fault makes metal live */
      readonly live: boolean;
    }
  | {
      readonly kind: 'way-home';
      readonly at_s: number;
      /** the way's name in the ledger */
      readonly name: string;
      readonly way: WayKind;
      readonly by: readonly string[];
      readonly stations: readonly string[];
      readonly amperes: number;
      readonly total_A: number;
    }
  | {
      readonly kind: 'fault-state';
      readonly at_s: number;
      /** share of the fault current with metal all the way home, 0 to 1; absent if none flows */ readonly metal?: number;
    }
  | ({ readonly kind: 'device-sees' } & DeviceFact)
  | ({
      readonly kind: 'device-operated';
      /** closed devices of which a fast one could have been before a slow one of this, and up to what current it is sure that
       *  this one opens alone, A; 0 = at none */
      readonly others: readonly { readonly device: string; readonly alone_A: number }[];
      /** I²t that devices of its kind let through at this current, from cold, A²s; only of one that counts amperes */
      readonly letsThrough?: { readonly least_A2s: number; readonly most_A2s: number };
    } & DeviceFact)
  | {
      readonly kind: 'device-warned';
      readonly at_s: number;
      readonly device: string;
      readonly reads_ohm: number;
      readonly threshold_ohm: number;
    }
  | {
      readonly kind: 'conductor-limit';
      readonly at_s: number;
      readonly part: string;
      readonly conductor: 'line' | 'neutral' | 'protective';
      readonly amperes: number;
      /** I²t it stands until its insulation is spent */
      readonly withstand_A2s: number;
      /** when the metal itself would be molten; Infinity = not while this can be told */
      readonly melts_s: number;
    }
  | ({ readonly kind: 'device-stays-shut'; readonly because: ShutBecause } & DeviceFact)
  | {
      readonly kind: 'live-metal';
      readonly at_s: number;
      readonly part: string;
      /** the case of an appliance, or a metal thing itself */
      readonly what: 'case' | 'metal';
      /** above the floor (or remote earth, where there is no floor) */
      readonly volts: number;
      /** when it is dead again; Infinity = never */
      readonly until_s: number;
    }
  | {
      readonly kind: 'person-feels';
      readonly at_s: number;
      readonly person: string;
      readonly touching: readonly Limb[];
      /** who is taken hold of */ readonly holding?: string;
      readonly prospective_V: number;
      readonly touch_V: number;
      /** the two places between which that is, where there are more */
      readonly across?: readonly [Limb, Limb];
      readonly body_A: number;
      readonly heart_A: number;
      readonly zone: Zone;
      readonly letGo: boolean;
      readonly until_s: number;
    }
  | {
      readonly kind: 'person-spared';
      readonly at_s: number;
      readonly person: string;
      readonly because: 'away' | 'no-current' | 'imperceptible';
      readonly body_A: number;
      /** from here people perceive it, A */
      readonly perception_A?: number;
    }
  | { readonly kind: 'person-released'; readonly at_s: number; readonly person: string }
  | {
      readonly kind: 'person-held';
      readonly at_s: number;
      readonly person: string;
      readonly hand_A: number;
      /** up to here everybody can let go, A */
      readonly letGo_A: number;
      readonly until_s: number;
    }
  | {
      readonly kind: 'zone-reached';
      readonly at_s: number;
      readonly person: string;
      readonly zone: Zone;
      readonly heart_A: number;
    }
  | {
      readonly kind: 'load-runs-on';
      readonly at_s: number;
      readonly part: string;
      readonly amperes: number;
      /** of the volts it is built for, 1 = all of them */
      readonly share: number;
    }
  | {
      readonly kind: 'disconnection';
      readonly at_s: number;
      /** when the metal was dead; Infinity = never */
      readonly opened_s: number;
      readonly limit_s: number;
      readonly nominal_V: number;
      /** whose times hold */
      readonly earthing: 'TN' | 'TT' | 'IT';
    }
  | ({
      readonly kind: 'made-safe-by';
      readonly at_s: number;
      readonly condition: string;
      readonly option: string;
      /** who opens then, and when; absent where nothing needs to */
      readonly device?: string;
      readonly opened_s?: number;
      /** who carried a current before */
      readonly person?: string;
    } & Remaining)
  | ({ readonly kind: 'already-safe'; readonly at_s: number } & Remaining)
  | {
      readonly kind: 'none-alone';
      readonly at_s: number;
      readonly tried: number;
      /** whether all of them together are enough */
      readonly together: boolean;
    };

/** One kind of finding. */
export type FindingOf<K extends Finding['kind']> = Extract<Finding, { readonly kind: K }>;
