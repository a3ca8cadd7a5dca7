export { breakerAfter, breakerBand, breakerOperation } from './breaker.ts';
export type { BreakerSettings } from './breaker.ts';
export type { Operation, Tolerance } from './operation.ts';
export { residualOperation } from './residualDevice.ts';
export type { ResidualSettings } from './residualDevice.ts';
