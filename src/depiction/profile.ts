import { abs, add, phasor, sub, type Complex, type Phasors } from '../electrics/index.ts';
import { capital, label, quantity, say, type Vocabulary } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { Profile, Riser } from './depiction.ts';
import { LEAST_A, type Flow } from './flow.ts';
import { inPhase, reference } from './source.ts';

/** Where the volts of one circuit are spent: of the fault's, without one of the thing that may fail, else of the biggest load. */
export function profile(build: Build, interval: Interval, drawn: readonly Flow[], vocabulary: Vocabulary): Profile {
  const turning = turningPoint(build, interval);
  const { amperes } = interval.fault && turning === interval.fault.branch ? interval.fault.change : interval.solution;
  const along = reference(build, interval);
  const flow = (branch: number): number => inPhase(phasor(amperes, branch), along);
  if (turning === undefined) return { title: say('profile.none', vocabulary), out: [], home: [], ticks: [] };
  const [from, to] = flow(turning) < 0 ? ends(build, turning).toReversed() : ends(build, turning);
  const there = wayToWinding(build, from ?? 0, turning, flow);
  const back = wayToWinding(build, to ?? 0, turning, flow);
  // Found from the turning point backwards; shown from the winding on.
  const out = there.hops.map(({ branch }, i) => ({ branch, end: there.hops[i - 1]?.end ?? from ?? 0 })).toReversed();
  const live = sub(phasor(interval.solution.volts, there.terminal), phasor(interval.solution.volts, back.terminal));
  const volts = readVolts(interval.solution.volts, live);
  const x = placesOf(drawn);
  const driving = drivingVolts(build, interval, back.terminal, there.terminal);
  const title =
    abs(driving) < 1
      ? say('desk.profile', vocabulary)
      : capital(say('profile.heading', vocabulary, { volts: quantity(abs(driving), 'V') }));
  // What is not drawn by itself, a joint between two drawn things, counts with what follows it; at the end with what was last.
  const risers = (steps: readonly Hop[], first: Riser, towards: 1 | -1): readonly Riser[] => {
    const made = [first];
    for (const { branch, end } of steps) {
      const before = made.at(-1) ?? first;
      const { name = '', part = '' } = build.branches[branch] ?? {};
      const place = x.get(name);
      if (!place) continue;
      const reached = towards === 1 ? Math.max(before.x, place.x0, place.x1) : Math.min(before.x, place.x0, place.x1);
      made.push({ part, x: reached, volts: volts(end), label: spends(part, before.volts - volts(end), vocabulary) });
    }
    const [top, last] = [made.at(-1), steps.at(-1)];
    return top && last ? [...made.slice(0, -1), { ...top, volts: volts(last.end) }] : made;
  };
  const at = out.map(({ branch }) => x.get(build.branches[branch]?.name ?? '')).find((place) => place !== undefined);
  const winding = build.branches[build.sources[0] ?? 0]?.part ?? '';
  const gate = at ? Math.min(at.x0, at.x1) : 0;
  const given = volts(back.terminal) + inPhase(driving, direction(live));
  const source: Riser = { part: winding, x: gate - WINDING_WIDTH, volts: given, label: quantity(given, 'V') };
  const terminal: Riser = {
    part: winding,
    x: gate,
    volts: volts(there.terminal),
    label: spends(winding, given - volts(there.terminal), vocabulary),
  };
  const outRisers = [source, ...risers(out, terminal, 1)];
  const last = outRisers.at(-1);
  const top: Riser = {
    part: build.branches[turning]?.part ?? '',
    x: last?.x ?? 0,
    volts: volts(to ?? 0),
    label: label(build.branches[turning]?.part ?? '', vocabulary),
  };
  const homeRisers = risers(back.hops, top, -1);
  const touch = touched(build, interval, volts, last?.x ?? 0, vocabulary);
  const all = [...outRisers, ...homeRisers].map((riser) => riser.volts);
  return {
    title,
    out: outRisers,
    home: homeRisers,
    ...(touch ? { touch } : {}),
    ticks: ticks(Math.min(0, ...all), Math.max(...all)),
  };
}

/** Room in the drawing in which the winding's own volts are spent, left of its terminal; units of the drawing. */
const WINDING_WIDTH = 40;

function spends(part: string, volts: number, vocabulary: Vocabulary): string {
  const values = { part: label(part, vocabulary), volts: quantity(Math.abs(volts), 'V') };
  return capital(say('profile.spends', vocabulary, values));
}

/** What the windings between two of their terminals give before any of it is spent in them, V. */
function drivingVolts(build: Build, { values }: Interval, from: number, to: number): Complex {
  const given = new Map<number, Complex>([[from, { re: 0, im: 0 }]]);
  for (const _ of build.sources)
    for (const source of build.sources) {
      const [minus, plus] = ends(build, source);
      const [low, high] = [given.get(minus), given.get(plus)];
      const emf = phasor(values.emf, source);
      if (low && !high) given.set(plus, add(low, emf));
      if (high && !low) given.set(minus, sub(high, emf));
    }
  return given.get(to) ?? { re: 0, im: 0 };
}

