import type { SymbolName } from '../../depiction/index.ts';

/** How a symbol is drawn about its own middle, for a wire that runs from left to right; units of the sheet. */
export interface Drawing {
  /** Lines. */
  readonly d: string;
  /** Closed shapes with the sheet's colour inside, under the lines. */
  readonly body?: string;
  /** Shapes full of ink. */
  readonly ink?: string;
  /** A letter in it. */
  readonly letter?: string;
  /** Lines while its contact is open. */
  readonly open?: string;
  /** Half the length of wire that it takes the place of. */
  readonly gap: number;
}

const BOX = 'M-17 -8h34v16h-34z';
const ROUND = 'M-13 0a13 13 0 1 0 26 0a13 13 0 1 0 -26 0z';
const CONTACT = 'M-14 0L13 0';
const PARTED = 'M-14 0L11 -13';
const COIL = 'M-20 0a5 5 0 0 1 10 0a5 5 0 0 1 10 0a5 5 0 0 1 10 0a5 5 0 0 1 10 0';
const TOROID = 'M0 -15a6 15 0 1 0 0.01 0z';

/** IEC 60617, drawn from memory: boxes for resistance, a cross on the contact that breaks by itself. */
const IEC: Readonly<Record<SymbolName, Drawing>> = {
  winding: { d: COIL, gap: 20 },
  generator: { body: ROUND, d: ROUND, letter: 'G', gap: 13 },
  inverter: {
    body: 'M-15 -13h30v26h-30z',
    d: 'M-15 -13h30v26h-30zM-15 13L15 -13M-11 -8h8M-11 -4h8M2 8q2.5 -6 5 0t5 0',
    gap: 15,
  },
  source: { body: ROUND, d: `${ROUND}M-7 0q3.5 -8 7 0t7 0`, gap: 13 },
  cell: { d: 'M-4 -12v24M4 -6v12', gap: 4 },
  breaker: { d: `${CONTACT}M9 -4l8 8M17 -4l-8 8`, open: `${PARTED}M9 -4l8 8M17 -4l-8 8`, gap: 14 },
  fuse: { body: BOX, d: `${BOX}M-17 0h34`, gap: 17 },
  residual: { d: `${CONTACT}${TOROID}`, open: `${PARTED}${TOROID}`, gap: 14 },
  'residual breaker': {
    d: `${CONTACT}M9 -4l8 8M17 -4l-8 8${TOROID}`,
    open: `${PARTED}M9 -4l8 8M17 -4l-8 8${TOROID}`,
    gap: 14,
  },
  switch: { d: CONTACT, open: PARTED, gap: 14 },
  resistor: { body: BOX, d: BOX, gap: 17 },
  load: { body: BOX, d: BOX, gap: 17 },
  lamp: { body: ROUND, d: `${ROUND}M-9 -9L9 9M9 -9L-9 9`, gap: 13 },
  motor: { body: ROUND, d: ROUND, letter: 'M', gap: 13 },
  capacitor: { d: 'M-4 -11v22M4 -11v22', gap: 4 },
  meter: { body: 'M-14 -11h28v22h-28z', d: 'M-14 -11h28v22h-28zM-14 -5h28', gap: 14 },
  monitor: { body: 'M-16 -12h32v24h-32z', d: 'M-16 -12h32v24h-32z', letter: 'Ω', gap: 16 },
  link: {
    body: 'M-13 -5h26v10h-26z',
    d: 'M-13 -5h26v10h-26z',
    ink: 'M-10 0a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0zM5 0a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0z',
    gap: 13,
  },
  fault: { d: 'M-14 0L-3 -7L1 6L13 0M6 -4L13 0L8 6', gap: 14 },
  body: { body: BOX, d: `${BOX}M-6 0a6 5 0 0 1 12 0M-3 -4a3 3 0 1 1 6 0`, gap: 17 },
  current: { body: ROUND, d: `${ROUND}M0 -13v26`, gap: 13 },
  electrode: { d: 'M0 0v10M-15 10h30M-9.5 16h19M-4 22h8', gap: 0 },
  floor: { d: 'M-34 0h68M-28 0l-8 9M-14 0l-8 9M0 0l-8 9M14 0l-8 9M28 0l-8 9', gap: 0 },
  earth: { d: 'M0 0v10M-15 10h30M-9.5 16h19M-4 22h8', gap: 0 },
};

/** IEEE 315, drawn from memory: zigzag for resistance, an arc for the breaker; all else is as in IEC 60617. */
const NORTH_AMERICA: Readonly<Record<SymbolName, Drawing>> = {
  ...IEC,
  breaker: {
    d: 'M-14 0m-3 0a3 3 0 1 0 6 0a3 3 0 1 0 -6 0M14 0m-3 0a3 3 0 1 0 6 0a3 3 0 1 0 -6 0M-13 -5Q0 -15 13 -5',
    open: 'M-14 0m-3 0a3 3 0 1 0 6 0a3 3 0 1 0 -6 0M14 0m-3 0a3 3 0 1 0 6 0a3 3 0 1 0 -6 0M-13 -13Q0 -23 13 -13',
    gap: 11,
  },
  fuse: { d: 'M-18 0q9 -12 18 0t18 0', gap: 18 },
  residual: { d: `M-13 -5Q0 -15 13 -5M-17 0h34${TOROID}`, open: `M-13 -12Q0 -22 13 -12${TOROID}`, gap: 14 },
  'residual breaker': { d: `M-13 -5Q0 -15 13 -5M-17 0h34${TOROID}`, open: `M-13 -12Q0 -22 13 -12${TOROID}`, gap: 14 },
  resistor: { d: 'M-18 0l3 -8l6 16l6 -16l6 16l6 -16l6 16l3 -8', gap: 18 },
  load: { d: 'M-18 0l3 -8l6 16l6 -16l6 16l6 -16l6 16l3 -8', gap: 18 },
  capacitor: { d: 'M-4 -11v22M8 -11q-8 11 0 22', gap: 4 },
};

/** The symbols of a region's standard. */
export function symbolsOf(region: 'north-america' | 'iec'): Readonly<Record<SymbolName, Drawing>> {
  return region === 'iec' ? IEC : NORTH_AMERICA;
}
