import { z } from 'zod';
import { limbs as places } from '../../body/index.ts';
import type { Limb } from '../../body/index.ts';
import { AWAY_OHM, type PartKind, type PlannedLimb } from '../plan.ts';
import { terminalSchema } from '../quantity.ts';

const schema = z
  .strictObject({
    kind: z.literal('person'),
    percentile: z.literal([5, 50, 95]).default(50).describe('of body impedance'),
    skin: z.enum(['dry', 'water-wet', 'salt-wet']).default('dry'),
    area: z
      .enum(['large', 'medium', 'small'])
      .default('large')
      .describe('of each contact: large a hand round a handle, medium a few fingers, small a fingertip'),
    size: z
      .enum(['adult', 'small adult', 'child'])
      .default('adult')
      .describe('whose threshold of fibrillation counts; in proportion to mass, an extrapolation'),
    'right hand': terminalSchema.optional(),
    'left hand': terminalSchema.optional(),
    feet: terminalSchema.optional().describe('both on one thing'),
    'right foot': terminalSchema.optional().describe('instead of feet'),
    'left foot': terminalSchema.optional().describe('instead of feet'),
    seat: terminalSchema.optional(),
    chest: terminalSchema.optional(),
    back: terminalSchema.optional(),
    'held at': z
      .array(z.enum(places as [Limb, ...Limb[]]))
      .default([])
      .describe('where somebody else may take hold: their hand touches <this person>.<place>'),
  })
  .superRefine((part, context) => {
    const say = (path: string[], message: string, instead: string): void =>
      context.addIssue({ code: 'custom', path, message, params: { code: 'wrong-target', instead } });
    const reached = [...placesWritten(part), ...part['held at']];
    const foot = reached.find((limb) => limb === 'right foot' || limb === 'left foot');
    if (foot !== undefined && reached.includes('feet'))
      say(['feet'], `are both feet already, beside ${foot}`, 'left foot and right foot, or feet');
    const twice = part['held at'].find(
      (limb, index) => reached.indexOf(limb) < reached.length - part['held at'].length + index,
    );
    if (twice !== undefined)
      say(['held at'], `names ${twice}, which touches a thing already or is named twice`, '[back]');
  });

type Person = z.output<typeof schema>;

/** Lower limbs stand or sit on things: their branches count from the trunk to the floor, those of the others to the trunk. */
const LOWER: ReadonlySet<Limb> = new Set(['feet', 'right foot', 'left foot', 'seat']);

/** A person who can touch a thing with each hand, stand or sit on another and lean on a third: `<part>.right hand` runs from the thing to
 *  the trunk, `<part>.feet` from the trunk to the floor. Where somebody else takes hold (`held at`) the far end is the terminal
 *  `<part>.<place>`, the outside of the skin. */
export const person = {
  kind: 'person',
  schema,
  ends: 'trunk, and each place it is held at; hands and feet touch those of others',
  terminals: (part) => ['trunk', ...part['held at']],
  touches: (part) => placesWritten(part).map((limb) => ({ key: [limb], terminal: part[limb] ?? '' })),
  plan(name, part) {
    const trunk = `${name}.trunk`;
    const limbs = places.flatMap((limb): PlannedLimb[] => {
      const held = part['held at'].includes(limb);
      const touches = held ? `${name}.${limb}` : part[limb];
      if (touches === undefined) return [];
      return [{ limb, touches, branch: `${name}.${limb}`, into: LOWER.has(limb) ? -1 : 1, ...(held ? { held } : {}) }];
    });
    const branches = limbs.map(({ into, touches, branch }) => ({
      name: branch,
      ...(into === -1 ? { from: trunk, to: touches } : { from: touches, to: trunk }),
      role: 'person' as const,
      medium: 'body' as const,
      resistance_ohm: AWAY_OHM,
      reactance_ohm: 0,
    }));
    const { percentile, skin, area, size } = part;
    return { branches, person: { percentile, skin, area, size, trunk, limbs } };
  },
} satisfies PartKind<Person>;

function placesWritten(part: Readonly<Partial<Record<Limb, string | undefined>>>): readonly Limb[] {
  return places.filter((limb) => part[limb] !== undefined);
}
