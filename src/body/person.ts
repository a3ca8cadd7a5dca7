/** Where a person touches; `feet` is both feet together on one floor. */
export type Limb = 'right hand' | 'left hand' | 'feet' | 'right foot' | 'left foot' | 'seat' | 'chest' | 'back';

/** Every place a person can touch with, in the order they are told. */
export const limbs: readonly Limb[] = [
  'right hand',
  'left hand',
  'feet',
  'right foot',
  'left foot',
  'seat',
  'chest',
  'back',
];

/** State of the skin at a contact. */
export type Skin = 'dry' | 'water-wet' | 'salt-wet';

/** Area of a contact: large is a hand round a handle (order of 10 000 mm²), medium a few fingers (1 000 mm²), small a fingertip
 *  (100 mm²). IEC 60479-1, from memory. */
export type Area = 'large' | 'medium' | 'small';

/** Whose threshold of fibrillation counts: somebody of 50 kg or more, 40 kg, 20 kg. */
export type Size = 'adult' | 'small adult' | 'child';

/** A person as the impedance tables see one: the share of people whose impedance is not above this, and the skin. */
export interface Body {
  readonly percentile: 5 | 50 | 95;
  readonly skin: Skin;
  /** Of every contact; `large` if it is not said. */
  readonly area?: Area;
  /** Direct current, ripple-free, instead of 50/60 Hz. */
  readonly direct?: boolean;
}

/** One contact. `outside_ohm` lies between the skin and the thing touched (gloves; shoes, both feet in parallel);
 *  `Infinity` means no contact. `skin` and `area` override the person's, as for one wet hand. */
export interface Contact {
  readonly limb: Limb;
  readonly outside_ohm: number;
  readonly skin?: Skin;
  readonly area?: Area;
  /** True where somebody else takes hold: there the person touches nothing of their own will. */
  readonly held?: boolean;
}

/** How many equal limbs lead to the trunk from here, each with skin of its own: both feet are two, a place on the trunk is none. */
export function limbsTo(limb: Limb): 0 | 1 | 2 {
  if (limb === 'feet') return 2;
  return limb === 'seat' || limb === 'chest' || limb === 'back' ? 0 : 1;
}
