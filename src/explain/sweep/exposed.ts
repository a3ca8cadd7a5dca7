import {
  population,
  quantile_A,
  together,
  zones,
  type People,
  type Tally,
  type Zone,
  type TouchedSource,
} from '../../body/index.ts';
import type { Build, Conditions } from '../../installation/index.ts';
import { run } from '../../scenario/index.ts';
import { struckInterval } from '../faultState.ts';
import { between_V, touchables } from '../metal.ts';
import { solverOf } from '../verdicts/standing.ts';

/** Metal that a fault makes live, as everybody finds it who touches it. */
export interface Exposed {
  readonly part: string;
  readonly source: TouchedSource;
  /** When a device ends it; Infinity = never. */
  readonly ends_s: number;
}

/** The metal that stands highest above remote earth when the fault strikes, before anybody touches it; undefined where nothing
 *  strikes. What ends it is taken from the run as it is given: a residual device acts only if somebody touches there. */
export function exposedMetal(build: Build, conditions: Conditions): Exposed | undefined {
  const timeline = run(build, conditions);
  const struck = struckInterval(timeline);
  if (struck === undefined) return undefined;
  const solver = solverOf(build);
  const solution = solver.solve({ ...build.values(struck.conditions, new Set()), emf: struck.values.emf });
  const [highest] = touchables(build.installation)
    .map((metal) => ({ ...metal, volts: between_V(build, solution, metal.terminal, 'earth') }))
    .toSorted((one, other) => other.volts - one.volts);
  if (highest === undefined) return undefined;
  const seen = solver.impedanceSeenFrom([build.node(highest.terminal)]);
  const opened = timeline.intervals.find(({ because }) => because.kind === 'device-operated');
  return {
    part: highest.part,
    source: {
      volts: highest.volts,
      impedance_ohm: { re: Math.max(0, seen.re[0] ?? 0), im: seen.im[0] ?? 0 },
      frequency_Hz: build.installation.frequency_Hz,
    },
    ends_s: opened?.start_s ?? Infinity,
  };
}

/** Somebody who is not freed holds on for so long, s: half of them less, one in twenty more than five times as long (invented). */
const HOLDS = { median: 2, factor: 5 } as const;

/** Who may come: any hand, most the right one; dry or wet; bare feet to rubber soles; concrete or soil; as long as the fault
 *  lasts, or as long as they hold on. All shares and spreads invented. */
export function anybody({ ends_s }: Pick<Exposed, 'ends_s'>): People {
  return {
    touches: { 'right hand to feet': 6, 'left hand to feet': 3, 'both hands to feet': 1 },
    skins: { dry: 3, 'water-wet': 1 },
    areas: { large: 1, medium: 1 },
    shoe_ohm: { median: 5000, factor: 100 },
    floor_ohm: { median: 150, factor: 5 },
    time_s: ends_s < HOLDS.median ? { median: ends_s, factor: 1 } : HOLDS,
    size: 'adult',
  };
}

/** What became of many people, as shares. */
export interface CrowdOutcome {
  readonly people: number;
  /** Share in each zone, mildest first. */
  readonly zones: readonly { readonly zone: Zone; readonly share: number }[];
  /** Share who could not let go. */
  readonly held: number;
  /** Body current that this share stays below, A. */
  readonly quantiles: readonly { readonly share: number; readonly amperes: number }[];
}

/** People counted in one go, so that progress can be told between two. */
const BATCH = 50_000;
const SHARES = [0.05, 0.25, 0.5, 0.75, 0.95] as const;

/** Lets so many people touch, batch by batch; the outcome so far after each. Person n of one seed is always the same.
 *  @throws RangeError if there is nobody */
export function* crowdTouches(
  source: TouchedSource,
  people: People,
  count: number,
  seed: number,
): Generator<CrowdOutcome, void> {
  if (!(Number.isInteger(count) && count > 0)) throw new RangeError(`crowdTouches: ${count} people; write one or more`);
  let all: Tally | undefined;
  for (let from = 0; from < count; from += BATCH) {
    const next = population(source, people, seed, from, Math.min(count, from + BATCH));
    all = all === undefined ? next : together([all, next]);
    yield outcomeOf(all);
  }
}

function outcomeOf(tally: Tally): CrowdOutcome {
  const { people, held } = tally;
  return {
    people,
    zones: [...tally.zones].map((count, at) => ({ zone: zones[at] ?? 'AC-1', share: count / people })),
    held: held / people,
    quantiles: SHARES.map((share) => ({ share, amperes: quantile_A(tally, share) })),
  };
}
