import type { Terms } from './terms.ts';

/** The trade's words in North America. */
export const NORTH_AMERICA: Terms = {
  line: 'hot wire',
  protective: 'third wire',
  protectiveFormal: 'equipment grounding conductor (the third wire)',
  bond: 'bonding jumper',
  bondFormal: 'main bonding jumper',
  serviceNeutral: 'service neutral',
  rod: 'ground rod',
  electrode: 'grounding electrode',
  breaker: 'breaker',
  residual: 'GFCI',
  residualDevice: 'residual device',
  panel: 'service panel',
  outlet: 'outlet',
  earthBar: 'ground bar',
  drop: 'service drop',
  cord: 'cord',
  leg: 'leg',
  ground: 'ground',
  earthed: 'grounded',
  codes: 'the electrical code in force where you are',
  electrician: 'a licensed electrician',
};
