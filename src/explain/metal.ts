import type { Solution } from '../electrics/index.ts';
import type { Interval } from '../scenario/index.ts';
import { EARTH, type Build, type Installation } from '../installation/index.ts';

/** Metal that somebody can touch: the case of an appliance or a panel, or a fitting. */
export interface Metal {
  readonly part: string;
  readonly what: 'case' | 'metal';
  readonly terminal: string;
}

/** From here metal counts as live, V: half the conventional touch limit, as for children and animals (IEC 60364-4-41, from memory). */
export const LIVE_V = 25;

/** The conventional limit of touch voltage, V a.c. (IEC 60364-4-41:2005 411.3.2). */
export const TOUCH_LIMIT_V = 50;

/** Everything touchable in an installation, in the order of its file. */
export function touchables(installation: Installation): readonly Metal[] {
  let found = known.get(installation);
  if (found === undefined) known.set(installation, (found = findTouchables(installation)));
  return found;
}

const known = new WeakMap<Installation, readonly Metal[]>();

function findTouchables({ parts }: Installation): readonly Metal[] {
  return Object.entries(parts).flatMap(([part, made]): Metal[] => {
    if (made.kind === 'appliance' && made.case === 'metal') return [{ part, what: 'case', terminal: `${part}.case` }];
    // Its own metal hangs on the earth bar.
    if (made.kind === 'service-panel') return [{ part, what: 'case', terminal: `${part}.earth bar` }];
    if (made.kind === 'generator') return [{ part, what: 'metal', terminal: `${part}.frame` }];
    return made.kind === 'fitting' ? [{ part, what: 'metal', terminal: `${part}.metal` }] : [];
  });
}

/** Volts r.m.s. of a terminal above the floor somebody stands on; above remote earth where there is no floor. */
export function aboveFloor_V(build: Build, solution: Solution, terminal: string): number {
  const floor = Object.entries(build.installation.parts).find(([, { kind }]) => kind === 'floor')?.[0];
  return between_V(build, solution, terminal, floor === undefined ? EARTH : `${floor}.surface`);
}

/** Volts r.m.s. from one terminal to another. */
export function between_V(build: Build, { volts }: Solution, one: string, other: string): number {
  const a = build.node(one);
  const b = build.node(other);
  return Math.hypot((volts.re[a] ?? 0) - (volts.re[b] ?? 0), (volts.im[a] ?? 0) - (volts.im[b] ?? 0));
}

/** Amperes r.m.s. of a branch with all its harmonics. */
export function rms_A({ solution, harmonics = [] }: Interval, branch: number): number {
  return Math.hypot(branch_A(solution, branch), ...harmonics.map((harmonic) => branch_A(harmonic.solution, branch)));
}

/** Amperes r.m.s. of a branch. */
export function branch_A({ amperes }: Solution, branch: number): number {
  return Math.hypot(amperes.re[branch] ?? 0, amperes.im[branch] ?? 0);
}
