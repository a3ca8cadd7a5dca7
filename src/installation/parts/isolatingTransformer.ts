import { z } from 'zod';
import { checkNameplate, nameplate_ohm, nameplateKeys, type SeriesOhms } from '../nameplate.ts';
import { leakage, type PartKind, type PlannedBranch, type PlannedCore, type PlannedSupply } from '../plan.ts';
import { interlaced, times } from '../windings.ts';

const volts = z.number().min(1).max(1e5);

const schema = z
  .strictObject({
    kind: z.literal('isolating-transformer'),
    connection: z
      .enum(['single-phase', 'centre-tapped', 'delta-wye'])
      .default('single-phase')
      .describe(
        'secondary a and b; the same with their middle as neutral; three phases, delta primary and wye secondary',
      ),
    rating_VA: z
      .number()
      .min(1)
      .max(1e9)
      .meta({ examples: [45000] }),
    primary_V: volts.meta({ examples: [480] }).describe('line to line'),
    secondary_V: volts.meta({ examples: [208] }).describe('line to line, no load'),
    ...nameplateKeys,
  })
  .superRefine(checkNameplate);

type IsolatingTransformer = z.output<typeof schema>;

interface Core {
  readonly primary: readonly [from: string, to: string];
  readonly secondaries: readonly { readonly name: string; readonly from: string; readonly to: string }[];
  /** Volts, which stand for turns. */
  readonly turns: { readonly primary: number; readonly secondary: number };
  readonly leakage: { readonly primary: SeriesOhms; readonly secondary: SeriesOhms };
}

/** A transformer inside an installation, so that load and faults behind it are felt before it and a new system begins: its
 *  primaries are loads, `<part>.primary` or `.primary.a` …, its secondaries the source that current behind it goes home to,
 *  `<part>.secondary` or `.secondary.a` …. The case is joined to nothing unless a join says so. */
export const isolatingTransformer = {
  kind: 'isolating-transformer',
  schema,
  ends: 'primary.a, primary.b, secondary.a, secondary.b; centre-tapped also secondary.neutral; three phases also primary.c, secondary.c, secondary.neutral; case',
  terminals: ({ connection }) => {
    const lines = connection === 'delta-wye' ? ['a', 'b', 'c'] : ['a', 'b'];
    return [
      ...lines.map((line) => `primary.${line}`),
      ...lines.map((line) => `secondary.${line}`),
      ...(connection === 'single-phase' ? [] : ['secondary.neutral']),
      'case',
    ];
  },
  mustJoin: ({ connection }) =>
    connection === 'delta-wye' ? ['primary.a', 'primary.b', 'primary.c'] : ['primary.a', 'primary.b'],
  plan(name, part) {
    const laid = coresOf(part).map((core) => planCore(name, core));
    const point = part.connection === 'single-phase' ? 'b' : 'neutral';
    return {
      branches: [
        ...laid.flatMap(({ branches }) => branches),
        leakage(`${name}.insulation`, `${name}.secondary.${point}`),
      ],
      cores: laid.map(({ core }) => core),
      supply: supplyOf(name, part),
    };
  },
} satisfies PartKind<IsolatingTransformer>;

function coresOf(part: IsolatingTransformer): readonly Core[] {
  const { primary_V, secondary_V, rating_VA } = part;
  const whole = nameplate_ohm(part, secondary_V ** 2 / rating_VA);
  switch (part.connection) {
    case 'single-phase': {
      const turns = { primary: primary_V, secondary: secondary_V };
      const secondaries = [{ name: 'secondary', from: 'b', to: 'a' }];
      return [{ primary: ['a', 'b'], secondaries, turns, leakage: shared(whole, turns) }];
    }
    case 'centre-tapped': {
      const { common, half } = interlaced(whole);
      const turns = { primary: primary_V, secondary: secondary_V / 2 };
      const secondaries = [
        { name: 'secondary.a', from: 'neutral', to: 'a' },
        { name: 'secondary.b', from: 'b', to: 'neutral' },
      ];
      const primary = times(common, (turns.primary / turns.secondary) ** 2);
      return [{ primary: ['a', 'b'], secondaries, turns, leakage: { primary, secondary: half } }];
    }
    case 'delta-wye': {
      const turns = { primary: primary_V, secondary: secondary_V / Math.sqrt(3) };
      return (['ab', 'bc', 'ca'] as const).map((ends): Core => {
        const [from = '', to = ''] = ends;
        const secondaries = [{ name: `secondary.${from}`, from: 'neutral', to: from }];
        return { primary: [from, to], secondaries, turns, leakage: shared(whole, turns) };
      });
    }
    default:
      return part.connection satisfies never;
  }
}

/** Half the leakage on each side (common practice, no source); what either side sees is the whole. */
function shared(whole: SeriesOhms, turns: Core['turns']): Core['leakage'] {
  const half = times(whole, 0.5);
  return { primary: times(half, (turns.primary / turns.secondary) ** 2), secondary: half };
}

function planCore(
  name: string,
  { primary: [from, to], secondaries, turns, leakage: ohms }: Core,
): { readonly branches: readonly PlannedBranch[]; readonly core: PlannedCore } {
  const three = secondaries[0]?.from === 'neutral' && secondaries.length === 1;
  const primary: PlannedBranch = {
    name: three ? `${name}.primary.${from}` : `${name}.primary`,
    from: `${name}.primary.${from}`,
    to: `${name}.primary.${to}`,
    role: 'load',
    medium: 'load',
    resistance_ohm: ohms.primary.r,
    reactance_ohm: ohms.primary.x,
  };
  const out = secondaries.map((secondary): PlannedBranch => ({
    name: `${name}.${secondary.name}`,
    from: `${name}.secondary.${secondary.from}`,
    to: `${name}.secondary.${secondary.to}`,
    role: 'winding',
    medium: 'metal',
    resistance_ohm: ohms.secondary.r,
    reactance_ohm: ohms.secondary.x,
  }));
  const branches = [primary, ...out];
  // A secondary is counted the way its current leaves, against the primary.
  return {
    branches,
    core: {
      branches: branches.map((branch) => branch.name),
      turns: [turns.primary, ...out.map(() => -turns.secondary)],
    },
  };
}

function supplyOf(name: string, { connection, secondary_V }: IsolatingTransformer): PlannedSupply {
  const line = (which: string, emf_V: number, angle_rad: number) => ({
    terminal: `${name}.secondary.${which}`,
    emf_V,
    angle_rad,
  });
  const neutral = `${name}.secondary.neutral`;
  switch (connection) {
    case 'single-phase':
      return { phases: 1, neutral: `${name}.secondary.b`, lines: [line('a', secondary_V, 0)] };
    case 'centre-tapped':
      return { phases: 2, neutral, lines: [line('a', secondary_V / 2, 0), line('b', secondary_V / 2, Math.PI)] };
    case 'delta-wye':
      return {
        phases: 3,
        neutral,
        lines: ['a', 'b', 'c'].map((which, at) => line(which, secondary_V / Math.sqrt(3), (-2 * Math.PI * at) / 3)),
      };
    default:
      return connection satisfies never;
  }
}
