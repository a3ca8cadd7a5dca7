import { z } from 'zod';
import { ohmsOf, type SeriesOhms } from './nameplate.ts';
import { JOINT_OHM, leakage, type Plan, type PlannedBranch } from './plan.ts';
import { coupled, fromSequences, times } from './windings.ts';

/** What is written of any machine that makes its own volts: a generator, an inverter. */
export const generatedKeys = {
  rating_VA: z
    .number()
    .min(1)
    .max(1e9)
    .meta({ examples: [3000] }),
  connection: z
    .enum(['single-phase', 'split-phase', 'three-phase'])
    .default('single-phase')
    .describe('terminals a; a and b; a, b and c; and neutral and frame'),
  voltage_V: z.number().gt(0).max(1e5).optional().describe('line to neutral; absent: 120 in north-america, 230 in iec'),
  angle_deg: z.number().min(-360).max(360).default(0),
  neutral: z
    .enum(['floating', 'bonded'])
    .describe('bonded: joined to the frame inside, the branch <part>.bond; floating: not at all'),
  frame_to_earth_ohm: z
    .number()
    .gt(0)
    .max(1e10)
    .default(1e7)
    .describe('through feet or wheels (rubber on dirty ground, invented)'),
};

interface Generated {
  readonly rating_VA: number;
  readonly connection: 'single-phase' | 'split-phase' | 'three-phase';
  readonly voltage_V?: number | undefined;
  readonly angle_deg: number;
  readonly neutral: 'floating' | 'bonded';
  readonly frame_to_earth_ohm: number;
}

const LINES = { 'single-phase': ['a'], 'split-phase': ['a', 'b'], 'three-phase': ['a', 'b', 'c'] } as const;
const TURN_deg = { 'single-phase': 0, 'split-phase': -180, 'three-phase': -120 } as const;

/** The terminals of such a machine, after the dot. */
export function generatedTerminals({ connection }: Pick<Generated, 'connection'>): readonly string[] {
  return [...LINES[connection], 'neutral', 'frame'];
}

/** Volts of a line to the neutral. */
function generated_V({ voltage_V }: Generated, region: 'north-america' | 'iec'): number {
  return voltage_V ?? (region === 'iec' ? 230 : 120);
}

/** Current of one line at the rating, A. */
export function rated_A(part: Generated, region: 'north-america' | 'iec'): number {
  return part.rating_VA / generated_V(part, region) / LINES[part.connection].length;
}

/** A machine with its windings `<part>.a` … from the neutral to each line, its bond if it has one, and its frame on the ground.
 *  @param made impedance of a line per unit of the rating, its X/R, Z0 over Z1, and what it can give at most */
export function planGenerated(
  name: string,
  part: Generated,
  region: 'north-america' | 'iec',
  made: {
    readonly impedance_pu: number;
    readonly x_over_r: number;
    readonly zeroRatio: number;
    readonly limit_A?: number;
  },
): Plan {
  const volts = generated_V(part, region);
  const lines = LINES[part.connection];
  const own = ohmsOf((made.impedance_pu * volts) / rated_A(part, region), made.x_over_r);
  const branches = lines.map((line, at): PlannedBranch => ({
    name: `${name}.${line}`,
    from: `${name}.neutral`,
    to: `${name}.${line}`,
    role: 'winding',
    medium: 'metal',
    resistance_ohm: own.r,
    reactance_ohm: own.x,
    emf_V: volts,
    angle_rad: ((part.angle_deg + at * TURN_deg[part.connection]) * Math.PI) / 180,
    ...(made.limit_A === undefined ? {} : { limit_A: made.limit_A }),
  }));
  return {
    branches: [
      ...branches,
      ...bondOf(name, part),
      leakage(`${name}.insulation`, `${name}.neutral`),
      leakage(`${name}.feet`, `${name}.frame`, part.frame_to_earth_ohm),
    ],
    ...(part.connection === 'three-phase' ? { winding: threePhase(branches, own, made.zeroRatio) } : {}),
    supply: {
      phases: lines.length,
      neutral: `${name}.neutral`,
      lines: branches.map(({ to, emf_V = 0, angle_rad = 0 }) => ({ terminal: to, emf_V, angle_rad })),
    },
  };
}

function threePhase(branches: readonly PlannedBranch[], own: SeriesOhms, zeroRatio: number) {
  return coupled(
    branches.map(({ name }) => name),
    fromSequences(times(own, zeroRatio), own),
  );
}

function bondOf(name: string, part: Generated): readonly PlannedBranch[] {
  if (part.neutral === 'floating') return [];
  const ends = { from: `${name}.neutral`, to: `${name}.frame` };
  return [
    { name: `${name}.bond`, ...ends, role: 'bond', medium: 'metal', resistance_ohm: JOINT_OHM, reactance_ohm: 0 },
  ];
}
