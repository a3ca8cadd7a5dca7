import { abs, phasor, sub, type Complex, type Phasors } from '../electrics/index.ts';
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
  const out = walk(build, turning, flow, -1).toReversed();
  const home = walk(build, turning, flow, 1);
  const ends = endsOf(build, out[0]?.branch ?? turning, flow);
  const live = sub(phasor(interval.solution.volts, ends.live), phasor(interval.solution.volts, ends.back));
  const volts = readVolts(interval.solution.volts, live);
  const x = placesOf(drawn);
  const title = capital(say('profile.heading', vocabulary, { volts: quantity(abs(live), 'V') }));
  const risers = (steps: readonly Passed[], first: Riser | undefined, towards: 1 | -1): readonly Riser[] => {
    let now = first?.x ?? (towards === 1 ? 0 : Infinity);
    const made = steps.flatMap(({ branch, start, end }): Riser[] => {
      const place = x.get(build.branches[branch]?.name ?? '');
      if (!place) return [];
      now = towards === 1 ? Math.max(now, place.x1, place.x0) : Math.min(now, place.x0, place.x1);
      const part = build.branches[branch]?.part ?? '';
      const spent = quantity(Math.abs(volts(start) - volts(end)), 'V');
      return [
        {
          part,
          x: now,
          volts: volts(end),
          label: capital(say('profile.spends', vocabulary, { part: label(part, vocabulary), volts: spent })),
        },
      ];
    });
    return first ? [first, ...made] : made;
  };
  const at = out.map(({ branch }) => x.get(build.branches[branch]?.name ?? '')).find((place) => place !== undefined);
  const source: Riser = {
    part: build.branches[build.sources[0] ?? 0]?.part ?? '',
    x: at ? Math.min(at.x0, at.x1) : 0,
    volts: volts(ends.live),
    label: quantity(volts(ends.live), 'V'),
  };
  const outRisers = risers(out, source, 1);
  const last = outRisers.at(-1);
  const turningStep = endsAlong(build, turning, flow);
  const top: Riser = {
    part: build.branches[turning]?.part ?? '',
    x: last?.x ?? 0,
    volts: volts(turningStep.end),
    label: label(build.branches[turning]?.part ?? '', vocabulary),
  };
  const homeRisers = risers(home, top, -1);
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

interface Passed {
  readonly branch: number;
  readonly start: number;
  readonly end: number;
}

/** The branch at which the way out ends and the way home begins. */
function turningPoint(build: Build, { fault, solution }: Interval): number | undefined {
  if (fault && abs(fault.amperes) >= LEAST_A) return fault.branch;
  const loads = build.branches.flatMap(({ role, part }, branch) => {
    const amperes = abs(phasor(solution.amperes, branch));
    return role === 'load' && amperes >= LEAST_A ? [{ branch, part, amperes }] : [];
  });
  const failing = Object.values(build.installation.conditions).flatMap((one) =>
    one.kind === 'insulation-fault' ? one.between : [],
  );
  const own = loads.find(({ part }) => failing.some((terminal) => terminal.startsWith(`${part}.`)));
  return (own ?? loads.toSorted((a, b) => b.amperes - a.amperes)[0])?.branch;
}

/** Follows the largest current from a branch to the winding; direction 1 downstream, −1 upstream. */
function walk(build: Build, from: number, flow: (branch: number) => number, direction: 1 | -1): readonly Passed[] {
  const passed: Passed[] = [];
  const seen = new Set<number>([from]);
  const first = endsAlong(build, from, flow);
  let node = direction === 1 ? first.end : first.start;
  for (;;) {
    let best: Passed | undefined;
    let most = LEAST_A / 10;
    build.network.branches.forEach((_, branch) => {
      if (seen.has(branch)) return;
      const step = endsAlong(build, branch, flow);
      const size = Math.abs(flow(branch));
      if ((direction === 1 ? step.start : step.end) === node && size > most) [best, most] = [{ branch, ...step }, size];
    });
    if (!best || build.sources.includes(best.branch)) return passed;
    seen.add(best.branch);
    passed.push(best);
    node = direction === 1 ? best.end : best.start;
  }
}

/** The nodes of a branch in the direction of its current. */
function endsAlong(
  build: Build,
  branch: number,
  flow: (branch: number) => number,
): { readonly start: number; readonly end: number } {
  const { from = 0, to = 0 } = build.network.branches[branch] ?? {};
  return flow(branch) < 0 ? { start: to, end: from } : { start: from, end: to };
}

/** The live end and the other end of the winding that a branch hangs on. */
function endsOf(
  build: Build,
  first: number,
  flow: (branch: number) => number,
): { readonly live: number; readonly back: number } {
  const live = endsAlong(build, first, flow).start;
  const source = build.sources.find((one) => endsAlong(build, one, flow).end === live) ?? build.sources[0] ?? 0;
  return { live, back: endsAlong(build, source, flow).start };
}

/** Volts of a node in phase with the winding's own. */
function readVolts(volts: Phasors, live: Complex): (node: number) => number {
  const size = abs(live) || 1;
  return (node) => inPhase(phasor(volts, node), { re: live.re / size, im: live.im / size });
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
