export { run } from './scheduler.ts';
export { coldOutlook } from './coldOutlook.ts';
export { steadyState } from './steadyState.ts';
export { scenarioMachine } from './scenarioMachine.ts';
export { at } from './timeline.ts';
export type {
  DeviceMoment,
  FaultShare,
  Happening,
  Interval,
  PersonMoment,
  ScenarioSnapshot,
  Timeline,
} from './timeline.ts';
