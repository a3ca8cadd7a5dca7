import { asPrinted, within } from './asPrinted.ts';
import type { Published } from './published.ts';
import { typed } from './typed.ts';

const JOINTS = 'joins of 10 µΩ, which the book leaves out';

const a = (what: string, source: string, printed: number, tolerance: number, because: string, computed: () => number) =>
  within(`${what}, by ohmward run`, source, 'A', printed, tolerance, because, computed);
const v = (what: string, source: string, printed: number, tolerance: number, because: string, computed: () => number) =>
  within(`${what}, by ohmward run`, source, 'V', printed, tolerance, because, computed);

/** Textbook problems as printed, typed into files and answered at the terminal. */
export const rows: readonly Published[] = [
  a(
    'a TN-C-S loop of 0.35 and 1.446 Ω passes 128 A',
    'worked example of the trade, seen second-hand',
    128,
    0.002,
    'printed to three figures',
    () => typed('tncs-loop').amperes('line touches the machine'),
  ),
  a(
    'TT with 10 and 20 Ω passes 7.7 A',
    'French electrical-installation handbook, from memory',
    7.7,
    0.005,
    'printed to two figures',
    () => typed('tt-handbook').amperes('line touches the machine'),
  ),
  v(
    '… and its machine stands at 153 V',
    'French electrical-installation handbook, from memory',
    153,
    0.003,
    'printed to three figures',
    () => typed('tt-handbook').volts('machine.metal'),
  ),
  a(
    'a first fault in IT with 1500 Ω in the neutral passes 153 mA',
    'French electrical-installation handbook, seen',
    0.153,
    0.003,
    'printed to three figures',
    () => typed('it-first-fault').amperes('earthing resistance'),
  ),
  a(
    'a first fault in a kilometre of unearthed network passes 217 mA',
    '1 µF/km as seen in the handbook, 3·U0·ωC by hand (older printing, 3500 Ω: 198 mA)',
    0.217,
    0.003,
    'printed to three figures',
    () => typed('it-capacitance').amperes('line touches the machine'),
  ),
  within(
    '1 µF of a kilometre of network has 3183 Ω at 50 Hz, by ohmward run',
    'X = 1/(2πfC), by hand',
    'Ω',
    3183,
    5e-4,
    'printed to four figures',
    () => {
      const fault = typed('it-capacitance');
      return fault.volts('network.two.load', 'network.one.load') / fault.amperes('network.two.capacitance');
    },
  ),
  a(
    'two faults in IT on 50 m of 35 mm² pass 3 111 A',
    'IEC handbook practice, ρ 0.0225 Ω·mm²/m, computed by hand',
    3111,
    0.002,
    JOINTS,
    () => typed('it-second-fault').amperes('line touches the first machine'),
  ),
  a(
    'a broken PEN sends 5.39 A of a 3 kW load through the electrode',
    'computed by hand',
    5.39,
    0.002,
    'printed to three figures',
    () => typed('broken-pen').amperes('house rod'),
  ),
  v('… and lifts the house to 107.9 V', 'computed by hand', 107.9, 0.001, 'printed to four figures', () =>
    typed('broken-pen').volts('main earth.metal'),
  ),
  a(
    'lamps of 100 and 200 W on a lost neutral take 1.111 A',
    'common example; outputs by hand',
    1.111,
    0.001,
    'printed to four figures',
    () => typed('open-neutral-lamps').amperes('small lamp'),
  ),
  v('… of which the small lamp gets 160 V', 'common example; outputs by hand', 160, 0.001, JOINTS, () =>
    typed('open-neutral-lamps').volts('small lamp.line', 'small lamp.neutral'),
  ),
  v('… and the large one 80 V', 'common example; outputs by hand', 80, 0.001, JOINTS, () =>
    typed('open-neutral-lamps').volts('large lamp.line', 'large lamp.neutral'),
  ),
  ...(
    [
      ['the 100 W lamp', 'phase one.plus', 340],
      ['the 1 kW heater', 'phase two.plus', 263.7],
      ['the 2 kW kettle', 'phase three.plus', 135.4],
    ] as const
  ).map(([load, plus, printed]) =>
    v(
      `without the neutral of its star ${load} gets ${printed} V`,
      'computed by hand, fixed resistances',
      printed,
      5e-4,
      'printed to four figures',
      () => typed('open-neutral-star').volts(plus, 'star point.metal'),
    ),
  ),
  v(
    '… because the star point moves by 122.1 V',
    'computed by hand, fixed resistances',
    122.1,
    5e-4,
    'printed to four figures',
    () => typed('open-neutral-star').volts('star point.metal', 'phase one.minus'),
  ),
  a(
    '… where the whole neutral carries 7.16 A',
    'computed by hand, fixed resistances',
    7.16,
    0.001,
    'printed to three figures',
    () => typed('open-neutral-star', 'neutral open=no').amperes('neutral'),
  ),
  // By resistance alone; the reactances of NFPA 70 table 9, which are nearly equal, move it by 0.1 %.
  a(
    '30 A joined twice divide into 18.26 A in the neutral',
    'NFPA 70 chapter 9 table 8 and the divider rule, by hand',
    18.26,
    0.003,
    'by resistance alone; nearly equal reactances even it out',
    () => typed('double-bond').amperes('feeder.neutral'),
  ),
  a(
    '… and 11.74 A in the grounding conductor',
    'NFPA 70 chapter 9 table 8 and the divider rule, by hand',
    11.74,
    0.003,
    'by resistance alone; nearly equal reactances even it out',
    () => typed('double-bond').amperes('feeder.protective'),
  ),
  ...(
    [
      ['load one', '100.2'],
      ['load two', '75.1'],
      ['load three', '50.1'],
      ['neutral', '43.4'],
    ] as const
  ).map(([branch, digits]) =>
    asPrinted(
      `24, 18 and 12 kW on 415 V: ${digits} A in the ${branch}, by ohmward run`,
      'worked example of the trade, by hand',
      'A',
      digits,
      () => typed('unbalanced-star').amperes(branch),
    ),
  ),
  v(
    '30 % of 4000 A through a grid of 0.5 Ω lift it by 600 V',
    'split × current × resistance, by hand',
    600,
    0.001,
    JOINTS,
    () => typed('potential-rise').volts('grid.top'),
  ),
  a(
    '4.7 nF from line to earth pass 0.340 mA at 230 V and 50 Hz',
    'U·2πfC, by hand',
    0.34e-3,
    0.002,
    'printed to three figures',
    () => typed('filter-leakage').amperes('filter'),
  ),
  a(
    '4.7 nF from line to earth pass 0.213 mA at 120 V and 60 Hz',
    'U·2πfC, by hand',
    0.213e-3,
    0.003,
    'printed to three figures',
    () => typed('filter-leakage-120').amperes('filter'),
  ),
  a(
    'a metre of cable of 150 pF passes 10.8 µA at 230 V and 50 Hz',
    'U·2πfC, by hand; 150 pF/m from memory',
    10.8e-6,
    0.005,
    'printed to three figures',
    () => typed('cable-leakage').amperes('run.line.capacitance') / 100,
  ),
  a('two sources of 120 V in series drive 15 A through 16 Ω', 'Ohm', 15, 1e-4, JOINTS, () =>
    typed('series-sources').amperes('heater'),
  ),
  a('10 Ω behind an ideal 10:1 transformer on 2400 V take 24 A', 'turns ratio, by hand', 24, 1e-3, JOINTS, () =>
    typed('transformer-step-down').amperes('load'),
  ),
  a('… and 2.4 A from the line', 'turns ratio, by hand', 2.4, 1e-3, JOINTS, () =>
    typed('transformer-step-down').amperes('line'),
  ),
];
