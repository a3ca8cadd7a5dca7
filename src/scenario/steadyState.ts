import { solveBody } from '../body/index.ts';
import type { Contact } from '../body/index.ts';
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

// Several people at once shift each other's voltages; each round repeats the whole with the others as last found.
const ROUNDS = 60;
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
  const standing = build.people.flatMap((person) => {
    if (!touching.has(person.name)) return [];
    const { body, contacts: offered } = person.contacts(conditions);
    const contacts = offered.filter((contact) => contact.outside_ohm < Infinity);
    return contacts.length > 0 ? [{ person, body, contacts, limbs: limbsOf(person, contacts) }] : [];
  });
  const limb_ohm = new Map<number, number>();
  const touches: Touch[] = [];
  const everybody = (): Values => limited(build, solver, build.values(conditions, open, limb_ohm));
  // What a source that folds back gives with everybody in touch; bodies are solved against that.
  const foldsBack = build.limits.length > 0;
  let folded: Partial<Values> = foldsBack ? { emf: everybody().emf } : {};
  for (let round = 0, moved = Infinity; round < ROUNDS && moved > SETTLED; round += 1) {
    moved = 0;
    for (const [index, { person, body, contacts, limbs }] of standing.entries()) {
      const before = limbs.map(({ branch }) => limb_ohm.get(branch));
      for (const { branch } of limbs) limb_ohm.delete(branch);
      const { volts } = solver.solve({ ...build.values(conditions, open, limb_ohm), ...folded });
      const nodes = limbs.map(({ node }) => node);
      const solved = solveBody(body, contacts, voltsAt(volts, nodes), solver.impedanceSeenFrom(nodes));
      touches[index] = { person, contacts, prospective_V: solved.prospective_V, touch_V: solved.touch_V };
      limbs.forEach(({ branch }, limb) => {
        const ohm = solved.limb_ohm[limb] ?? Infinity;
        limb_ohm.set(branch, ohm);
        moved = Math.max(moved, Math.abs(ohm - (before[limb] ?? Infinity)) / ohm);
      });
    }
    if (foldsBack) folded = { emf: everybody().emf };
    else if (standing.length === 1) break;
  }
  const values = everybody();
  return { values, solution: solver.solve(values), touches, limb_ohm };
}

/** The limbs of this person in the order of the contacts. */
function limbsOf(person: PersonInfo, contacts: readonly Contact[]): PersonInfo['limbs'] {
  return contacts.map((contact) => {
    const found = person.limbs.find(({ limb }) => limb === contact.limb);
    if (found === undefined) throw new RangeError(`steadyState: ${person.name} has no ${contact.limb} to touch with`);
    return found;
  });
}

function voltsAt(volts: Phasors, nodes: readonly number[]): Phasors {
  return {
    re: Float64Array.from(nodes, (node) => volts.re[node] ?? NaN),
    im: Float64Array.from(nodes, (node) => volts.im[node] ?? NaN),
  };
}
