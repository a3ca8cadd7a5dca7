import { z } from 'zod';
import type { Limb } from '../../body/index.ts';
import { AWAY_OHM, type PartKind } from '../plan.ts';
import { terminalSchema } from '../quantity.ts';

const schema = z.strictObject({
  kind: z.literal('person'),
  percentile: z.literal([5, 50, 95]).default(50).describe('of body impedance'),
  skin: z.enum(['dry', 'water-wet', 'salt-wet']).default('dry'),
  'right hand': terminalSchema.optional(),
  'left hand': terminalSchema.optional(),
  feet: terminalSchema.optional(),
});

type Person = z.output<typeof schema>;

const LIMBS: readonly Limb[] = ['right hand', 'left hand', 'feet'];

/** A person who can touch a thing with each hand and stand on a floor: `<part>.right hand` and `<part>.left hand` run from the
 *  thing to the trunk, `<part>.feet` from the trunk to the floor. */
export const person = {
  kind: 'person',
  schema,
  ends: 'trunk; hands and feet touch those of others',
  terminals: () => ['trunk'],
  touches: (part) => reached(part).map(({ limb, touches }) => ({ key: [limb], terminal: touches })),
  plan(name, part) {
    const trunk = `${name}.trunk`;
    const limbs = reached(part).map(({ limb, touches }) => ({ limb, touches, branch: `${name}.${limb}` }));
    const branches = limbs.map(({ limb, touches, branch }) => ({
      name: branch,
      ...(limb === 'feet' ? { from: trunk, to: touches } : { from: touches, to: trunk }),
      role: 'person' as const,
      medium: 'body' as const,
      resistance_ohm: AWAY_OHM,
      reactance_ohm: 0,
    }));
    return { branches, person: { percentile: part.percentile, skin: part.skin, trunk, limbs } };
  },
} satisfies PartKind<Person>;

function reached(part: Person): readonly { readonly limb: Limb; readonly touches: string }[] {
  return LIMBS.flatMap((limb) => {
    const touches = part[limb];
    return touches === undefined ? [] : [{ limb, touches }];
  });
}
