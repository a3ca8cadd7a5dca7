import { roomForBody, solveBody } from '../body/index.ts';
import type { Body, Contact, SolvedBody } from '../body/index.ts';
import { phasors } from '../electrics/index.ts';
import type { Phasors, Solution, Solver, Values } from '../electrics/index.ts';
import type { Build, Conditions, PersonInfo } from '../installation/index.ts';
import { limited } from './currentLimit.ts';

/** One person who touches something, solved: what is found there before the touch and across the body after it, V. */
export interface Touch {
  readonly person: PersonInfo;
  readonly contacts: readonly Contact[];
  readonly prospective_V: number;
  readonly touch_V: number;
}

/** The network with everybody in it, under conditions that stay. */
export interface SteadyState {
  readonly values: Values;
  readonly solution: Solution;
  readonly touches: readonly Touch[];
  /** Resistance of every limb in touch, Ω, by branch. */
  readonly limb_ohm: ReadonlyMap<number, number>;
}

// Several people at once shift each other's voltages, one who holds another even more; each round repeats the whole with the
// others as last found.
const ROUNDS = 200;
const SETTLED = 1e-12; // relative change of a limb's resistance

/** Solves the network and the people in it: the network is reduced to what the contacts see, each body solved on that,
 *  its resistances put back and everything solved once more.
 *  @param open names of the devices whose contacts are open
 *  @param touching names of the people who touch what the conditions say */
export function steadyState(
  build: Build,
  solver: Solver,
  conditions: Conditions,
  open: ReadonlySet<string>,
  touching: ReadonlySet<string>,
): SteadyState {
  const values = build.values(conditions, open);
  const resistance_ohm = values.impedance.re;
  const standing = build.people.flatMap((person): readonly Standing[] =>
    touching.has(person.name) ? standingOf(person, conditions, resistance_ohm) : [],
  );
  // What a source that folds back gives with everybody in touch; bodies are solved against that.
  const foldsBack = build.limits.length > 0;
  let emf = foldsBack ? limited(build, solver, values).emf : values.emf;
  for (let round = 0, moved = Infinity; round < ROUNDS && moved > SETTLED; round += 1) {
    moved = 0;
    for (const { body, contacts, limbs, nodes, away_ohm, open_V, solved } of standing) {
      const before = limbs.map(({ branch }) => resistance_ohm[branch] ?? NaN);
      limbs.forEach(({ branch }, limb) => (resistance_ohm[branch] = away_ohm[limb] ?? NaN));
      const { volts } = solver.solve({ ...values, emf });
      nodes.forEach((node, limb) => {
        open_V.re[limb] = volts.re[node] ?? NaN;
        open_V.im[limb] = volts.im[node] ?? NaN;
      });
      solveBody(body, contacts, open_V, solver.impedanceSeenFrom(nodes), solved);
      limbs.forEach(({ branch }, limb) => {
        const ohm = Math.min(solved.limb_ohm[limb] ?? Infinity, away_ohm[limb] ?? Infinity);
        resistance_ohm[branch] = ohm;
        moved = Math.max(moved, Math.abs(ohm - (before[limb] ?? Infinity)) / ohm);
      });
    }
    if (foldsBack) emf = limited(build, solver, values).emf;
    else if (standing.length === 1) break;
  }
  const settled = limited(build, solver, values);
  return {
    values: settled,
    solution: solver.solve(settled),
    touches: standing.map(({ person, contacts, solved: { prospective_V, touch_V } }) => ({
      person,
      contacts,
      prospective_V,
      touch_V,
    })),
    limb_ohm: new Map(
      standing.flatMap(({ limbs }) => limbs.map(({ branch }) => [branch, resistance_ohm[branch] ?? NaN] as const)),
    ),
  };
}

/** One person in touch, with room for what is found out about them. */
interface Standing {
  readonly person: PersonInfo;
  readonly body: Body;
  readonly contacts: readonly Contact[];
  /** In the order of the contacts, as the rest. */
  readonly limbs: PersonInfo['limbs'];
  readonly nodes: readonly number[];
  /** What each limb has while it touches nothing, Ω. */
  readonly away_ohm: readonly number[];
  readonly open_V: Phasors;
  readonly solved: SolvedBody;
}

function standingOf(person: PersonInfo, conditions: Conditions, resistance_ohm: Float64Array): readonly Standing[] {
  const { body, contacts: offered } = person.contacts(conditions);
  const contacts = offered.filter((contact) => contact.outside_ohm < Infinity);
  if (contacts.length === 0) return [];
  const limbs = limbsOf(person, contacts);
  return [
    {
      person,
      body,
      contacts,
      limbs,
      nodes: limbs.map(({ node }) => node),
      away_ohm: limbs.map(({ branch }) => resistance_ohm[branch] ?? NaN),
      open_V: phasors(limbs.length),
      solved: roomForBody(limbs.length),
    },
  ];
}

/** The limbs of this person in the order of the contacts. */
function limbsOf(person: PersonInfo, contacts: readonly Contact[]): PersonInfo['limbs'] {
  return contacts.map((contact) => {
    const found = person.limbs.find(({ limb }) => limb === contact.limb);
    if (found === undefined) throw new RangeError(`steadyState: ${person.name} has no ${contact.limb} to touch with`);
    return found;
  });
}
