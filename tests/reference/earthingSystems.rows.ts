import { built, solved, type Solved } from '../installation/places.ts';
import { asPrinted, within } from './asPrinted.ts';
import { circuit } from './circuit.ts';
import type { Published } from './published.ts';

// Split phase on the bench by ngspice 39 and numpy, alike to seven figures.
const SPLIT = 'ngspice 39 and numpy on the T model of Kersting (2009), both run by us';
const HELD = { 'person.right hand': 500, 'person.feet': 500 };
const absent = { 'protective conductor open': 'yes' };

const split = (
  [
    [
      'bolted, protective conductor whole',
      {},
      {},
      [
        ['branch.line', 318.021],
        ['machine', 55.1991],
        ['winding.x2', 2.8798],
        ['neutral bar', 7.1995],
      ],
    ],
    [
      '… with a person on the case',
      {},
      HELD,
      [
        ['branch.line', 318.046],
        ['machine', 54.8143],
        ['person.right hand', 0.053218],
        ['winding.x2', 3.2579],
        ['neutral bar', 6.8213],
      ],
    ],
    [
      'no protective conductor, a person',
      absent,
      HELD,
      [
        ['person.right hand', 0.115681],
        ['machine', 119.151],
        ['winding.x2', 0.8266],
        ['neutral bar', 0.8255],
      ],
    ],
    [
      'a rod at the case instead, a person',
      { 'protective conductor to a rod': 'yes' },
      HELD,
      [
        ['branch.line', 3.77987],
        ['case rod', 3.6903],
        ['person.right hand', 0.08957],
        ['machine', 92.2576],
        ['winding.x2', 27.0088],
        ['neutral bar', 26.9749],
      ],
    ],
    [
      'no protective conductor, 10 Ω running, a person',
      { ...absent, 'load running': 'yes' },
      HELD,
      [
        ['branch.line', 11.67574],
        ['person.right hand', 0.113417],
        ['machine', 116.8195],
        ['winding.x2', 0.9142],
        ['neutral bar', 0.5514],
      ],
    ],
  ] as const
).flatMap(([what, conditions, limbs, figures]) =>
  figures.map(([place, printed]) =>
    reading(`120/240 V, ${what}`, SPLIT, place, printed, () => solved(circuit('split-phase'), conditions, [], limbs)),
  ),
);

const NETWORKS = 'ngspice 39 and numpy, both run by us';

const networks = (
  [
    [
      'TN-S',
      {},
      [
        ['machine', 136.8215],
        ['final.line', 500.2968],
        ['final.protective', 500.1601],
        ['main earth', 16.1709],
        ['supply.minus', 0.2736],
      ],
    ],
    [
      'TN-C-S',
      { 'protective core absent': 'yes', 'neutral linked to earth': 'yes', 'house rod driven': 'yes' },
      [
        ['machine', 135.3792],
        ['final.line', 500.3433],
        ['final.protective', 500.2079],
        ['main earth', 14.684],
        ['supply.minus', 1.7342],
      ],
    ],
    [
      'TT',
      { 'protective core absent': 'yes', 'tt rod driven': 'yes' },
      [
        ['machine', 224.6137],
        ['final.line', 2.465329],
        ['final.protective', 2.240715],
        ['main earth', 224.0715],
        ['supply.minus', 4.9307],
      ],
    ],
  ] as const
).flatMap(([what, conditions, figures]) =>
  figures.map(([place, printed]) =>
    reading(`${what}, 230 V behind 400 kVA and 100 m, a person on the case`, NETWORKS, place, printed, () =>
      solved(circuit('tn-tt'), { 'line touches the machine': 'solid', ...conditions }),
    ),
  ),
);

/** One figure of a solved circuit: amperes of a conductor, volts of a piece of metal. */
function reading(what: string, source: string, place: string, printed: number, solve: () => Solved): Published {
  const metal = ['machine', 'winding.x2', 'neutral bar', 'main earth', 'supply.minus'].includes(place);
  const because = 'seven joins of 10 µΩ in a loop of 0.38 Ω, which the netlist leaves out';
  return within(
    `${what}: ${place} ${printed} ${metal ? 'V' : 'A'}`,
    source,
    metal ? 'V' : 'A',
    printed,
    1.5e-3,
    because,
    () => (metal ? solve().volts(place) : solve().amperes(place)),
  );
}

const HAND = 'computed by hand';

const lost: readonly Published[] = [
  within(
    'with its neutral lost a 1 kW load beside one of 2 kW gets 155.2 V, though rods join the neutral',
    HAND,
    'V',
    155.2,
    1e-3,
    'printed to four figures',
    () => solved(circuit('open-neutral-rods')).between('light load.line', 'light load.neutral'),
  ),
  within('… and the 2 kW load 84.8 V', HAND, 'V', 84.8, 1e-3, 'printed to three figures', () =>
    solved(circuit('open-neutral-rods')).between('heavy load.line', 'heavy load.neutral'),
  ),
  within('… while 1.005 A takes the soil', HAND, 'A', 1.005, 1e-3, 'printed to four figures', () =>
    solved(circuit('open-neutral-rods')).amperes('service rod'),
  ),
  within(
    '30 A of unbalance put less than 0.02 A into rods of 25 and 10 Ω beside the neutral: 0.0168 A',
    HAND,
    'A',
    0.0168,
    0.005,
    'printed to three figures',
    () => solved(circuit('double-bond')).amperes('far rod'),
  ),
];

// The loop of a run out and home, as a meter finds it.
const runs: readonly Published[] = (
  [
    ['1.5', '1', '1.51'],
    ['2.5', '1.5', '0.98'],
    ['4', '1.5', '0.84'],
    ['6', '2.5', '0.52'],
    ['10', '4', '0.32'],
  ] as const
).map(([line, protective, digits]) =>
  asPrinted(
    `50 m of ${line} mm² with ${protective} mm² have ${digits} Ω out and home`,
    'tables of practice beside BS 7671, seen second-hand',
    'Ω',
    digits,
    () => {
      const cores = `cores: { line: ${line} mm² Cu, protective: ${protective} mm² Cu }`;
      const text = `place: A run\nregion: iec\nparts:\n  meter: { kind: source, emf_V: 10 }\n  run: { kind: cable, length_m: 50, ${cores} }\njoins:\n${[
        'meter.plus, run.line.supply',
        'meter.minus, run.protective.supply',
        'run.line.load, run.protective.load',
      ]
        .map((join) => `  - { between: [${join}], resistance_ohm: 0 }\n`)
        .join('')}`;
      return 10 / solved(built(text)).amperes('meter');
    },
  ),
);

/** Split phase, TN, TT, lost and doubled bonds. */
export const rows: readonly Published[] = [...split, ...networks, ...lost, ...runs];
