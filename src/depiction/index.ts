export { depict, picture } from './depict.ts';
export { enterDrawing } from './place.ts';
export type { DrawnPlace } from './place.ts';
export { planOf, type Graph } from './schematic/graph.ts';
export { schematic, type Schematic } from './schematic/schematic.ts';
export type { CardView } from './schematic/cards.ts';
export { sheetOf, type Laid, type Sheet } from './schematic/sheet.ts';
export type { SymbolName } from './schematic/symbolOf.ts';
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
