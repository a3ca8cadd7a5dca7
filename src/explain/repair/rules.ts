import type { Timeline } from '../../scenario/index.ts';
import { conductorLimit } from '../conductorLimit.ts';
import { halvesEven, lasting, metalDeadInTime, nobodyKilled, ordinaryWorkClean } from '../danger.ts';
import { struckInterval } from '../faultState.ts';
import { guarded, isGuarded } from './guarded.ts';

/** What must hold of an installation under a fault, by name. */
export type RuleKey =
  'ended' | 'no-lethal-touch' | 'ordinary-work' | 'even-halves' | 'protected' | 'withstand' | 'polarity';

/** One rule as data: what it is called, and whether a run keeps it. */
export interface Rule {
  readonly key: RuleKey;
  readonly holds: (timeline: Timeline) => boolean;
}

/** All that must hold at once, the cheapest to judge first. */
export const RULES: readonly Rule[] = [
  { key: 'polarity', holds: polarityRight },
  { key: 'protected', holds: conductorsProtected },
  { key: 'even-halves', holds: halvesEven },
  { key: 'ended', holds: (run) => metalDeadInTime(run) && lasting(run) === undefined },
  { key: 'withstand', holds: conductorsWithstand },
  { key: 'no-lethal-touch', holds: nobodyKilled },
  { key: 'ordinary-work', holds: ordinaryWorkClean },
];

/** The rules a run breaks. */
export function brokenRules(timeline: Timeline): readonly RuleKey[] {
  return RULES.filter(({ holds }) => !holds(timeline)).map(({ key }) => key);
}

/** No pair of conductors is exchanged: what is switched and fused is the line. */
export function polarityRight({ build, conditions }: Pick<Timeline, 'build' | 'conditions'>): boolean {
  return Object.entries(build.installation.conditions).every(
    ([name, { kind, options }]) => kind !== 'swap' || (conditions[name] ?? options[0]) === options[0],
  );
}

/** Every cable stands the device before it, in overload and in a fault, and that device is free to open. */
export function conductorsProtected({ build, conditions }: Pick<Timeline, 'build' | 'conditions'>): boolean {
  return guarded(build).every((one) => isGuarded(one, conditions));
}

/** No conductor comes to the end of what its insulation stands before the fault is ended. */
function conductorsWithstand(timeline: Timeline): boolean {
  const struck = struckInterval(timeline);
  return struck === undefined || conductorLimit(timeline, struck).length === 0;
}
