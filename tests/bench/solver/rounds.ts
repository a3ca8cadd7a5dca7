/** Runs in a Node of its own: argument 1 is the KLU program, argument 2 ngspice if there is one; prints rows as JSON. All
 *  sides take turns, round by round, each timed by the processor's clock, so that a busy machine slows all alike. */
import bakeryText from '../../../lessons/places/bakery.yaml?raw';
import { compile, initialConditions, readInstallation } from '../../../src/installation/index.ts';
import { crowdRows } from './crowd.ts';
import { growthRows } from './growth.ts';
import { placeRows } from './place.ts';
import type { Place } from './place.ts';
import { street } from './street.ts';

const [, , klu = '', ngspice] = process.argv;
const bakery = bakeryWithBaker();
console.log(
  JSON.stringify([
    ...placeRows(fourHomes(bakery), klu, ngspice),
    ...placeRows(bakery, klu, undefined),
    ...growthRows(klu),
    ...crowdRows(),
  ]),
);

/** The bakery of the lessons with a fault, its protective conductor open, and the baker on it. */
function bakeryWithBaker(): Place {
  const reading = readInstallation(bakeryText, 'bakery.yaml');
  if (!reading.ok) throw new Error(reading.diagnostics.map(({ message }) => message).join('\n'));
  const { network, people, values } = compile(reading.installation);
  const conditions = {
    ...initialConditions(reading.installation),
    'line touches the case': 'solid',
    'protective conductor open': 'yes',
    'baker touches': 'the case and the sink',
    'baker wears': 'wet shoes',
  };
  const [person] = people;
  if (person === undefined) throw new Error('nobody is in the bakery');
  const { body, contacts } = person.contacts(conditions);
  const limbs = contacts.map(({ limb }) => person.limbs.find((one) => one.limb === limb)!);
  return {
    name: 'the bakery',
    judged: false,
    network,
    values: values(conditions, new Set()),
    body,
    contacts,
    nodes: limbs.map(({ node }) => node),
    trunk: person.trunk,
    touched(limb_ohm) {
      const with_person = new Map(limbs.map(({ branch }, k) => [branch, limb_ohm[k]!]));
      return { network, values: values(conditions, new Set(), with_person) };
    },
  };
}

/** Forty nodes: four homes of a street, and the baker as a guest: hand on the faulty case, hand on the pipe next door, feet on
 *  the ground. */
function fourHomes({ body, contacts }: Place): Place {
  const { network, values } = street(4);
  const nodes = [network.nodes.indexOf('0 case'), network.nodes.indexOf('1 pipe'), 0].slice(0, contacts.length);
  return {
    name: 'four homes of a street',
    judged: true,
    network,
    values,
    body,
    contacts,
    nodes,
    touched(limb_ohm) {
      const trunk = network.nodes.length;
      const more = (row: Float64Array, last: readonly number[]): Float64Array => Float64Array.of(...row, ...last);
      const none = limb_ohm.map(() => 0);
      const { impedance, emf, coupling } = values;
      return {
        network: {
          nodes: [...network.nodes, 'trunk'],
          branches: [...network.branches, ...nodes.map((from, k) => ({ name: `limb ${k}`, from, to: trunk }))],
          windings: [],
        },
        values: {
          impedance: { re: more(impedance.re, limb_ohm), im: more(impedance.im, none) },
          emf: { re: more(emf.re, none), im: more(emf.im, none) },
          coupling,
        },
      };
    },
  };
}
