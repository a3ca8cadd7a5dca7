import { compile, EARTH, type Build } from '../../installation/index.ts';
import { run, type Interval, type Timeline } from '../../scenario/index.ts';
import { faultedPart, liveMetal, struckInterval } from '../faultState.ts';
import { aboveFloor_V, branch_A, LIVE_V, touchables } from '../metal.ts';
import { rating } from '../verdicts/circuit.ts';
import type { Case } from './repairs.ts';
import { brokenRules } from './rules.ts';

/** A repair that many would try, was tried, and is not enough. */
export type Tempting =
  | {
      readonly kind: 'rod';
      readonly part: string;
      readonly ohm: number;
      readonly amperes: number;
      readonly volts: number;
      /** Of the breaker that would have to open. */
      readonly rating_A: number;
    }
  | {
      readonly kind: 'bigger-breaker';
      readonly device: string;
      readonly rating_A: number;
      readonly larger_A: number;
      /** When it opens as it is, and when the larger one would, s. */
      readonly opens_s: number;
      readonly larger_opens_s: number;
    }
  | {
      readonly kind: 'residual-device';
      readonly device: string;
      readonly residual_A: number;
      /** Whether what goes out through it comes back through it. */
      readonly comesBack: boolean;
      /** Whether metal stays live that somebody can touch, and only then something is missing. */
      readonly untilTouched: boolean;
    };

/** A rod in ordinary soil, Ω: the figure above which a second one is asked for (NFPA 70 250.53(A)(2)). */
const ROD_OHM = 25;
const ROD = 'one more rod';
/** Less than this missing is nothing missing, A: insulation leaks as much. */
const BALANCED_A = 1e-4;

/** Tries a rod at the faulted metal, a breaker of twice the rating and a residual device, and tells those that leave it
 *  lasting. Empty where nothing has failed or the fault is ended in time. */
export function temptingRepairs(given: Case): readonly Tempting[] {
  const timeline = run(given.build, given.conditions);
  const struck = struckInterval(timeline);
  if (struck === undefined || !brokenRules(timeline).includes('ended')) return [];
  return [...rod(timeline, struck), ...biggerBreaker(timeline, struck), ...residual(timeline)];
}

interface Loaded {
  readonly device: string;
  readonly rating_A: number;
}

/** The breaker that carries most of the fault for what it is built for. */
function mostLoaded({ build, conditions }: Timeline, struck: Interval): Loaded | undefined {
  const loaded = build.devices.flatMap((info) => {
    const moment = struck.devices.find(({ device }) => device === info.name);
    const rating_A = rating(info, conditions);
    const change_A = Math.max(0, ...info.poles.map((pole) => change(struck, pole)));
    return moment === undefined || rating_A === undefined
      ? []
      : [{ device: info.name, rating_A, share: change_A / rating_A }];
  });
  return loaded.toSorted((one, other) => other.share - one.share)[0];
}

function change({ fault }: Interval, branch: number): number {
  const amperes = fault?.change.amperes;
  return Math.hypot(amperes?.re[branch] ?? 0, amperes?.im[branch] ?? 0);
}

function rod(timeline: Timeline, struck: Interval): readonly Tempting[] {
  const { build, conditions } = timeline;
  const part = struck.fault === undefined ? undefined : faultedPart(build, struck.fault.condition);
  const metal = touchables(build.installation).find((one) => one.part === part);
  const loaded = mostLoaded(timeline, struck);
  if (metal === undefined || loaded === undefined) return [];
  const { installation } = build;
  const planted = compile({
    ...installation,
    parts: {
      ...installation.parts,
      [ROD]: {
        kind: 'impedance',
        between: [metal.terminal, EARTH],
        resistance_ohm: ROD_OHM,
        reactance_ohm: 0,
        as: 'electrode',
      } as const,
    },
  });
  const after = run(planted, conditions);
  const then = struckInterval(after);
  const volts = then === undefined ? 0 : aboveFloor_V(planted, then.solution, metal.terminal);
  if (then === undefined || volts < LIVE_V || !brokenRules(after).includes('ended')) return [];
  const amperes = branch_A(then.solution, planted.branch(ROD));
  return [{ kind: 'rod', part: metal.part, ohm: ROD_OHM, amperes, volts, rating_A: loaded.rating_A }];
}

function biggerBreaker(timeline: Timeline, struck: Interval): readonly Tempting[] {
  const { build, conditions } = timeline;
  const loaded = mostLoaded(timeline, struck);
  const part = loaded === undefined ? undefined : build.installation.parts[loaded.device];
  if (loaded === undefined || part?.kind !== 'breaker' || part.rating_A !== loaded.rating_A) return [];
  const larger_A = 2 * loaded.rating_A;
  const { installation } = build;
  const parts = { ...installation.parts, [loaded.device]: { ...part, rating_A: larger_A } };
  const after = run(compile({ ...installation, parts }), conditions);
  if (!brokenRules(after).includes('ended')) return [];
  return [
    {
      kind: 'bigger-breaker',
      device: loaded.device,
      rating_A: loaded.rating_A,
      larger_A,
      opens_s: opens_s(timeline, loaded.device),
      larger_opens_s: opens_s(after, loaded.device),
    },
  ];
}

function residual({ build, conditions }: Timeline): readonly Tempting[] {
  return build.devices.flatMap((info): readonly Tempting[] => {
    if (info.residual === undefined || info.jammed(conditions)) return [];
    const fitted = fittedWith(build, info.name);
    if (fitted === undefined && !info.fitted(conditions)) return [];
    const after = run(build, { ...conditions, ...fitted });
    const moment = struckInterval(after)?.devices.find(({ device }) => device === info.name);
    const residual_A = moment?.residual_A ?? 0;
    if (moment === undefined || moment.operation.at_s < Infinity || !brokenRules(after).includes('ended')) return [];
    const comesBack = residual_A < BALANCED_A;
    const untilTouched = comesBack && build.people.length > 0 && liveMetalIn(after);
    return [{ kind: 'residual-device', device: info.name, residual_A, comesBack, untilTouched }];
  });
}

/** The condition that fits a device. */
function fittedWith({ installation }: Build, device: string): Readonly<Record<string, string>> | undefined {
  const found = Object.entries(installation.conditions).find(
    ([, condition]) => condition.kind === 'fitted' && condition.device === device,
  );
  return found === undefined ? undefined : { [found[0]]: found[1].options[1] ?? '' };
}

function liveMetalIn(timeline: Timeline): boolean {
  const struck = struckInterval(timeline);
  if (struck === undefined) return false;
  const live = liveMetal(timeline, struck);
  return live.some((finding) => finding.kind === 'live-metal' && finding.volts >= LIVE_V);
}

function opens_s({ intervals }: Timeline, device: string): number {
  const opened = intervals.find(({ because }) => because.kind === 'device-operated' && because.device === device);
  return opened?.start_s ?? Infinity;
}
