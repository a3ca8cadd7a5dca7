/** The run as charts: where the volts are spent, when a breaker opens, what a current does to a body. */
export { BreakerChart, sampleBand } from './BreakerChart.tsx';
export type { LogAxis } from './LogChart.tsx';
export { ProfileChart } from './ProfileChart.tsx';
export { ZoneChart } from './ZoneChart.tsx';
export { layOut } from './schematic/layOut.ts';
export { SchematicChart } from './schematic/SchematicChart.tsx';
