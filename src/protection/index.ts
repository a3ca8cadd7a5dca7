export { ADIABATIC_S, adiabaticFactor, adiabaticLimit_s, iceaFactor, meltingFactor, type Metal } from './adiabatic.ts';
export { peakFactor } from './asymmetry.ts';
export { breakerAfter, breakerOperation, type BreakerSettings } from './breaker.ts';
export {
  coldOperation,
  elementAfter,
  elementOperation,
  elementsOf,
  letThrough_A2s,
  overcurrentBand,
  type DeviceSettings,
  type OvercurrentSettings,
} from './device.ts';
export { smoothDcTolerated_A } from './iec61008.ts';
export { firstOf, type Operation, type Seen, type Tolerance } from './operation.ts';
export { mustActFrom_A, residualOperation, type ResidualSettings } from './residualDevice.ts';
export { selectivity } from './selectivity.ts';
