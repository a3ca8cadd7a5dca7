import { dalzielFibrillation_A, heartCurrent_A, limitsAt, severity, zone } from '../../src/body/index.ts';
import type { Limb } from '../../src/body/index.ts';
import { asPrinted, within } from './asPrinted.ts';
import type { Published } from './published.ts';

// Where sources disagree:
// - Let-go: 10 mA (IEC 479-1:1994, adults) against 5 mA (2005 on, everybody). 5 mA is used.
// - Dalziel's 116/√t lies above curve c1 from about 3 s on (51.9 mA against 40 mA at 5 s) and at 10 ms (1160 mA against 500 mA). Zones follow
//   the IEC curves; Dalziel's law is a second opinion.
// - Curves c1, c2, c3 are named 5 % and 95 % on some pages; the standard has c2 for 5 % and c3 for 50 %.

/** Left-hand-to-feet equivalent of 1 A from one place to the others in equal parts. */
function heart(from: readonly Limb[], to: readonly Limb[], direct = false): number {
  const into = [
    ...from.map((limb) => [limb, { re: 1 / from.length, im: 0 }]),
    ...to.map((limb) => [limb, { re: -1 / to.length, im: 0 }]),
  ];
  return heartCurrent_A(Object.fromEntries(into), direct).amperes;
}

const TABLE_12 = 'IEC TS 60479-1:2005 table 12 (1994: table 5), seen in a copy';
const FACTORS: readonly (readonly [string, string, readonly Limb[], readonly Limb[]])[] = [
  ['left hand to left foot', '1.0', ['left hand'], ['left foot']],
  ['left hand to right foot', '1.0', ['left hand'], ['right foot']],
  ['left hand to both feet', '1.0', ['left hand'], ['feet']],
  ['both hands to both feet', '1.0', ['left hand', 'right hand'], ['feet']],
  ['left hand to right hand', '0.4', ['left hand'], ['right hand']],
  ['right hand to left foot', '0.8', ['right hand'], ['left foot']],
  ['right hand to right foot', '0.8', ['right hand'], ['right foot']],
  ['right hand to both feet', '0.8', ['right hand'], ['feet']],
  ['back to right hand', '0.3', ['back'], ['right hand']],
  ['back to left hand', '0.7', ['back'], ['left hand']],
  ['chest to right hand', '1.3', ['chest'], ['right hand']],
  ['chest to left hand', '1.5', ['chest'], ['left hand']],
  ['seat to left hand', '0.7', ['seat'], ['left hand']],
  ['seat to right hand', '0.7', ['seat'], ['right hand']],
  ['seat to both hands', '0.7', ['seat'], ['left hand', 'right hand']],
  ['left foot to right foot', '0.04', ['left foot'], ['right foot']],
];
const factors = [
  ...FACTORS.map(([path, factor, from, to]) =>
    within(`the heart-current factor of ${path}`, TABLE_12, '', Number(factor), 1e-9, 'kept as printed', () =>
      heart(from, to),
    ),
  ),
  within(
    '50 mA chest to left hand is like this left hand to feet',
    TABLE_12,
    'mA',
    75,
    1e-9,
    'worked in the text',
    () => 50 * heart(['chest'], ['left hand']),
  ),
  within(
    'foot to foot takes so many times the current left hand to feet',
    TABLE_12,
    '',
    25,
    1e-9,
    'worked in the text',
    () => heart(['left hand'], ['feet']) / heart(['left foot'], ['right foot']),
  ),
  within(
    'foot to foot takes so many times the current right hand to feet',
    TABLE_12,
    '',
    20,
    1e-9,
    'worked in the text',
    () => heart(['right hand'], ['feet']) / heart(['left foot'], ['right foot']),
  ),
  within(
    '200 mA hand to hand is like this left hand to feet',
    'IEC 60479-1, example, from memory',
    'mA',
    80,
    1e-9,
    'worked in the text',
    () => 200 * heart(['left hand'], ['right hand']),
  ),
  within(
    'a direct current down to the feet counts so much of one upwards',
    'IEC 60479-1, "about twice", from memory',
    '',
    0.5,
    1e-9,
    '"about twice" is kept as two',
    () => heart(['left hand'], ['feet'], true) / heart(['feet'], ['left hand'], true),
  ),
];

/** The current (mA) from which a time leads into a zone of this severity, searched for by asking. */
function boundary_mA(step: number, time_s: number, frequency_Hz = 50): number {
  const limits = limitsAt(frequency_Hz);
  let [low, high] = [0, 10];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (severity(zone(middle, time_s, limits)) >= step) high = middle;
    else low = middle;
  }
  return 1000 * high;
}

