/** What a current does to a person, and what a person does to a current. */
export { dalzielFibrillation_A } from './fibrillation.ts';
export { heartCurrent_A } from './heart.ts';
export { totalImpedance_ohm } from './impedance.ts';
export { canLetGo, dalzielLetGo, LET_GO_A } from './letGo.ts';
export { limbs } from './person.ts';
export type { Area, Body, Contact, Limb, Size, Skin } from './person.ts';
export { population, quantile_A, together } from './population.ts';
export type { People, Tally, TouchedSource } from './population.ts';
export { roomForBody, solveBody } from './star.ts';
export type { SolvedBody } from './star.ts';
export {
  frequencyFactor,
  limitsAt,
  mildest,
  PERCEPTION_A,
  severity,
  zone,
  zoneChanges,
  zoneCurve,
  zones,
} from './zones.ts';
export type { Limits, Zone } from './zones.ts';
