export { footResistance_ohm, standingResistance_ohm } from './foot.ts';
export { soils } from './soil.ts';
export { inSeason, type Ground } from './ground.ts';
export { seasonFactors } from './season.ts';
/** Electrodes by published formulas in even soil, and as wires for the numeric method. */
export { encasedRodResistance_ohm, rodLoading_A, rodResistance_ohm, rodWires } from './rod.ts';
export { mutualResistance_ohm, rodsResistance_ohm, rodsWires, type Arrangement } from './rods.ts';
export { stripResistance_ohm, stripWires, wireResistance_ohm } from './strip.ts';
export { ringResistance_ohm, ringWires } from './ring.ts';
export { plateResistance_ohm, plateWires } from './plate.ts';
export { gridWire_m, gridWires, laurentNiemann_ohm, schwarz_ohm, sverak_ohm, type Grid } from './grid.ts';
/** The numeric method, in even and two-layer soil. */
export { bury, buriedResistance_ohm, transfer_ohm, type Buried, type Wires } from './buried.ts';
export { moved } from './segment.ts';
export { isPassive } from './symmetric.ts';
/** What stands on the surface, and what IEEE Std 80 tolerates there. */
export {
  hemisphereResistance_ohm,
  pinPotential_ohm,
  surfacePotential_V,
  surfaceProfile,
  type ProfilePoint,
} from './surface.ts';
export { marginPercent, surfaceDerating, tolerableStep_V, tolerableTouch_V } from './tolerable.ts';
/** Instruments: what they read and what is so. */
export { fallCurve, fallOfPotential, SIXTY_TWO_PERCENT } from './fallOfPotential.ts';
export { clampReading } from './clampMeter.ts';
export { wenner, wennerReading_ohm, wennerResistivity_ohm_m } from './wenner.ts';
