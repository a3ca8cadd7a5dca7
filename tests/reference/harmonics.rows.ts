import { asPrinted, within } from './asPrinted.ts';
import type { Published } from './published.ts';
import { typed } from './typed.ts';

const INPUTS = 'power-quality paper, inputs seen; outputs by I = √Σ and I_N = 3·√Σ of the triplens, by hand';

/** Harmonics: each order solved by itself, then their root of the sum of squares. */
export const rows: readonly Published[] = [
  asPrinted(
    'currents of 100, 50, 20, 10, 8, 4 and 2 A at odd orders are 114.4 A in each line',
    INPUTS,
    'A',
    '114.4',
    () => typed('harmonic-neutral').amperes('feeder.one'),
  ),
  asPrinted('… and 151.9 A in the neutral of three equal phases', INPUTS, 'A', '151.9', () =>
    typed('harmonic-neutral').amperes('feeder.neutral'),
  ),
  within(
    'a line current of third harmonic alone returns as √3 and more: three times over',
    'balanced wye I_N = 3·√(I₃² + I₉² + …), seen',
    'A',
    30,
    1e-4,
    'exact but for the insulation',
    () => typed('third-harmonic').amperes('feeder.neutral'),
  ),
  within(
    'a line of 39 A with 50 % third harmonic sends 58.5 A into the neutral',
    'IEC 60364-5-52:2009 annex E, from memory (0.5 · 39 · 3)',
    'A',
    58.5,
    1e-3,
    'printed to three figures',
    () => typed('annex-e').amperes('feeder.neutral'),
  ),
  within(
    '… and one with 40 % 46.8 A',
    'IEC 60364-5-52:2009 annex E, from memory (0.4 · 39 · 3)',
    'A',
    46.8,
    1e-3,
    'printed to three figures',
    () => typed('annex-e-40').amperes('feeder.neutral'),
  ),
];
