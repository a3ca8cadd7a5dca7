import type { CurrentKind } from '../depiction/index.ts';
import type { Theme } from './scene.ts';

/** The colours that the moving parts of the picture wear. */
export interface Ink {
  readonly current: Readonly<Record<CurrentKind, string>>;
  /** What points the way on a ribbon, against its colour. */
  readonly chevron: Readonly<Record<CurrentKind, string>>;
  /** Light core of the ribbon through a person, and its edge. */
  readonly core: string;
  readonly edge: string;
  /** Edge that a ribbon wears over soil, brick or metal. */
  readonly casing: string;
  readonly hatch: string;
  readonly hatchPaper: string;
  /** One hard shadow under every sheet, with its strength. */
  readonly shadow: string;
  readonly shadowAlpha: number;
  readonly spark: string;
  readonly sparkEdge: string;
  readonly glow: string;
  readonly backdrop: string;
  readonly grain: number;
}

/** Colours of the art direction; every current reaches 4.5:1 against a sheet of its theme. */
export const INK: Readonly<Record<Theme, Ink>> = {
  day: {
    current: { load: '#1D6F8A', fault: '#CF3A1B', stray: '#7446A8', person: '#A3134F' },
    chevron: { load: '#F3FAFB', fault: '#FFF3E6', stray: '#F6F0FB', person: '#A3134F' },
    core: '#F6D3E0',
    edge: '#1F2430',
    casing: '#FFF3E6',
    hatch: '#B3261E',
    hatchPaper: '#F4C9BD',
    shadow: '#1F2430',
    shadowAlpha: 0.16,
    spark: '#FFD34D',
    sparkEdge: '#B3261E',
    glow: '#FFE9A8',
    backdrop: '#D6E6EA',
    grain: 0.05,
  },
  dark: {
    current: { load: '#5FB8D3', fault: '#FF6A45', stray: '#B58AF0', person: '#FF5C9E' },
    chevron: { load: '#10242C', fault: '#331108', stray: '#22143A', person: '#B3165F' },
    core: '#FFE3EF',
    edge: '#0E1117',
    casing: '#171A21',
    hatch: '#FF8B73',
    hatchPaper: '#4A2320',
    shadow: '#000000',
    shadowAlpha: 0.3,
    spark: '#FFD34D',
    sparkEdge: '#FF6A45',
    glow: '#FFDF8E',
    backdrop: '#171A21',
    grain: 0.06,
  },
};

/** Insulation colours. North America: common practice (white neutral and green protective by NEC 2023 200.6, 250.119;
 *  black and red for the two legs, black, red and blue for the three phases of 208Y/120 V are custom).
 *  IEC 60446 / IEC 60445:2021: blue neutral, green-and-yellow protective, brown, black and grey line. */
export const INSULATION = {
  'north-america': {
    line: '#23262C',
    'line-b': '#8C2F2A',
    'line-c': '#2F5687',
    neutral: '#F5F2EA',
    protective: '#3F8F4F',
    bare: '#B9774A',
    stripe: null,
  },
  iec: {
    line: '#7B4A2A',
    'line-b': '#23262C',
    'line-c': '#8B9097',
    neutral: '#4A8FC7',
    protective: '#4C9B4F',
    bare: '#B9774A',
    stripe: '#F2D23C',
  },
} as const;
