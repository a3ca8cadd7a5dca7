import { z } from 'zod';
import { capacitor } from '../capacitor.ts';
import { checkNameplate, nameplate_ohm, nameplateKeys, ohmsOf, type SeriesOhms } from '../nameplate.ts';
import { leakage, type PartKind, type PlannedBranch, type Surroundings } from '../plan.ts';
import { coupled, fromSequences, inSeries, interlaced, times, type OhmMatrix } from '../windings.ts';

const schema = z
  .strictObject({
    kind: z.literal('three-phase-transformer'),
    connection: z
      .enum(['delta-wye', 'wye-wye', 'delta', 'high-leg-delta'])
      .default('delta-wye')
      .describe(
        'delta-wye keeps zero sequence from the utility, wye-wye passes it; delta has no neutral; high-leg-delta is a ' +
          'delta with the middle of a–c brought out as neutral',
      ),
    rating_VA: z
      .number()
      .min(1)
      .max(1e9)
      .meta({ examples: [300000] })
      .describe('of all three phases'),
    secondary_V: z
      .number()
      .min(1)
      .max(1e5)
      .meta({ examples: [208] })
      .describe('line to line, no load'),
    angle_deg: z.number().min(-360).max(360).default(0).describe('of line a against the middle of the three'),
    ...nameplateKeys,
    zero_sequence_ratio: z
      .number()
      .gt(0)
      .max(10)
      .default(1)
      .describe('Z0 of the transformer itself over its Z1; of a wye'),
    primary_VA: z
      .number()
      .min(1)
      .max(1e12)
      .optional()
      .describe('three-phase short-circuit power of the utility behind it; absent: infinite'),
    primary_x_over_r: z
      .number()
      .min(0)
      .max(100)
      .default(10)
      .describe('of the utility (typical, common practice, no source)'),
    capacitance_nF: z
      .number()
      .gt(0)
      .max(1e9)
      .optional()
      .describe('of one line of the whole system to earth; absent: none but the insulation’s leakage'),
  })
  .superRefine(checkNameplate);

type ThreePhaseTransformer = z.output<typeof schema>;

const NONE: SeriesOhms = { r: 0, x: 0 };

/** The secondary of a three-phase transformer with the utility behind it. A wye has `<part>.a`, `.b` and `.c`, each from the
 *  neutral to its line; a delta `<part>.ab`, `.bc` and `.ca`, each driving towards its first letter; a high-leg delta `.ab`,
 *  `.bc` and the two halves `.a` and `.c`. Ohms written are those of one phase of the equivalent star. The phases turn a, b, c;
 *  b of the high-leg delta is the high leg. */
export const threePhaseTransformer = {
  kind: 'three-phase-transformer',
  schema,
  source: true,
  ends: 'a, b, c; with a wye or a high leg also neutral',
  terminals: (part) => (part.connection === 'delta' ? LINES : [...LINES, 'neutral']),
  plan(name, part, surroundings) {
    const base_ohm = part.secondary_V ** 2 / part.rating_VA;
    const own = nameplate_ohm(part, base_ohm);
    const utility =
      part.primary_VA === undefined ? NONE : ohmsOf(part.secondary_V ** 2 / part.primary_VA, part.primary_x_over_r);
    const { windings, matrix } = SECONDARIES[part.connection](part, own, utility);
    const branches = windings.map(({ name: which, from, to, emf_V, angle_deg }, at): PlannedBranch => ({
      name: `${name}.${which}`,
      from: `${name}.${from}`,
      to: `${name}.${to}`,
      role: 'winding',
      medium: 'metal',
      resistance_ohm: matrix[at]?.[at]?.r ?? 0,
      reactance_ohm: matrix[at]?.[at]?.x ?? 0,
      emf_V,
      angle_rad: ((part.angle_deg + angle_deg) * Math.PI) / 180,
    }));
    return {
      branches: [...branches, ...toEarth(name, part, surroundings)],
      winding: coupled(
        branches.map((branch) => branch.name),
        matrix,
      ),
      supply: {
        phases: 3,
        ...(part.connection === 'delta' ? {} : { neutral: `${name}.neutral` }),
        lines: lineVolts(part).map(({ line, emf_V, angle_deg }) => ({
          terminal: `${name}.${line}`,
          emf_V,
          angle_rad: ((part.angle_deg + angle_deg) * Math.PI) / 180,
        })),
      },
    };
  },
} satisfies PartKind<ThreePhaseTransformer>;

const LINES = ['a', 'b', 'c'] as const;

interface Secondary {
  readonly windings: readonly {
    readonly name: string;
    readonly from: string;
    readonly to: string;
    readonly emf_V: number;
    readonly angle_deg: number;
  }[];
  readonly matrix: OhmMatrix;
}

