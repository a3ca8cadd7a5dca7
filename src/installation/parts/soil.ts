import { z } from 'zod';
import { bury, isPassive, moved, pinPotential_ohm, standingResistance_ohm, transfer_ohm } from '../../earth/index.ts';
import {
  gridShape,
  misfit,
  plateShape,
  ringShape,
  rodShape,
  rodsShape,
  stripShape,
  wiresOf,
} from '../electrodeShape.ts';
import type { Plan, PartKind } from '../plan.ts';
import { nameSchema, soil_ohm_m } from '../quantity.ts';
import { groundOf, soilKeys, soilMissing } from '../soilLayers.ts';

const metres = z.number().min(-1000).max(1000);
const standing = {
  at: z
    .tuple([metres, metres])
    .describe('x and y along the surface, m')
    .meta({ examples: [[0, 0]] }),
};
const lying = { ...standing, turned_degrees: z.number().min(-360).max(360).default(0) };

const MOST_THERE = 12;

const schema = z
  .strictObject({
    kind: z.literal('soil'),
    ...soilKeys,
    cover: z
      .strictObject({ soil_ohm_m, thickness_m: z.number().gt(0).max(1) })
      .optional()
      .describe('a thin layer on it, such as crushed rock, that feet stand on'),
    electrodes: z
      .record(
        nameSchema,
        z.discriminatedUnion('kind', [
          z.strictObject({ ...rodShape.shape, ...standing }),
          z.strictObject({ ...rodsShape.shape, ...lying }),
          z.strictObject({ ...stripShape.shape, ...lying }),
          z.strictObject({ ...ringShape.shape, ...standing }),
          z.strictObject({ ...plateShape.shape, ...lying }),
          z.strictObject({ ...gridShape.shape, ...lying }),
        ]),
      )
      .meta({ examples: [{ rod: { kind: 'rod', length_m: 2.4, diameter_m: 0.016, at: [0, 0] } }] }),
    places: z
      .record(
        nameSchema,
        z.strictObject({ ...standing, feet: z.literal([1, 2]).default(2).describe('how many feet stand there') }),
      )
      .default({})
      .describe('where somebody stands'),
  })
  .superRefine((part, context) => {
    const say = (path: readonly string[], message: string, instead: string, code = 'out-of-range') =>
      context.addIssue({ code: 'custom', path: [...path], message, params: { code, instead } });
    const missing = soilMissing(part);
    if (missing !== undefined) return say(missing[0], 'needs soil_ohm_m or soil', missing[1], 'missing-key');
    const [electrodes, places] = [Object.entries(part.electrodes), Object.keys(part.places)];
    if (electrodes.length === 0)
      return say(
        ['electrodes'],
        'needs at least one',
        'rod: { kind: rod, length_m: 2.4, diameter_m: 0.016, at: [0, 0] }',
      );
    if (electrodes.length + places.length > MOST_THERE)
      return say(['electrodes'], `with the places there are more than ${MOST_THERE}`, 'a second soil, farther away');
    for (const [name, shape] of electrodes) {
      const wrong = misfit(shape);
      if (wrong !== undefined) say(['electrodes', name, wrong[0]], wrong[1], wrong[2]);
      if (places.includes(name)) say(['places', name], 'is the name of an electrode already', `${name} feet: …`);
    }
    if (context.issues.length > 0) return;
    try {
      resistances_ohm(part);
    } catch (refused) {
      if (!(refused instanceof RangeError)) throw refused;
      say(['electrodes'], `cannot be solved: ${refused.message}`, 'places farther apart');
    }
  });

type Soil = z.output<typeof schema>;

/** A piece of soil with electrodes in it and places where feet stand, near enough to raise one another: each is a branch
 *  `<part>.<its name>` to remote earth, coupled by mutual resistances (from the numeric method; feet as discs on the surface). So a
 *  person may stand at two places of different potential, and an electrode be lifted by its neighbour.
 *  @see IEEE Std 80-2013 for the feet: 3ρ each, from memory */
export const soil = {
  kind: 'soil',
  schema,
  ends: 'its electrodes and places by their names, such as rod, left foot, right foot',
  terminals: (part) => [...Object.keys(part.electrodes), ...Object.keys(part.places)],
  plan(name, part): Plan {
    const resistance_ohm = resistances_ohm(part);
    const own = (at: number) => resistance_ohm[at]?.[at] ?? 0;
    const count = Object.keys(part.electrodes).length;
    const branches = soil.terminals(part).map((terminal, at) => ({
      name: `${name}.${terminal}`,
      from: `${name}.${terminal}`,
      to: 'earth',
      role: at < count ? ('electrode' as const) : ('floor' as const),
      medium: 'soil' as const,
      resistance_ohm: own(at),
      reactance_ohm: 0,
    }));
    if (branches.length < 2) return { branches };
    const flat = resistance_ohm.flat();
    const winding = {
      branches: branches.map((branch) => branch.name),
      resistance_ohm: flat,
      reactance_ohm: flat.map(() => 0),
    };
    return { branches, winding };
  },
} satisfies PartKind<Soil>;

// Two feet side by side touch: their middles are a foot's disc apart.
const FOOT_APART_m = 0.16;

/** The resistances between all electrodes, then all places, Ω, row by row.
 *  @throws RangeError if they cannot be, because something stands in something else */
function resistances_ohm(part: Soil): readonly (readonly number[])[] {
  const ground = groundOf(part);
  if (ground === undefined) throw new RangeError('soil: its resistivity is not given');
  const electrodes = Object.values(part.electrodes).map((shape) => {
    const [x, y] = shape.at;
    return moved(wiresOf(shape), { x, y }, 'turned_degrees' in shape ? (shape.turned_degrees * Math.PI) / 180 : 0);
  });
  const buried = bury(electrodes, ground);
  const places = Object.values(part.places).map(({ at: [x, y], feet }) => ({ x, y, z: 0, feet }));
  const raised = places.map((place) => electrodes.map((_, electrode) => transfer_ohm(buried, electrode, place)));
  const between = places.map((one) =>
    places.map((other) => {
      const apart = Math.max(FOOT_APART_m, Math.hypot(one.x - other.x, one.y - other.y));
      return one === other ? standingResistance_ohm(ground, one.feet, part.cover) : pinPotential_ohm(ground, apart);
    }),
  );
  const all = [
    ...buried.resistance_ohm.map((row, electrode) => [...row, ...raised.map((place) => place[electrode] ?? 0)]),
    ...raised.map((row, place) => [...row, ...(between[place] ?? [])]),
  ];
  checkPassive(all, [...Object.keys(part.electrodes), ...Object.keys(part.places)]);
  return all;
}

/** Nothing may raise another more than itself: then no current anywhere could give off power. */
function checkPassive(resistance_ohm: readonly (readonly number[])[], names: readonly string[]): void {
  resistance_ohm.forEach((row, at) =>
    row.forEach((mutual, other) => {
      const own = Math.sqrt((row[at] ?? 0) * (resistance_ohm[other]?.[other] ?? 0));
      if (at !== other && !(mutual > 0 && mutual < 0.95 * own))
        throw new RangeError(`${names[at]} and ${names[other]} stand in one another`);
    }),
  );
  if (!isPassive(resistance_ohm)) throw new RangeError(`${names.join(', ')} stand too close to one another`);
}
