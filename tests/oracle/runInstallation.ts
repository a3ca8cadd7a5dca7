import { balance } from '../../src/electrics/index.ts';
import type { Network, Solution, Values } from '../../src/electrics/index.ts';
import { compile } from '../../src/installation/index.ts';
import type { Build } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import type { Interval, Timeline } from '../../src/scenario/index.ts';
import { isWhole } from '../scenario/holds.ts';
import { anyConditions } from './anyInstallation.ts';
import { largest } from './apart.ts';
import { installationOf } from './solvedInstallation.ts';

/** A thousand times looser than rounding; of what it is compared with. */
const LAWS = 1e-9;

/** What came of an installation that was read, compiled and run: refused with a part's name, or what is wrong with the answer. */
export interface Came {
  readonly refused: boolean;
  readonly wrong: readonly string[];
}

/** Draws an installation, every second one with silly values, and runs it whole. */
export function runInstallation(seed: number): Came {
  let build: Build | undefined;
  try {
    const { installation } = installationOf(seed, seed % 2 === 1);
    build = compile(installation);
    const timeline = run(build, anyConditions(installation, seed));
    return { refused: false, wrong: wrongWith(timeline).map((what) => `${what} in installation ${seed}`) };
  } catch (error) {
    const names = Object.keys(build?.installation.parts ?? {});
    const refused = error instanceof RangeError && names.some((name) => error.message.includes(name));
    return { refused, wrong: refused ? [] : [`installation ${seed} throws ${String(error)}`] };
  }
}

function wrongWith({ build, intervals }: Timeline): readonly string[] {
  const last = intervals.at(-1);
  const wrong = intervals.flatMap((interval, at) => [
    ...(interval.solution === intervals[at - 1]?.solution ? [] : lawsBroken(build, interval)),
    ...(isWhole(interval.people) && isWhole(interval.devices) && isWhole(interval.fault)
      ? []
      : ['something is no number']),
    ...(interval.harmonics ?? []).flatMap(({ order, solution }) =>
      isWhole(solution) ? [] : [`order ${order} is no number`],
    ),
    ...devicesWrong(build, interval),
    ...(intervals[at + 1] === undefined || intervals[at + 1]?.start_s === interval.end_s ? [] : ['time has a gap']),
  ]);
  return last?.end_s === Infinity ? wrong : [...wrong, 'the last interval ends'];
}

function lawsBroken({ network }: Build, { values, solution }: Interval): readonly string[] {
  if (!isWhole(solution)) return ['a voltage or a current is no number'];
  const { kirchhoff, ohm, power } = balance(network, values, solution);
  const allowed = LAWS + turningOf(network, values, solution);
  return kirchhoff <= allowed && Math.max(ohm, power) <= LAWS
    ? []
    : [`Kirchhoff misses by ${kirchhoff}, Ohm by ${ohm}, power by ${power}`];
}

/** What the last bit of the highest voltage drives through the least impedance of a core, of the largest current: where hardly
 *  anything flows, the ampere-turns of a core are no nearer to nothing than that. */
function turningOf({ cores = [] }: Network, { impedance: { re, im } }: Values, { volts, amperes }: Solution): number {
  const ohms = cores.flatMap(({ branches }) => branches.map((b) => Math.hypot(re[b]!, im[b]!)));
  const most_A = largest(amperes);
  return ohms.length === 0 || most_A === 0 ? 0 : (2 ** -52 * largest(volts)) / Math.min(...ohms) / most_A;
}

/** A residual device sees exactly the phasor sum of the conductors through it, order by order, and an open one carries nothing
 *  but what its gaps let through. Conductors are found by their names. */
function devicesWrong(build: Build, { devices, solution, harmonics = [] }: Interval): readonly string[] {
  const { parts } = build.installation;
  const { volts, amperes } = solution;
  const highest_V = volts.re.reduce((most, re, node) => Math.max(most, Math.hypot(re, volts.im[node]!)), 0);
  return devices.flatMap(({ device, state, residual_A }) => {
    const part = parts[device];
    const wrong: string[] = [];
    if (residual_A !== undefined && part !== undefined) {
      const through = conductorsThrough(device, part).map(build.branch);
      let [square, most] = [0, 0];
      for (const { re, im } of [amperes, ...harmonics.map((each) => each.solution.amperes)]) {
        square += through.reduce((sum, b) => sum + re[b]!, 0) ** 2 + through.reduce((sum, b) => sum + im[b]!, 0) ** 2;
        for (const b of through) most = Math.max(most, Math.hypot(re[b]!, im[b]!));
      }
      const off = Math.abs(residual_A - Math.sqrt(square));
      if (!(off <= 1e-12 * most)) wrong.push(`${device} sees ${residual_A} A, the sum is ${Math.sqrt(square)} A`);
    }
    if (state !== 'open') return wrong;
    const { poles } = build.devices.find(({ name }) => name === device)!;
    const most_A = poles.reduce((most, b) => Math.max(most, Math.hypot(amperes.re[b]!, amperes.im[b]!)), 0);
    return most_A <= (2.001 * highest_V) / 1e9 ? wrong : [...wrong, `${device} is open and carries ${most_A} A`];
  });
}

function conductorsThrough(name: string, part: Build['installation']['parts'][string]): readonly string[] {
  if (part.kind !== 'adjustable-breaker') return [`${name}.line`, `${name}.neutral`];
  const poles = part.poles === 1 ? [name] : ['a', 'b', 'c', 'd'].slice(0, part.poles).map((pole) => `${name}.${pole}`);
  return part.neutral ? [...poles, `${name}.neutral`] : poles;
}
