export { footResistance_ohm } from './foot.ts';
export { rodResistance_ohm } from './rod.ts';
export { soils } from './soil.ts';