type Laying = (part: ThreePhaseTransformer, own: SeriesOhms, utility: SeriesOhms) => Secondary;

const SECONDARIES: Readonly<Record<ThreePhaseTransformer['connection'], Laying>> = {
  // The delta primary is a short circuit for zero sequence: of it only the transformer's own impedance is seen.
  'delta-wye': (part, own, utility) => star(part, times(own, part.zero_sequence_ratio), inSeries(own, utility)),
  // Z0 of the utility is taken as its Z1 (common practice, no source).
  'wye-wye': (part, own, utility) =>
    star(part, inSeries(times(own, part.zero_sequence_ratio), utility), inSeries(own, utility)),
  delta: ({ secondary_V }, own, utility) => ({
    windings: [ring('ab', secondary_V, 30), ring('bc', secondary_V, -90), ring('ca', secondary_V, 150)],
    matrix: ringMatrix(own, utility),
  }),
  'high-leg-delta': ({ secondary_V }, own, utility) => {
    const half = { from: 'neutral', emf_V: secondary_V / 2 };
    const halves = interlaced(times(own, 3));
    const behind = ringMatrix(NONE, utility);
    // The turns of each branch on the three cores, counted along the ring a → b → c → a.
    const turns = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, -0.5],
      [0, 0, 0.5],
    ];
    const leakages: OhmMatrix = [
      [times(own, 3), NONE, NONE, NONE],
      [NONE, times(own, 3), NONE, NONE],
      [NONE, NONE, inSeries(halves.common, halves.half), times(halves.common, -1)],
      [NONE, NONE, times(halves.common, -1), inSeries(halves.common, halves.half)],
    ];
    return {
      windings: [
        ring('ab', secondary_V, 30),
        ring('bc', secondary_V, -90),
        { name: 'a', to: 'a', ...half, angle_deg: -30 },
        { name: 'c', to: 'c', ...half, angle_deg: 150 },
      ],
      matrix: leakages.map((row, at) => row.map((ohms, by) => inSeries(ohms, seen(behind, turns[at], turns[by])))),
    };
  },
};

function star({ secondary_V }: ThreePhaseTransformer, zero: SeriesOhms, positive: SeriesOhms): Secondary {
  const winding = { from: 'neutral', emf_V: secondary_V / Math.sqrt(3) };
  return {
    windings: LINES.map((line, at) => ({ name: line, to: line, ...winding, angle_deg: -120 * at })),
    matrix: fromSequences(zero, positive),
  };
}

/** A winding of the ring, which drives towards its first letter. */
function ring(name: 'ab' | 'bc' | 'ca', emf_V: number, angle_deg: number): Secondary['windings'][number] {
  return { name, from: name.slice(1), to: name.slice(0, 1), emf_V, angle_deg };
}

/** Windings in a ring have three times the ohms of the equivalent star; current that goes round in the ring meets the
 *  windings' own impedance only. */
function ringMatrix(own: SeriesOhms, utility: SeriesOhms): OhmMatrix {
  return fromSequences(times(own, 3), times(inSeries(own, utility), 3));
}

function seen(behind: OhmMatrix, one: readonly number[] = [], other: readonly number[] = []): SeriesOhms {
  return behind
    .flatMap((row, at) => row.map((ohms, by) => times(ohms, (one[at] ?? 0) * (other[by] ?? 0))))
    .reduce(inSeries, NONE);
}

/** No-load volts of each line to the neutral, or to the middle of a delta. */
function lineVolts({ connection, secondary_V }: ThreePhaseTransformer) {
  if (connection === 'high-leg-delta')
    return [
      { line: 'a', emf_V: secondary_V / 2, angle_deg: -30 },
      { line: 'b', emf_V: (secondary_V * Math.sqrt(3)) / 2, angle_deg: -120 },
      { line: 'c', emf_V: secondary_V / 2, angle_deg: 150 },
    ];
  return LINES.map((line, at) => ({ line, emf_V: secondary_V / Math.sqrt(3), angle_deg: -120 * at }));
}

function toEarth(name: string, part: ThreePhaseTransformer, surroundings: Surroundings): readonly PlannedBranch[] {
  const ends = part.connection === 'delta' ? LINES : (['neutral'] as const);
  const leakages = ends.map((end) => leakage(`${name}.${end}.insulation`, `${name}.${end}`));
  const { capacitance_nF } = part;
  if (capacitance_nF === undefined) return leakages;
  const capacitances = LINES.map((line) =>
    capacitor(
      {
        name: `${name}.${line}.capacitance`,
        from: `${name}.${line}`,
        to: 'earth',
        role: 'insulation',
        medium: 'insulation',
      },
      capacitance_nF * 1e-9,
      surroundings,
    ),
  );
  return [...leakages, ...capacitances];
}
