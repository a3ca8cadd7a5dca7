import type { Limb, Zone } from '../body/index.ts';
import type { Operation } from '../protection/index.ts';

/** What kind of road home a current takes; decides its form and colour in a picture. */
export type WayKind = 'protective' | 'neutral' | 'soil' | 'pipe' | 'person' | 'load' | 'other';

/** Why a device that stays shut does so. */
export type ShutBecause =
  'below-rating' | 'too-late' | 'jammed' | 'not-fitted' | 'balanced' | 'below-threshold' | 'may-not';

/** A fact about one run, with its values: amperes and volts r.m.s., seconds from the moment the fault strikes.
 *  Words are made from findings and from nothing else. */
export type Finding =
  | { readonly kind: 'everything-normal'; readonly at_s: number; readonly source_A: number }
  | { readonly kind: 'load-runs-on'; readonly at_s: number; readonly part: string; readonly amperes: number }
  | {
      readonly kind: 'normal-current';
      readonly at_s: number;
      readonly neutral_A: number;
      /** current on protective conductors, soil and pipes together, counted where it parts from the neutral */
      readonly stray_A: number;
    }
  | {
      readonly kind: 'stray-current';
      readonly at_s: number;
      readonly way: WayKind;
      readonly part: string;
      readonly amperes: number;
      readonly case_V: number;
    }
  | {
      readonly kind: 'leg-volts';
      readonly at_s: number;
      readonly a_V: number;
      readonly b_V: number;
      readonly nominal_V: number;
    }
  | {
      readonly kind: 'fault-current';
      readonly at_s: number;
      readonly condition: string;
      readonly option: string;
      readonly amperes: number;
      readonly loop_ohm: number;
      readonly source_V: number;
    }
  | { readonly kind: 'no-fault-current'; readonly at_s: number; readonly condition: string; readonly option: string }
  | {
      readonly kind: 'way-home';
      readonly at_s: number;
      readonly way: WayKind;
      readonly via: readonly string[];
      readonly amperes: number;
      readonly total_A: number;
    }
  | { readonly kind: 'metallic-way'; readonly at_s: number; readonly present: boolean; readonly share: number }
  | {
      readonly kind: 'device-sees';
      readonly at_s: number;
      readonly device: string;
      readonly amperes: number;
      readonly residual_A?: number;
      readonly rating_A: number;
      readonly operation: Operation;
    }
  | {
      readonly kind: 'device-operated';
      readonly at_s: number;
      readonly device: string;
      readonly amperes: number;
      readonly rating_A: number;
      readonly operation: Operation;
    }
  | {
      readonly kind: 'device-stays-shut';
      readonly at_s: number;
      readonly device: string;
      readonly amperes: number;
      readonly rating_A: number;
      readonly because: ShutBecause;
      readonly operation: Operation;
    }
  | {
      readonly kind: 'case-volts';
      readonly at_s: number;
      readonly part: string;
      readonly volts: number;
      /** what it was before the fault */
      readonly before_V: number;
      readonly until_s: number;
    }
  | {
      readonly kind: 'person-feels';
      readonly at_s: number;
      readonly person: string;
      readonly touching: readonly Limb[];
      readonly prospective_V: number;
      readonly touch_V: number;
      readonly body_A: number;
      readonly heart_A: number;
      readonly path: string;
      readonly zone: Zone;
      readonly letGo: boolean;
      readonly until_s: number;
    }
  | { readonly kind: 'person-released'; readonly at_s: number; readonly person: string; readonly body_A: number }
  | {
      readonly kind: 'person-held';
      readonly at_s: number;
      readonly person: string;
      readonly body_A: number;
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
      readonly kind: 'person-spared';
      readonly at_s: number;
      readonly person: string;
      readonly because: 'away' | 'no-current' | 'imperceptible';
    }
  | {
      readonly kind: 'disconnection';
      readonly at_s: number;
      readonly opened_s: number;
      readonly limit_s: number;
      readonly nominal_V: number;
    }
  | {
      readonly kind: 'made-safe-by';
      readonly at_s: number;
      readonly condition: string;
      readonly option: string;
      readonly device: string | null;
      readonly opened_s: number;
    }
  | { readonly kind: 'none-alone'; readonly at_s: number; readonly tried: number };
