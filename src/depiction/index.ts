export { depict, picture } from './depict.ts';
export { enterDrawing } from './place.ts';
export type { DrawnPlace } from './place.ts';
export { stripPosition, stripTime } from './strip.ts';
export type {
  Box,
  Conductor,
  CurrentKind,
  Depiction,
  Drain,
  Halo,
  Hotspot,
  PartView,
  Picture,
  Point,
  Profile,
  Ribbon,
  Riser,
  Sounding,
  Strip,
} from './depiction.ts';
