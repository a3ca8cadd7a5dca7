import { abs, type Complex } from '../../electrics/index.ts';
import type { Build, DeviceInfo } from '../../installation/index.ts';
import { coldOutlook } from '../../scenario/index.ts';
import type { Point } from './points.ts';
import type { Roads } from './roads.ts';
import { at, type Standing } from './standing.ts';

/** A cable a circuit runs through. */
export interface Run {
  readonly cable: string;
  /** Absent where its ohms are measured. */
  readonly length_m?: number;
  /** Its line core, and its protective one if the fault comes home on it, by branch. */
  readonly line: number;
  readonly protective?: number;
  /** Sizes as written on a drum, where they are. */
  readonly lineSize?: string;
  readonly protectiveSize?: string;
  /** Behind a socket: what is plugged in there is protected by what it is. */
  readonly plugged: boolean;
}

/** How a line of a point comes from its source. */
export interface Circuit {
  /** Devices that can open it, the nearest first; jammed and missing ones are not among them. */
  readonly devices: readonly DeviceInfo[];
  /** Rating of the nearest device that counts overcurrent, A. */
  readonly rating_A?: number;
  readonly guard?: DeviceInfo;
  /** Cables, the nearest first. */
  readonly runs: readonly Run[];
}

/** The road of a line from its source to a point. */
export function circuitOf({ build, conditions }: Standing, roads: Roads, point: Point, line: number): Circuit {
  const out = roads.up(line);
  const home = new Set(point.metal === undefined ? [] : roads.up(point.metal.node));
  const inTheWay = out.flatMap((branch, step) =>
    build.devices.filter(({ poles }) => poles.includes(branch)).map((device) => ({ device, step })),
  );
  const working = inTheWay
    .map(({ device }) => device)
    .filter((device) => device.fitted(conditions) && !device.jammed(conditions));
  const rated = inTheWay.flatMap(({ device, step }) => {
    const rating_A = rating(device, conditions);
    return rating_A === undefined ? [] : [{ device, rating_A, step }];
  });
  const [guard] = rated;
  return {
    devices: working,
    ...(guard === undefined ? {} : { rating_A: guard.rating_A, guard: guard.device }),
    // What lies before the device that guards the circuit is not its to protect.
    runs: runsOf(build, guard === undefined ? [] : out.slice(0, guard.step), home),
  };
}

/** What a device carries for ever, A; undefined for one that counts only what does not come back. */
export function rating(device: DeviceInfo, conditions: Standing['conditions']): number | undefined {
  const settings = device.settings(conditions);
  return 'rating_A' in settings ? settings.rating_A : undefined;
}

/** Latest and earliest opening of a circuit at this current, s from cold; who opens first at the latest.
 *  @param missing true where the current does not come back through the residual devices */
export function opening(
  { devices }: Circuit,
  { build, conditions }: Standing,
  amperes: number,
  missing: boolean,
): { readonly device?: DeviceInfo; readonly latest_s: number; readonly earliest_s: number } {
  const residual_A = missing ? amperes : 0;
  const { frequency_Hz } = build.installation;
  let best: { device?: DeviceInfo; latest_s: number; earliest_s: number } = {
    latest_s: Infinity,
    earliest_s: Infinity,
  };
  for (const device of devices) {
    const { latest_s, earliest_s } = coldOutlook(device, conditions, { amperes, residual_A, frequency_Hz });
    const sooner = Math.min(best.earliest_s, earliest_s);
    best =
      latest_s < best.latest_s || best.device === undefined
        ? { device, latest_s, earliest_s: sooner }
        : { ...best, earliest_s: sooner };
  }
  return best;
}

function runsOf(build: Build, out: readonly number[], home: ReadonlySet<number>): readonly Run[] {
  const { parts, joins } = build.installation;
  const joined = new Set(joins.map(({ between: [from, to] }) => `${from} – ${to}`));
  const socketAt = out.findIndex((branch) => {
    const ends = build.network.branches[branch];
    return [ends?.from, ends?.to].some((node) => {
      const terminal = build.network.nodes[node ?? 0] ?? '';
      return parts[terminal.split('.', 1)[0] ?? '']?.kind === 'outlet';
    });
  });
  return out.flatMap((line, step): Run[] => {
    const info = build.branches[line];
    const made = info === undefined ? undefined : parts[info.part];
    if (info === undefined || made?.kind !== 'cable' || joined.has(info.name)) return [];
    const core = (branch: number) =>
      written(made.cores[build.branches[branch]?.name.slice(info.part.length + 1) ?? '']);
    const protective = build.branches.findIndex(
      (other, branch) => other.part === info.part && other.role === 'protective' && home.has(branch),
    );
    const lineSize = core(line);
    const protectiveSize = protective < 0 ? undefined : core(protective);
    return [
      {
        cable: info.part,
        line,
        plugged: step < socketAt,
        ...(made.length_m === undefined ? {} : { length_m: made.length_m }),
        ...(protective < 0 ? {} : { protective }),
        ...(lineSize === undefined ? {} : { lineSize }),
        ...(protectiveSize === undefined ? {} : { protectiveSize }),
      },
    ];
  });
}

function written(core: unknown): string | undefined {
  return typeof core === 'string' ? core : undefined;
}

/** Ohms of the cores of a cable that a fault behind it passes, as a phasor. */
export function passes({ impedance }: Standing, { line, protective }: Run): Complex {
  const one = at(impedance, line);
  const other = protective === undefined ? { re: 0, im: 0 } : at(impedance, protective);
  return { re: one.re + other.re, im: one.im + other.im };
}

/** Longest run of a cable whose loop stays within this limit, m: |rest + ℓ·z| = limit, all else as it is. */
export function longestRun_m(loop: Complex, own: Complex, length_m: number, limit_ohm: number): number {
  const rest = { re: loop.re - own.re, im: loop.im - own.im };
  const metre = { re: own.re / length_m, im: own.im / length_m };
  const square = metre.re ** 2 + metre.im ** 2;
  const half = rest.re * metre.re + rest.im * metre.im;
  const beyond = abs(rest) ** 2 - limit_ohm ** 2;
  if (beyond >= 0 || square === 0) return beyond >= 0 ? 0 : Infinity;
  return (-half + Math.sqrt(half ** 2 - square * beyond)) / square;
}
