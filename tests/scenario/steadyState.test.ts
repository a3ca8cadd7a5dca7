import { describe, expect, test } from 'vitest';
import { solveBody } from '../../src/body/index.ts';
import { createSolver } from '../../src/electrics/index.ts';
import type { Build, Conditions } from '../../src/installation/index.ts';
import { steadyState } from '../../src/scenario/steadyState.ts';
import { bakery, usual } from './bakery.ts';
import { electricsWrong } from './holds.ts';
import { rig } from './rig.ts';

/** Gaps of 10 GΩ lie beside limbs of kilohms while the rest is seen from the contacts. */
const GAP = 1e-5;

/** Each body solved again on the network with everybody else as found: what the limbs should be, beside what they are. */
function limbsAgain(build: Build, conditions: Conditions) {
  const solver = createSolver(build.network);
  const everybody = new Set(build.people.map(({ name }) => name));
  const steady = steadyState(build, solver, conditions, new Set(), everybody);
  expect(electricsWrong(build.network, steady.values, steady.solution)).toEqual([]);
  return steady.touches.flatMap(({ person, contacts }) => {
    const limbs = contacts.map(({ limb }) => person.limbs.find((candidate) => candidate.limb === limb)!);
    const others = new Map([...steady.limb_ohm].filter(([branch]) => limbs.every((limb) => limb.branch !== branch)));
    const { volts } = solver.solve(build.values(conditions, new Set(), others));
    const nodes = limbs.map(({ node }) => node);
    const seen = {
      re: Float64Array.from(nodes, (node) => volts.re[node]!),
      im: Float64Array.from(nodes, (node) => volts.im[node]!),
    };
    const { body } = person.contacts(conditions);
    const again = solveBody(body, contacts, seen, solver.impedanceSeenFrom(nodes));
    return limbs.map(({ branch }, index) => {
      const { re, im } = steady.solution.amperes;
      return {
        network_A: Math.hypot(re[branch]!, im[branch]!),
        body_A: Math.hypot(again.amperes.re[index]!, again.amperes.im[index]!),
        ohm: steady.limb_ohm.get(branch)!,
        again_ohm: again.limb_ohm[index]!,
      };
    });
  });
}

describe('a person in the network', () => {
  test('the network carries through each limb what the body solved on its own says', () => {
    for (const touches of ['the case', 'the case and the sink'])
      for (const wears of ['dry shoes', 'wet shoes', 'bare feet']) {
        const limbs = limbsAgain(bakery, {
          ...usual,
          'line touches the case': 'solid',
          'protective conductor open': 'yes',
          'baker touches': touches,
          'baker wears': wears,
        });
        expect(limbs).toHaveLength(touches === 'the case' ? 2 : 3);
        for (const { network_A, body_A, ohm, again_ohm } of limbs) {
          expect(network_A).toBeGreaterThan(1e-4);
          expect(Math.abs(network_A / body_A - 1)).toBeLessThan(GAP);
          expect(Math.abs(ohm / again_ohm - 1)).toBeLessThan(GAP);
        }
      }
  });

  test('several people who shift each other are all solved at once', () => {
    const conditions: Conditions = {
      fault: 'poor',
      'protective open': 'yes',
      'Ada touches': 'the machine',
      'Ben touches': 'the machine',
    };
    const limbs = limbsAgain(rig({ slab_ohm: 2000 }), conditions);
    expect(limbs).toHaveLength(4);
    for (const { network_A, body_A, ohm, again_ohm } of limbs) {
      expect(Math.abs(network_A / body_A - 1)).toBeLessThan(GAP);
      expect(Math.abs(ohm / again_ohm - 1)).toBeLessThan(GAP);
    }
    const [alone] = limbsAgain(rig({ slab_ohm: 2000 }), { ...conditions, 'Ben touches': 'nothing' });
    // On one poor floor the second person lifts it for the first.
    expect(limbs[0]!.network_A).toBeLessThan(0.95 * alone!.network_A);
  });
});