/** A branch passed, and the node reached by it. */
interface Hop {
  readonly branch: number;
  readonly end: number;
}

/** The branch at which the way out ends and the way home begins. */
function turningPoint(build: Build, { fault, solution, devices }: Interval): number | undefined {
  if (fault && abs(fault.amperes) >= LEAST_A) return fault.branch;
  const loads = build.branches.flatMap(({ role, part }, branch) => {
    const amperes = abs(phasor(solution.amperes, branch));
    return role === 'load' && amperes >= LEAST_A ? [{ branch, part, amperes }] : [];
  });
  const failing = Object.values(build.installation.conditions).flatMap((one) =>
    one.kind === 'insulation-fault' ? one.between : [],
  );
  const own = loads.find(({ part }) => failing.some((terminal) => terminal.startsWith(`${part}.`)));
  if (!own && devices.some(({ state }) => state === 'open')) return undefined; // the story’s own circuit is dead
  return (own ?? loads.toSorted((a, b) => b.amperes - a.amperes)[0])?.branch;
}

/** The way from a node to the winding along the largest currents, through no load: the hops, and the terminal they end at.
 *  Each hop costs the more the less it carries. */
function wayToWinding(
  build: Build,
  start: number,
  turning: number,
  flow: (branch: number) => number,
): { readonly hops: readonly Hop[]; readonly terminal: number } {
  const terminals = new Set(build.sources.flatMap((source) => ends(build, source)));
  const touching = new Map<number, Hop[]>();
  build.branches.forEach(({ role }, branch) => {
    if (branch === turning || role === 'load' || role === 'winding' || role === 'insulation') return;
    if (Math.abs(flow(branch)) < LEAST_A / 10) return;
    const [a, b] = ends(build, branch);
    touching.set(a, [...(touching.get(a) ?? []), { branch, end: b }]);
    touching.set(b, [...(touching.get(b) ?? []), { branch, end: a }]);
  });
  const settled = new Set<number>();
  const open = new Map<number, { readonly cost: number; readonly hops: readonly Hop[] }>([
    [start, { cost: 0, hops: [] }],
  ]);
  for (;;) {
    let nearest: number | undefined;
    for (const [node, { cost }] of open)
      if (nearest === undefined || cost < (open.get(nearest)?.cost ?? 0)) nearest = node;
    const reached = nearest === undefined ? undefined : open.get(nearest);
    if (nearest === undefined || !reached) return { hops: [], terminal: start };
    if (terminals.has(nearest)) return { hops: reached.hops, terminal: nearest };
    open.delete(nearest);
    settled.add(nearest);
    for (const hop of touching.get(nearest) ?? []) {
      const cost = reached.cost + 1 / Math.abs(flow(hop.branch));
      if (!settled.has(hop.end) && cost < (open.get(hop.end)?.cost ?? Infinity))
        open.set(hop.end, { cost, hops: [...reached.hops, hop] });
    }
  }
}

function ends(build: Build, branch: number): readonly [number, number] {
  const { from = 0, to = 0 } = build.network.branches[branch] ?? {};
  return [from, to];
}

/** Volts of a node in phase with the winding's own. */
function readVolts(volts: Phasors, live: Complex): (node: number) => number {
  const along = direction(live);
  return (node) => inPhase(phasor(volts, node), along);
}

function direction({ re, im }: Complex): Complex {
  const size = Math.hypot(re, im) || 1;
  return { re: re / size, im: im / size };
}

/** Where each branch stands in the drawing. */
function placesOf(drawn: readonly Flow[]): ReadonlyMap<string, { readonly x0: number; readonly x1: number }> {
  return new Map(
    drawn.flatMap(({ stretch, route }) =>
      (stretch?.of.length === 1 ? stretch.of : []).map((name) => [
        name,
        { x0: route[0]?.x ?? 0, x1: route.at(-1)?.x ?? 0 },
      ]),
    ),
  );
}

function touched(
  build: Build,
  interval: Interval,
  volts: (node: number) => number,
  x: number,
  vocabulary: Vocabulary,
): Profile['touch'] {
  const person = build.people[0];
  const hand = person?.limbs.find(({ limb }) => limb === 'right hand');
  const feet = person?.limbs.find(({ limb }) => limb === 'feet');
  if (!interval.fault || !hand || !feet) return undefined;
  const [from_V, to_V] = [volts(feet.node), volts(hand.node)];
  if (Math.abs(to_V - from_V) < 1) return undefined;
  return {
    x,
    from_V,
    to_V,
    label: say('profile.touch', vocabulary, { volts: quantity(Math.abs(to_V - from_V), 'V') }),
  };
}

/** Lines of the scale: 50 V apart, 100 V where there are many. */
function ticks(low: number, high: number): Profile['ticks'] {
  const step = high - low > 250 ? 100 : 50;
  const marks: { volts: number; label: string }[] = [];
  for (let volts = Math.ceil((low - step * 0.4) / step) * step; volts <= high + step * 0.1; volts += step)
    marks.push({ volts: volts === 0 ? 0 : volts, label: quantity(volts, 'V') });
  return marks;
}
