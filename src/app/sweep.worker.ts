import { anybody, crowdTouches, exposedMetal, sweep } from '../explain/index.ts';
import type { Axis, CrowdOutcome, SweepPoint } from '../explain/index.ts';
import { compile, type Conditions, type Installation } from '../installation/index.ts';

/** What the page asks for. */
export interface SweepTask {
  readonly installation: Installation;
  readonly conditions: Conditions;
  /** A range to sweep; without one a crowd is let loose. */
  readonly axis?: Axis;
  readonly people: number;
}

/** What is answered: again and again how far it is, at last the whole. */
export type SweepAnswer =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'points'; readonly points: readonly SweepPoint[] }
  | { readonly kind: 'crowd'; readonly crowd: Crowd | null }
  | { readonly kind: 'failed'; readonly reason: string };

/** A crowd and what it touched. */
export interface Crowd {
  readonly part: string;
  readonly volts: number;
  readonly outcome: CrowdOutcome;
}

const SEED = 1;

addEventListener('message', ({ data }: MessageEvent<SweepTask>) => {
  try {
    if (data.axis === undefined) letLoose(data);
    else sweepOver(data, data.axis);
  } catch (error) {
    answer({ kind: 'failed', reason: error instanceof Error ? error.message.replace(/^\w+: /, '') : String(error) });
  }
});

function answer(said: SweepAnswer): void {
  postMessage(said);
}

function sweepOver({ installation, conditions }: SweepTask, axis: Axis): void {
  const points: SweepPoint[] = [];
  for (const point of sweep(installation, conditions, [axis])) {
    points.push(point);
    answer({ kind: 'progress', share: points.length / axis.steps });
  }
  answer({ kind: 'points', points });
}

function letLoose({ installation, conditions, people }: SweepTask): void {
  const exposed = exposedMetal(compile(installation), conditions);
  if (exposed === undefined) {
    answer({ kind: 'crowd', crowd: null });
    return;
  }
  const { part, source } = exposed;
  let last: CrowdOutcome | undefined;
  for (const outcome of crowdTouches(source, anybody(exposed), people, SEED)) {
    last = outcome;
    answer({ kind: 'progress', share: outcome.people / people });
  }
  if (last !== undefined) answer({ kind: 'crowd', crowd: { part, volts: source.volts, outcome: last } });
}
