/** What a current does to a person, and what a person does to a current. */
export { dalzielFibrillation_A } from './fibrillation.ts';
export { heartCurrent_A } from './heart.ts';
export { totalImpedance_ohm } from './impedance.ts';
export { canLetGo, dalzielLetGo, LET_GO_A } from './letGo.ts';
export type { Body, Contact, Limb, Skin } from './person.ts';
export { solveBody } from './star.ts';
export type { SolvedBody } from './star.ts';
export { PERCEPTION_A, zone, zoneChanges, zoneCurve } from './zones.ts';
export type { Zone } from './zones.ts';
