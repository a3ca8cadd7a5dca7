/** Where a person touches; `feet` is both feet together on one floor. */
export type Limb = 'right hand' | 'left hand' | 'feet';

/** State of the skin at a contact. */
export type Skin = 'dry' | 'water-wet' | 'salt-wet';

/** A person as the impedance tables see one: the share of people whose impedance is not above this, and the skin. */
export interface Body {
  readonly percentile: 5 | 50 | 95;
  readonly skin: Skin;
}

/** One contact. `outside_ohm` lies between the skin and the thing touched (gloves; shoes, both feet in parallel);
 *  `Infinity` means no contact. `skin` overrides the person's, as for one wet hand. */
export interface Contact {
  readonly limb: Limb;
  readonly outside_ohm: number;
  readonly skin?: Skin;
}
