import { abs, add, sub, type Complex, type Phasors } from '../electrics/index.ts';
import type { BranchInfo, Build, Role } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { CurrentKind, Point } from './depiction.ts';
import type { Place, PoseName, Stretch } from './place.ts';
import { inPhase, reference } from './source.ts';

/** The least current that is drawn, A: what people begin to perceive (IEC 60479-1:2018, from memory). */
export const LEAST_A = 0.0005;

/** A stretch of the drawing with what flows along it now. */
export interface Flow {
  readonly id: string;
  readonly part: string;
  readonly role: Role;
  readonly route: readonly Point[];
  readonly stretch: Stretch | undefined;
  /** Along the route. */
  readonly current: Complex;
  /** What closing the fault has added to it. */
  readonly change: Complex;
  readonly amperes: number;
  /** Part in phase with the picture's reference. */
  readonly inPhase_A: number;
  readonly changeInPhase_A: number;
  readonly kind: CurrentKind;
}

/** What flows along every stretch of the drawing, soil included, drawn or not. */
export function flows(build: Build, interval: Interval, place: Place, pose: PoseName): readonly Flow[] {
  const along = reference(build, interval);
  const change = interval.fault?.change.amperes;
  const wired = wiredIn(build, place.stretches[pose]).map(({ stretch, branches, first }): Flow => {
    const role = stretch.role ?? first.role;
    const current = sum(interval.solution.amperes, branches, stretch.share);
    const added = change ? sum(change, branches, stretch.share) : ZERO;
    return flow(stretch.id, stretch.part ?? first.part, role, stretch.route, stretch, current, added, along);
  });
  return [...wired, ...soil(wired, place, along)].map((one) => ({ ...one, kind: kindOf(one, build, interval) }));
}

interface Wired {
  readonly stretch: Stretch;
  readonly branches: readonly number[];
  readonly first: BranchInfo;
}

/** Which branches of a build each stretch carries never changes, so it is found once. */
const found = new WeakMap<Build, Map<readonly Stretch[], readonly Wired[]>>();

function wiredIn(build: Build, stretches: readonly Stretch[]): readonly Wired[] {
  const known = found.get(build) ?? new Map<readonly Stretch[], readonly Wired[]>();
  found.set(build, known);
  const before = known.get(stretches);
  if (before) return before;
  const index = new Map(build.branches.map(({ name }, branch) => [name, branch]));
  const made = stretches.flatMap((stretch): Wired[] => {
    const branches = stretch.of.flatMap((name) => index.get(name) ?? []);
    const first = build.branches[branches[0] ?? -1];
    // A file may lack what the drawing shows.
    return !first || branches.length < stretch.of.length ? [] : [{ stretch, branches, first }];
  });
  known.set(stretches, made);
  return made;
}

/** Between the electrodes the current runs along one deep line; what each puts into the earth adds up along it. */
function soil(wired: readonly Flow[], place: Place, along: Complex): readonly Flow[] {
  const ends = wired
    .flatMap((one) => (one.stretch?.earthed ? [{ one, x: one.route.at(-1)?.x ?? 0 }] : []))
    .toSorted((a, b) => a.x - b.x);
  let current = ZERO;
  let change = ZERO;
  let last: (typeof ends)[number] | undefined;
  const runs: Flow[] = [];
  for (const end of ends) {
    if (last && end.one.amperes >= LEAST_A) {
      const route = [last.x, end.x].map((x) => ({ x, y: place.meeting_y }));
      const id = `soil, ${last.one.id} to ${end.one.id}`;
      runs.push(flow(id, 'earth', 'electrode', route, undefined, current, change, along));
    }
    current = add(current, end.one.current);
    change = add(change, end.one.change);
    if (end.one.amperes >= LEAST_A) last = end;
  }
  return runs;
}

function flow(
  id: string,
  part: string,
  role: Role,
  route: readonly Point[],
  stretch: Stretch | undefined,
  current: Complex,
  change: Complex,
  along: Complex,
): Flow {
  return {
    id,
    part,
    role,
    route,
    stretch,
    current,
    change,
    amperes: abs(current),
    inPhase_A: inPhase(current, along),
    changeInPhase_A: inPhase(change, along),
    kind: 'load',
  };
}

/** Through a body; through soil, pipes and what leads to them; what a closed fault has brought; what a working conductor may not carry; work. */
export function kindOf(
  { role, stretch, current, change, amperes }: Flow,
  build: Build,
  { conditions }: Interval,
): CurrentKind {
  if (role === 'person') return 'person';
  if (stretch?.earthing || role === 'electrode' || role === 'pipe' || role === 'floor') return 'stray';
  const before_A = abs(sub(current, change));
  if (abs(change) >= LEAST_A && abs(change) > amperes / 2 && amperes > before_A) return 'fault';
  if (role === 'protective' || role === 'bond') return 'stray';
  if (role !== 'link') return 'load';
  const owner = build.branches[build.branch(stretch?.of[0] ?? '')]?.condition;
  const condition = owner === undefined ? undefined : build.installation.conditions[owner];
  return condition?.kind === 'swap' && conditions[owner ?? ''] !== condition.options[0] ? 'load' : 'stray';
}

const ZERO: Complex = { re: 0, im: 0 };

function sum(amperes: Phasors, branches: readonly number[], share: number): Complex {
  let [re, im] = [0, 0];
  for (const branch of branches) {
    re += amperes.re[branch] ?? 0;
    im += amperes.im[branch] ?? 0;
  }
  return { re: re * share, im: im * share };
}
