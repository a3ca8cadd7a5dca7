import type { Network, Phasors, Solution, Values } from '../../src/electrics/index.ts';
import type { Happening, Interval, Timeline } from '../../src/scenario/index.ts';

/** Relative; double rounding over a hundred branches stays far below. */
const KIRCHHOFF = 1e-9;

/** A contact that is open is a gap of 1 GΩ. */
const GAP_OHM = 1e9;

const ZONES = ['AC-1', 'AC-2', 'AC-3', 'AC-4.1', 'AC-4.2', 'AC-4.3'];

/** Everything that must be true of any run, whatever is the matter; returns what is not. The electrical laws are summed
 *  up here from the values, not asked of the solver. */
export function broken(timeline: Timeline): readonly string[] {
  const { intervals, build } = timeline;
  return [
    ...timeWrong(intervals),
    ...[...new Set(intervals.map(({ solution }) => solution))].flatMap((solution) => {
      const interval = intervals.find((candidate) => candidate.solution === solution);
      return interval === undefined ? [] : electricsWrong(build.network, interval.values, solution);
    }),
    ...intervals.flatMap((interval) => openWrong(timeline, interval)),
    ...operationsWrong(timeline),
    ...peopleWrong(intervals),
    ...intervals.flatMap((interval) =>
      Object.entries(interval).flatMap(([key, value]) => (isWhole(value) ? [] : [`${key} holds what is no number`])),
    ),
  ];
}

/** Kirchhoff at every node, Ohm in every branch, and as much power out of the sources as into everything else. */
export function electricsWrong(network: Network, values: Values, { volts, amperes }: Solution): readonly string[] {
  const { re, im } = amperes;
  const { emf } = values;
  const [fallRe, fallIm] = falls(network, values, amperes);
  const sumRe = new Float64Array(network.nodes.length);
  const sumIm = new Float64Array(network.nodes.length);
  let largest = 0;
  let highest_V = 0;
  let unexplained_V = 0;
  let given = 0;
  let surplusRe = 0;
  let surplusIm = 0;
  network.branches.forEach(({ from, to }, b) => {
    const [ir, ii] = [re[b]!, im[b]!];
    const size = Math.sqrt(ir * ir + ii * ii);
    if (!(size <= largest)) largest = size;
    sumRe[from]! -= ir;
    sumIm[from]! -= ii;
    sumRe[to]! += ir;
    sumIm[to]! += ii;
    const netRe = emf.re[b]! - fallRe[b]!;
    const netIm = emf.im[b]! - fallIm[b]!;
    const overRe = volts.re[from]! - volts.re[to]! + netRe;
    const overIm = volts.im[from]! - volts.im[to]! + netIm;
    unexplained_V = Math.max(unexplained_V, Math.abs(overRe), Math.abs(overIm));
    highest_V = Math.max(highest_V, Math.abs(emf.re[b]!), Math.abs(emf.im[b]!));
    given += Math.hypot(emf.re[b]!, emf.im[b]!) * size;
    surplusRe += netRe * ir + netIm * ii;
    surplusIm += netIm * ir - netRe * ii;
  });
  const found: string[] = [];
  sumRe.forEach((sum, node) => {
    const over = Math.sqrt(sum * sum + sumIm[node]! * sumIm[node]!) / largest;
    if (!(over <= KIRCHHOFF)) found.push(`currents at ${network.nodes[node]} sum to ${over} of the largest`);
  });
  const lost = Math.hypot(surplusRe, surplusIm) / given;
  const share = unexplained_V / highest_V;
  if (!(share <= KIRCHHOFF)) found.push(`${share} of the highest EMF is explained by no current`);
  if (!(lost <= KIRCHHOFF)) found.push(`${lost} of the power comes from nowhere`);
  return found;
}

/** Z·I of every branch, windings by their matrix. */
function falls({ branches, windings }: Network, { impedance, coupling }: Values, { re, im }: Phasors) {
  const fallRe = new Float64Array(branches.length);
  const fallIm = new Float64Array(branches.length);
  for (let b = 0; b < branches.length; b += 1) {
    fallRe[b] = impedance.re[b]! * re[b]! - impedance.im[b]! * im[b]!;
    fallIm[b] = impedance.re[b]! * im[b]! + impedance.im[b]! * re[b]!;
  }
  windings.forEach(({ branches: wound }, w) => {
    const matrix = coupling[w]!;
    wound.forEach((b, row) => {
      fallRe[b] = 0;
      fallIm[b] = 0;
      wound.forEach((other, column) => {
        const at = row * wound.length + column;
        fallRe[b]! += matrix.re[at]! * re[other]! - matrix.im[at]! * im[other]!;
        fallIm[b]! += matrix.re[at]! * im[other]! + matrix.im[at]! * re[other]!;
      });
    });
  });
  return [fallRe, fallIm] as const;
}

function timeWrong(intervals: readonly Interval[]): readonly string[] {
  const found: string[] = [];
  if (intervals[0]?.start_s !== -1) found.push('the first interval does not begin at -1 s');
  if (intervals.at(-1)?.end_s !== Infinity) found.push('the last interval ends');
  intervals.forEach(({ start_s, end_s }, index) => {
    const next = intervals[index + 1];
    if (next !== undefined && next.start_s !== end_s) found.push(`a gap in time at ${end_s} s`);
    if (!(end_s >= start_s)) found.push(`an interval from ${start_s} to ${end_s} s`);
  });
  return found;
}

