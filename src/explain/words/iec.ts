import type { Terms } from './terms.ts';

/** The trade's words where the IEC standards hold. */
export const IEC: Terms = {
  line: 'line conductor',
  protective: 'protective conductor',
  protectiveFormal: 'protective conductor (PE)',
  bond: 'neutral–earth link',
  bondFormal: 'link between neutral and main earthing terminal',
  serviceNeutral: 'PEN conductor',
  rod: 'earth rod',
  electrode: 'earth electrode',
  breaker: 'circuit-breaker',
  residual: 'RCD',
  residualDevice: 'RCD',
  panel: 'distribution board',
  outlet: 'socket-outlet',
  earthBar: 'earth bar',
  drop: 'supply cable',
  cord: 'flex',
  leg: 'half of the supply',
  ground: 'earth',
  earthed: 'earthed',
  codes: 'the wiring rules in force where you are',
  electrician: 'a qualified electrician',
};
