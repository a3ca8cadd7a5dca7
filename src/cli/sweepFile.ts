import type { z } from 'zod';
import { figure, quantity, sweep, type Axis, type SweepPoint } from '../explain/index.ts';
import { openNamed } from './open.ts';
import type { sweepSchema } from './sweepSchema.ts';
import { table } from './table.ts';
import { WrongUse, type ExitCode, type World } from './world.ts';

/** What a map of two values shows at each crossing. */
export const SHOWN = ['opens', 'fault', 'metal', 'body', 'zone', 'safe'] as const;

/** What `ohmward sweep` was asked: one value, or two for a map. */
export interface SweepRequest {
  readonly file: string;
  readonly set: readonly string[];
  readonly json: boolean;
  readonly axes: readonly Axis[];
  readonly show: (typeof SHOWN)[number];
}

/** Runs an installation once for each value and prints a row for each, or a map of two; or everything as JSON. */
export function sweepFile(world: World, { file, set, json, axes, show }: SweepRequest): ExitCode {
  const opened = openNamed(world, file, set);
  if (opened === undefined) return 1;
  const { installation } = opened.build;
  const points = swept(() => [...sweep(installation, opened.conditions, axes)]);
  if (json) {
    const { place, region } = installation;
    const { conditions } = opened;
    const all: z.input<typeof sweepSchema> = { ohmward: 1, file, place, region, conditions, axes, points };
    world.print(JSON.stringify(all, null, 2));
    return 0;
  }
  const [first, second] = axes;
  const rows = second === undefined ? listOf(points, first) : mapOf(points, second.steps, show);
  const head = second === undefined ? [] : [`${show}: ${first?.path ?? ''} downwards, ${second.path} across`];
  world.print([installation.place, ...head, '', ...table(rows, world.columns)].join('\n'));
  return 0;
}

/** What was swept. @throws WrongUse saying what cannot be */
function swept(make: () => readonly SweepPoint[]): readonly SweepPoint[] {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) throw new WrongUse(error.message.replace(/^\w+: /, ''));
    throw error;
  }
}

function listOf(points: readonly SweepPoint[], axis: Axis | undefined): readonly (readonly string[])[] {
  return [
    [axis?.path ?? '', ...SHOWN],
    ...points.map((point) => [figure(point.values[0] ?? 0), ...SHOWN.map((what) => cell(point, what))]),
  ];
}

function mapOf(
  points: readonly SweepPoint[],
  across: number,
  show: SweepRequest['show'],
): readonly (readonly string[])[] {
  const lines = Array.from({ length: Math.ceil(points.length / across) }, (_, row) =>
    points.slice(row * across, (row + 1) * across),
  );
  return [
    ['', ...(lines[0] ?? []).map(({ values }) => figure(values[1] ?? 0))],
    ...lines.map((line) => [figure(line[0]?.values[0] ?? 0), ...line.map((point) => cell(point, show))]),
  ];
}

function cell(point: SweepPoint, what: SweepRequest['show']): string {
  switch (what) {
    case 'opens':
      return point.opens_s < Infinity ? quantity(point.opens_s, 's') : 'never';
    case 'fault':
      return quantity(point.fault_A, 'A');
    case 'metal':
      return quantity(point.metal_V, 'V');
    case 'body':
      return quantity(point.body_A, 'A');
    case 'zone':
      return point.zone;
    case 'safe':
      return point.safe ? 'yes' : 'no';
    default:
      return what satisfies never;
  }
}
