import { canLetGo, heartCurrent_A } from '../body/index.ts';
import type { Limb } from '../body/index.ts';
import type { Complex } from '../electrics/index.ts';
import type { PersonInfo } from '../installation/index.ts';
import type { SteadyState } from './steadyState.ts';
import type { PersonMoment } from './timeline.ts';

/** Time from feeling a current to having let go, for somebody who can, s: from memory. */
export const REACTION_S = 0.5;

/** What a person feels now, without what only time tells. */
export type SeenByPerson = Omit<PersonMoment, 'zone' | 'exposure_s'>;

/** Region of a person: away until danger begins, then touching if that was given; one who can let go is released once. */
export function personRegion(person: string, touchings: readonly string[]) {
  return {
    initial: 'away',
    states: {
      away: {
        on: {
          'danger.begins': { guard: { type: 'isTouchGiven', params: { conditions: touchings } }, target: 'touching' },
        },
      },
      touching: {
        on: { 'person.released': { guard: { type: 'isThisPerson', params: { person } }, target: 'released' } },
      },
      released: {},
    },
  } as const;
}

/** What flows through this person and what stands across them, from the solved network. */
export function seenByPerson(person: PersonInfo, { solution, touches }: SteadyState): SeenByPerson {
  const touch = touches.find((candidate) => candidate.person === person);
  const contacts = touch?.contacts ?? [];
  const limbs_A: Partial<Record<Limb, number>> = {};
  const into_A: Partial<Record<Limb, Complex>> = {};
  for (const { limb, branch, into } of person.limbs) {
    if (!contacts.some((contact) => contact.limb === limb)) continue;
    const [re, im] = [solution.amperes.re[branch] ?? 0, solution.amperes.im[branch] ?? 0];
    limbs_A[limb] = Math.hypot(re, im);
    into_A[limb] = { re: into * re, im: into * im };
  }
  const { limits } = person;
  const heart = heartCurrent_A(into_A, limits.direct);
  return {
    person: person.name,
    touching: contacts.filter(({ held }) => held !== true).map(({ limb }) => limb),
    prospective_V: touch?.prospective_V ?? 0,
    touch_V: touch?.touch_V ?? 0,
    limbs_A,
    body_A: Math.max(0, ...Object.values(limbs_A)),
    heart_A: heart.amperes,
    heartFactor: heart.factor,
    path: heart.path,
    letGo: canLetGo(handCurrent_A(limbs_A), limits),
    perception_A: limits.perception_A,
    contacts,
  };
}

/** Whether this current makes somebody let go: a hand feels it and its muscles still obey. Below perception nobody has a
 *  reason to, above let-go nobody can. */
export function willLetGo({ limbs_A, letGo, perception_A }: SeenByPerson): boolean {
  return letGo && handCurrent_A(limbs_A) > perception_A;
}

function handCurrent_A(limbs_A: SeenByPerson['limbs_A']): number {
  return Math.max(limbs_A['right hand'] ?? 0, limbs_A['left hand'] ?? 0);
}
