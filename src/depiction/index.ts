export { depict, picture } from './depict.ts';
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