const IEC_AC = 'IEC 60479-1:2018 figure 20, seen second-hand';
const IEC_DC = 'IEC 60479-1:2018 figure 22, from memory';
const ON_THE_CURVE = 'a corner of the curve that is printed as a figure';
const zones = [
  within('nobody feels less than this', IEC_AC, 'mA', 0.5, 1e-9, ON_THE_CURVE, () => boundary_mA(1, 1)),
  within('curve b at 10 ms', IEC_AC, 'mA', 200, 1e-9, ON_THE_CURVE, () => boundary_mA(2, 0.01)),
  within('curve b for long: everybody can let go', IEC_AC, 'mA', 5, 1e-9, ON_THE_CURVE, () => boundary_mA(2, 60)),
  within('everybody can let go of this', IEC_AC, 'mA', 5, 1e-9, ON_THE_CURVE, () => 1000 * limitsAt(50).letGo_A),
  within('curve c1 at 10 ms', IEC_AC, 'mA', 500, 1e-9, ON_THE_CURVE, () => boundary_mA(3, 0.01)),
  within('curve c1 at 5 s', IEC_AC, 'mA', 40, 1e-9, ON_THE_CURVE, () => boundary_mA(3, 5)),
  within('curve c1 for long', IEC_AC, 'mA', 40, 1e-9, ON_THE_CURVE, () => boundary_mA(3, 100)),
  within('curve c2 at 50 ms', IEC_AC, 'mA', 900, 1e-9, ON_THE_CURVE, () => boundary_mA(4, 0.05)),
  within('fewer than this felt of direct current', IEC_DC, 'mA', 2, 1e-9, ON_THE_CURVE, () => boundary_mA(1, 1, 0)),
  within('curve b of direct current at 10 ms', IEC_DC, 'mA', 200, 1e-9, ON_THE_CURVE, () => boundary_mA(2, 0.01, 0)),
  within('curve b of direct current for long', IEC_DC, 'mA', 25, 1e-9, ON_THE_CURVE, () => boundary_mA(2, 60, 0)),
  within('curve c1 of direct current at 10 ms', IEC_DC, 'mA', 500, 1e-9, ON_THE_CURVE, () => boundary_mA(3, 0.01, 0)),
  within('curve c1 of direct current for long', IEC_DC, 'mA', 150, 1e-9, ON_THE_CURVE, () => boundary_mA(3, 60, 0)),
  within(
    'direct over alternating current for longer than a heartbeat',
    'IEC 60479-1, factor k, from memory',
    '',
    3.75,
    1e-9,
    '150 mA over 40 mA',
    () => boundary_mA(3, 60, 0) / boundary_mA(3, 60),
  ),
];

const PERMITTED: readonly (readonly [number, number])[] = [
  [0.05, 900],
  [0.1, 750],
  [0.2, 600],
  [0.5, 200],
  [1, 80],
  [2, 60],
  [5, 51],
  [10, 50],
];
const permitted = PERMITTED.map(([time_s, milliamperes]) =>
  within(
    `the body current permitted for ${time_s} s is curve c2`,
    'EN 50522:2010 table B.1, 0.05 s seen second-hand, the rest from memory',
    'mA',
    milliamperes,
    1e-9,
    'both are the same curve',
    () => boundary_mA(4, time_s),
  ),
);

const dalziel = [
  asPrinted(
    'Dalziel at 1 s, 50 kg',
    'Dalziel and Lee, IEEE Trans. IGA-4, 1968, seen in a copy',
    'mA',
    '116',
    () => 1000 * (dalzielFibrillation_A(1) ?? NaN),
  ),
  asPrinted(
    'Dalziel at 1 s, 70 kg',
    'IEEE 80, coefficient seen second-hand',
    'A',
    '0.157',
    () => dalzielFibrillation_A(1, 70) ?? NaN,
  ),
  asPrinted(
    'energy constant, 50 kg',
    'IEEE 80, from memory',
    'A²s',
    '0.0135',
    () => (dalzielFibrillation_A(1) ?? NaN) ** 2,
  ),
  asPrinted(
    'energy constant, 70 kg',
    'IEEE 80, from memory',
    'A²s',
    '0.0246',
    () => (dalzielFibrillation_A(1, 70) ?? NaN) ** 2,
  ),
];

/** Figures printed about the effects of current on the body. */
export const rows: readonly Published[] = [...factors, ...zones, ...permitted, ...dalziel];
