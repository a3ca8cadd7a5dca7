import { abs } from '../../electrics/index.ts';
import type { Build, Conditions } from '../../installation/index.ts';
import { run } from '../../scenario/index.ts';
import { TOUCH_LIMIT_V } from '../metal.ts';
import { STRAY_A, strays } from '../normalState.ts';
import { askedOf, loopAllowed, touchVerdict } from './asked.ts';
import { cableVerdicts } from './cableVerdicts.ts';
import { circuitOf, opening } from './circuit.ts';
import { earthingOf } from './earthing.ts';
import { pointsOf, type End, type Point } from './points.ts';
import { roadsOf, type Roads } from './roads.ts';
import { allShorted_A, shorted } from './shortCircuit.ts';
import { standing, type Standing } from './standing.ts';
import { monitored, unearthedVerdicts } from './unearthed.ts';
import type { Verdict } from './verdict.ts';

/** What a designer asks of an installation under these conditions, before anything happens: at every point what a bolted
 *  fault draws, how long it lasts and what the case stands at meanwhile; for every cable how long it may be and whether its
 *  conductors suffice; for the whole what flows where none belongs. Faults and people among the conditions are set aside.
 *  @throws RangeError naming an unknown condition or option */
export function verdicts(build: Build, conditions: Conditions): readonly Verdict[] {
  const calm = standing(build, conditions);
  const roads = roadsOf(calm);
  const points = pointsOf(calm, roads);
  return [
    ...points.flatMap((point) => atPoint(calm, roads, points, point)),
    ...monitors(calm, roads, points),
    ...groundingCurrent(calm),
  ];
}

function atPoint(calm: Standing, roads: Roads, points: readonly Point[], point: Point): readonly Verdict[] {
  const { lines, neutral, metal, part } = point;
  const most_A = foldsAt_A(calm.build, point);
  const told = { part, sense: 'at most', holds: 'told', clause: 'none', unit: 'A' } as const;
  const between =
    lines.length < 2
      ? []
      : [
          {
            ...told,
            kind: 'fault-between-lines',
            value: Math.min(
              most_A,
              allShorted_A(
                calm,
                lines.map(({ node }) => node),
              ),
            ),
          } as const,
        ];
  const drawn = (kind: 'fault-to-metal' | 'fault-to-neutral', end: End | undefined): readonly Drawn[] =>
    end === undefined
      ? []
      : lines.map((line) => {
          const value = abs(shorted(calm, line.node, end.node, [], most_A).amperes);
          return { ...told, kind, line: line.terminal, value };
        });
  const toMetal = drawn('fault-to-metal', metal);
  // The line that draws least is the one that is hardest to end.
  const weakest = toMetal.toSorted((one, other) => one.value - other.value)[0];
  const line = lines.find(({ terminal }) => terminal === weakest?.line);
  const found = line === undefined || metal === undefined ? [] : judged(calm, roads, points, point, line, metal);
  const ofPoint = (one: Verdict): boolean => one.part === part;
  return [
    ...toMetal,
    ...drawn('fault-to-neutral', neutral),
    ...between,
    ...found.filter(ofPoint),
    ...found.filter((one) => !ofPoint(one)),
  ];
}

type Drawn = Verdict & { readonly line: string };

function judged(
  calm: Standing,
  roads: Roads,
  points: readonly Point[],
  point: Point,
  line: End,
  metal: End,
): readonly Verdict[] {
  const { build } = calm;
  const { part } = point;
  const floor = floorOf(build);
  const most_A = foldsAt_A(build, point);
  const fault = shorted(calm, line.node, metal.node, [floor], most_A);
  const amperes = abs(fault.amperes);
  const circuit = circuitOf(calm, roads, point, line.node);
  const about = { part, line: line.terminal, value: amperes } as const;
  const case_V = fault.between_V(metal.node, floor);
  const earthing = earthingOf(build, point.source);
  // Before the first device of the place nobody but the utility can open anything.
  if (circuit.guard === undefined) return [];
  if (earthing === 'IT' && amperes < FIRST_FAULT_A)
    return unearthedVerdicts(calm, roads, points, { point, line, metal, circuit }, case_V, floor, most_A);
  const asked = askedOf(build, point, circuit, earthing);
  const { device, latest_s, earliest_s } = opening(circuit, calm, amperes, true);
  const ended = latest_s <= asked.limit_s ? 'yes' : earliest_s <= asked.limit_s ? 'maybe' : 'no';
  const time: Verdict = {
    ...about,
    kind: 'disconnection',
    value: latest_s,
    unit: 's',
    limit: asked.limit_s,
    sense: 'at most',
    holds: ended,
    clause: asked.time,
    ...(device === undefined ? {} : { device: device.name }),
  };
  const best = loopAllowed(circuit, calm, point, asked);
  const impedance = abs(fault.loop);
  const loop: Verdict = {
    ...about,
    kind: 'loop',
    value: impedance,
    unit: 'Ω',
    limit: best.limit_ohm,
    sense: 'at most',
    // A source that folds back gives no more however small the loop is: what it does give decides.
    holds: most_A < Infinity ? ended : impedance <= best.limit_ohm ? 'yes' : ended === 'maybe' ? 'maybe' : 'no',
    clause: asked.loop,
    ...(best.device === undefined ? {} : { device: best.device }),
  };
  return [
    loop,
    time,
    touchVerdict(part, line, case_V, case_V <= TOUCH_LIMIT_V ? 'yes' : ended),
    ...cableVerdicts(calm, circuit, { amperes, latest_s, loop: fault.loop, limit_ohm: best.limit_ohm }),
  ];
}

/** The most that the source of a point gives, A: an inverter folds back, whatever is behind it does not. */
function foldsAt_A({ limits, branches }: Build, { source }: Point): number {
  return Math.min(
    Infinity,
    ...limits.flatMap(({ branch, limit_A }) => (branches[branch]?.part === source ? [limit_A] : [])),
  );
}

/** A first fault on an unearthed supply draws less than this, A (invented: far over what capacitance lets through, far under
 *  what any overcurrent device answers to). */
const FIRST_FAULT_A = 5;

/** Supplies that nothing earths, and whose cases are earthed, must tell their first fault. */
function monitors(calm: Standing, roads: Roads, points: readonly Point[]): readonly Verdict[] {
  return calm.build.supplies
    .filter(({ part, system }) => system === 'IT' && points.some(({ source, metal }) => source === part && metal))
    .map(({ part }) => monitored(calm, part, roads));
}

function floorOf(build: Build): number {
  const floor = Object.entries(build.installation.parts).find(([, { kind }]) => kind === 'floor')?.[0];
  return floor === undefined ? 0 : build.node(`${floor}.surface`);
}

/** What flows in ordinary work on protective conductors, pipes and in soil: the objectionable current. */
function groundingCurrent({ build, conditions }: Standing): readonly Verdict[] {
  const [normal] = run(build, conditions, { horizon_s: 0 }).intervals;
  if (normal === undefined || build.sources.length === 0) return [];
  const value = strays(build, normal).reduce((sum, { amperes }) => sum + amperes, 0);
  const part = build.supplies[0]?.part ?? build.branches[build.sources[0] ?? 0]?.part ?? '';
  const holds = value < STRAY_A ? 'yes' : 'no';
  return [
    { kind: 'grounding-current', part, value, unit: 'A', limit: STRAY_A, sense: 'at most', holds, clause: 'grounding' },
  ];
}