/** What is open carries no more than its insulation lets through. */
function openWrong({ build }: Timeline, { devices, snapshot, solution }: Interval): readonly string[] {
  const { volts, amperes } = solution;
  const highest_V = Math.max(...volts.re.map((re, node) => Math.hypot(re, volts.im[node]!)));
  return build.devices.flatMap(({ name, poles }) => {
    const moment = devices.find(({ device }) => device === name);
    const isOpen = moment?.state === 'open';
    if (isOpen !== (snapshot.devices[name] === 'tripped')) return [`${name} is told and held in two states`];
    if (!isOpen) return [];
    const carried = Math.max(...poles.map((pole) => Math.hypot(amperes.re[pole]!, amperes.im[pole]!)));
    return carried <= (2.001 * highest_V) / GAP_OHM ? [] : [`${name} is open and carries ${carried} A`];
  });
}

/** Who is told to have operated did, once, with a reason, and stays open; who had a reason and could, did. */
function operationsWrong({ build, intervals, horizon_s, tolerance }: Timeline): readonly string[] {
  const found: string[] = [];
  intervals.forEach(({ because, devices }, index) => {
    if (because.kind !== 'device-operated') return;
    const before = intervals[index - 1]?.devices.find(({ device }) => device === because.device);
    if (before?.state !== 'closed') found.push(`${because.device} operated while ${before?.state ?? 'absent'}`);
    if (devices.find(({ device }) => device === because.device)?.state !== 'open')
      found.push(`${because.device} operated and is not open`);
    if (before !== undefined) found.push(...reasonWrong(build, intervals.slice(0, index), because, tolerance));
  });
  for (const { name } of build.devices) {
    const operated = intervals.findIndex(
      ({ because }) => because.kind === 'device-operated' && because.device === name,
    );
    const again = intervals.filter(({ because }) => because.kind === 'device-operated' && because.device === name);
    if (again.length > 1) found.push(`${name} operated ${again.length} times`);
    intervals.forEach(({ devices, start_s, end_s }, index) => {
      const moment = devices.find(({ device }) => device === name);
      if (moment === undefined) return;
      const { state, operation } = moment;
      if ((state === 'open') !== (operated >= 0 && index >= operated))
        found.push(`${name} is ${state} at ${start_s} s`);
      if (state === 'open' && operation.region !== 'none') found.push(`${name} would operate after it is open`);
      const due_s = Math.max(0, start_s) + operation.at_s;
      const until_s = Math.min(end_s, horizon_s);
      if (state === 'closed' && due_s < until_s * (1 - 1e-12))
        found.push(`${name} was due at ${due_s} s and stayed shut`);
    });
  }
  return found;
}

/** A magnetic trip needs at least 5 times the rating at that moment (typical band 5 to 20, from memory), of a fast one the
 *  first peak, at most twice that of the steady wave (IEC 60909-0); a GFCI at least 4 mA
 *  (UL 943: must not trip below); a thermal one more than the rating (UL 489: holds 100 % for ever), then or earlier: the
 *  bimetal keeps its heat when another device takes the current away. */
function reasonWrong(
  build: Timeline['build'],
  before: readonly Interval[],
  { device, operation }: Extract<Happening, { kind: 'device-operated' }>,
  tolerance: Timeline['tolerance'],
): readonly string[] {
  const info = build.devices.find(({ name }) => name === device);
  const seen = before.flatMap(({ devices }) => devices.filter((moment) => moment.device === device));
  const last = seen.at(-1);
  const conditions = before.at(-1)?.conditions;
  if (info === undefined || last === undefined || conditions === undefined) return [`there is no ${device}`];
  const settings = info.settings(conditions);
  const wrong = [`${device} operated (${operation.region}) at ${last.amperes} A, ${last.residual_A ?? 0} A residual`];
  if (settings.family === 'ul943-class-a') {
    const seen_A = operation.region === 'residual' && (last.residual_A ?? 0) >= 0.004;
    // Its own detector: a loop of 4 Ω or less.
    return seen_A || (operation.region === 'grounded-neutral' && (last.reads_ohm ?? Infinity) <= 4) ? [] : wrong;
  }
  if (!('rating_A' in settings)) return wrong;
  switch (operation.region) {
    case 'magnetic':
      return last.amperes >= (tolerance === 'fast' ? 5 / 2 : 5) * settings.rating_A ? [] : wrong;
    case 'thermal':
      return seen.some(({ amperes }) => amperes > settings.rating_A) ? [] : wrong;
    default:
      return wrong;
  }
}

function peopleWrong(intervals: readonly Interval[]): readonly string[] {
  return intervals.flatMap(({ people, because, start_s }, index) =>
    people.flatMap((now, place): readonly string[] => {
      const before = intervals[index - 1]?.people[place];
      const found: string[] = [];
      if (before !== undefined && ZONES.indexOf(now.zone) < ZONES.indexOf(before.zone))
        found.push(`${now.person} is healed at ${start_s} s`);
      if (before !== undefined && now.exposure_s < before.exposure_s)
        found.push(`${now.person} forgets at ${start_s} s`);
      const reached = because.kind === 'zone-reached' && because.person === now.person;
      if (reached && because.zone !== now.zone) found.push(`${now.person} is told ${because.zone}, is in ${now.zone}`);
      const released = because.kind === 'person-released' && because.person === now.person;
      if (released && now.touching.length > 0) found.push(`${now.person} let go and still touches`);
      if (released && before?.letGo !== true) found.push(`${now.person} was held and let go`);
      if (now.touching.length === 0 && now.body_A !== 0) found.push(`${now.person} carries current without touching`);
      return found;
    }),
  );
}

/** Whether every number in this is one. Infinity means "never" and is allowed outside of a solution; NaN never is. */
export function isWhole(value: unknown): boolean {
  if (typeof value === 'number') return !Number.isNaN(value);
  if (value instanceof Float64Array) return value.every(Number.isFinite);
  if (typeof value !== 'object' || value === null) return true;
  return Object.values(value).every(isWhole);
}
