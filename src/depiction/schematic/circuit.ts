import type { BranchInfo, Build, Part, Role } from '../../installation/index.ts';
import { EARTH } from '../../installation/index.ts';
import { fixedSide, formOf, type Form, type Side } from './form.ts';

/** A branch counted along (1) or against (-1) a stretch of the sheet. */
export interface Term {
  readonly branch: number;
  readonly sign: 1 | -1;
}

/** A box of the sheet before it has a place: one part, one electrode, or one joint with the earth itself. */
export interface Unit {
  readonly id: string;
  readonly part: string | undefined;
  readonly kind: Part['kind'] | 'earth';
  readonly form: Form;
  readonly depth: number;
  /** Terminals in the order of the part. */
  readonly terminals: readonly string[];
  readonly inner: readonly Inner[];
  readonly drop?: Drop;
}

/** A branch between two terminals of one box. */
export interface Inner {
  readonly branch: number;
  readonly part: string;
  readonly from: string;
  readonly to: string;
}

/** What leaves a box for the soil. */
export interface Drop {
  readonly from: string;
  readonly terms: readonly Term[];
  /** The floor that a person's feet stand on, with its own branch into the soil. */
  readonly floor?: { readonly part: string; readonly terms: readonly Term[] };
}

/** A wire between two boxes; it counts from its first end to its second. */
export interface Lead {
  readonly id: string;
  readonly branch: number;
  readonly part: string;
  readonly role: Role;
  readonly ends: readonly [End, End];
  /** It leads only to an electrode. */
  readonly earthing: boolean;
}

/** One end of a wire: the box, its terminal, the side on which it leaves. */
export interface End {
  readonly unit: string;
  readonly terminal: string;
  readonly side: Side;
}

/** An installation as boxes and wires, without places. */
export interface Circuit {
  readonly units: readonly Unit[];
  readonly leads: readonly Lead[];
}

interface Shown extends BranchInfo {
  readonly branch: number;
  readonly from: string;
  readonly to: string;
}

interface Draft {
  readonly id: string;
  readonly part: string | undefined;
  readonly kind: Unit['kind'];
  readonly terminals: string[];
  readonly inner: Inner[];
  drop?: Drop;
}

interface Loose extends Omit<Lead, 'ends' | 'earthing'> {
  readonly ends: readonly [Omit<End, 'side'>, Omit<End, 'side'>];
}

/** Every part as a box with terminals and every join, limb and possible fault as a wire; sound insulation is left out. */
export function circuitOf(build: Build): Circuit {
  const drafts = new Map<string, Draft>();
  const loose: Loose[] = [];
  const parts = build.installation.parts;
  for (const [part, { kind }] of Object.entries(parts))
    if (kind !== 'soil' && !mergedFloor(build, part))
      drafts.set(part, draft(part, part, kind, terminalsOf(build, part)));

  const boxAt = (terminal: string, wanted: string): Draft => {
    const part = terminal.split('.', 1)[0] ?? '';
    const kind = terminal === EARTH ? 'earth' : parts[part]?.kind;
    const id = terminal === EARTH ? `earth of ${wanted}` : kind === 'soil' ? terminal : part;
    const known = drafts.get(id);
    if (known) return known;
    const made = draft(id, terminal === EARTH ? undefined : part, kind ?? 'earth', [terminal]);
    drafts.set(id, made);
    return made;
  };
  const wire = (one: Shown, a: string, b: string, part: string, suffix = ''): void => {
    const [from, to] = [boxAt(a, one.name), boxAt(b, one.name)];
    if (from === to) return void from.inner.push({ branch: one.branch, part, from: a, to: b });
    const ends = [
      { unit: from.id, terminal: a },
      { unit: to.id, terminal: b },
    ] as const;
    loose.push({ id: one.name + suffix, branch: one.branch, part, role: one.role, ends });
  };

  const joins = joinNames(build);
  for (const one of shown(build)) {
    const alone = one.condition === undefined && !joins.has(one.name);
    const own = drafts.get(one.part);
    const kind = parts[one.part]?.kind;
    const inside = [one.from, one.to].map((terminal) => terminal.split('.', 1)[0] === one.part);
    if (kind === 'person' && alone) limb(one, build, drafts, wire);
    else if (kind === 'floor' && !own && alone)
      continue; // it goes down with the feet that stand on it
    else if (own && alone && !inside[0] && !inside[1]) between(one, own, drafts, boxAt, wire);
    else if (kind !== undefined && inside[0] && one.to === EARTH && alone) {
      const box = boxAt(one.from, one.name);
      box.drop = { from: one.from, terms: [...(box.drop?.terms ?? []), { branch: one.branch, sign: 1 }] };
    } else wire(one, one.from, one.to, one.part);
  }
  return settle(drafts, loose, parts);
}

function draft(id: string, part: string | undefined, kind: Unit['kind'], terminals: readonly string[]): Draft {
  return { id, part, kind, terminals: [...terminals], inner: [] };
}

function terminalsOf({ network }: Build, part: string): readonly string[] {
  return network.nodes.filter((terminal) => terminal.startsWith(`${part}.`));
}

/** Branches worth a line: not the leakage of sound insulation. */
function shown({ branches, network, installation }: Build): readonly Shown[] {
  return branches.flatMap((info, branch): Shown[] => {
    const { from, to } = network.branches[branch] ?? { from: 0, to: 0 };
    if (info.role === 'insulation' && !(info.name in installation.parts)) return [];
    return [{ ...info, branch, from: network.nodes[from] ?? EARTH, to: network.nodes[to] ?? EARTH }];
  });
}

/** Names of joins as the build gives them. */
function joinNames({ installation }: Build): ReadonlySet<string> {
  return new Set(installation.joins.map(({ between: [a, b] }) => `${a} – ${b}`));
}

/** A two-pole part fixed between terminals of others: in the box of both, or a box of its own with two leads. */
function between(
  one: Shown,
  own: Draft,
  drafts: Map<string, Draft>,
  boxAt: (terminal: string, wanted: string) => Draft,
  wire: (one: Shown, a: string, b: string, part: string, suffix?: string) => void,
): void {
  if (one.from !== EARTH && one.to !== EARTH && boxAt(one.from, one.name) === boxAt(one.to, one.name)) {
    drafts.delete(own.id);
    wire(one, one.from, one.to, one.part);
    return;
  }
  const [a, b] = [`${own.id}.a`, `${own.id}.b`];
  own.terminals.push(a, b);
  own.inner.push({ branch: one.branch, part: own.id, from: a, to: b });
  wire(one, one.from, a, one.part, ', in');
  wire(one, b, one.to, one.part, ', out');
}

/** The floor under one person alone is drawn under that person. */
function mergedFloor(build: Build, part: string): boolean {
  if (build.installation.parts[part]?.kind !== 'floor') return false;
  const users = build.branches.filter((_, branch) => {
    const { from, to } = build.network.branches[branch] ?? { from: 0, to: 0 };
    const names = [build.network.nodes[from], build.network.nodes[to]];
    return build.branches[branch]?.part !== part && names.includes(`${part}.surface`);
  });
  return users.length > 0 && new Set(users.map(({ part: user }) => user)).size === 1 && users[0]?.role === 'person';
}

function limb(
  one: Shown,
  build: Build,
  drafts: Map<string, Draft>,
  wire: (one: Shown, a: string, b: string, part: string) => void,
): void {
  const own = drafts.get(one.part);
  const trunk = `${one.part}.trunk`;
  const far = one.from === trunk ? one.to : one.from;
  const floor = far.split('.', 1)[0] ?? '';
  if (!own || !mergedFloor(build, floor)) return wire(one, one.from, one.to, one.part);
  const sign = one.from === trunk ? 1 : -1;
  const into = build.branches.findIndex(({ name }) => name === floor);
  own.drop = {
    from: trunk,
    terms: [...(own.drop?.terms ?? []), { branch: one.branch, sign }],
    floor: { part: floor, terms: [{ branch: into, sign: 1 }] },
  };
}

/** Gives every box its distance from the source and every wire the sides on which it leaves. */
function settle(
  drafts: ReadonlyMap<string, Draft>,
  loose: readonly Loose[],
  parts: Build['installation']['parts'],
): Circuit {
  const boxes = [...drafts.values()];
  const depths = depthsOf(boxes, loose);
  const leaf = (box: Draft): boolean => box.kind === 'person' || formOf(box.kind) === 'electrode';
  const order = new Map(boxes.map(({ id }, at) => [id, at]));
  const rank = (box: Draft): number => (depths.get(box.id) ?? 0) * 1e4 + (order.get(box.id) ?? 0);
  const sideOf = (box: Draft, terminal: string, other: Draft): Side => {
    const fixed = fixedSide(box.kind, terminal.slice((box.part?.length ?? -1) + 1));
    if (fixed !== undefined) return fixed;
    if (leaf(box) !== leaf(other)) return leaf(box) ? 'west' : 'east';
    return rank(other) > rank(box) ? 'east' : 'west';
  };
  const leads = loose.map((one): Lead => {
    const [a, b] = one.ends.map(({ unit }) => drafts.get(unit)) as [Draft, Draft];
    const [from, to] = one.ends;
    const ends = [
      { ...from, side: sideOf(a, from.terminal, b) },
      { ...to, side: sideOf(b, to.terminal, a) },
    ] as const;
    const earthing = [a, b].some(({ kind }) => formOf(kind) === 'electrode' || formOf(kind) === 'pipe');
    return { ...one, ends, earthing: earthing && parts[one.part]?.kind !== 'person' };
  });
  const units = boxes.map(({ id, part, kind, terminals, inner, drop }): Unit => ({
    id,
    part,
    kind,
    terminals,
    inner,
    form: formOf(kind),
    depth: depths.get(id) ?? 0,
    ...(drop
      ? { drop }
      : formOf(kind) === 'electrode' && kind === 'earth'
        ? { drop: toEarth(id, terminals, loose) }
        : {}),
  }));
  return { units, leads };
}

/** What is joined to the earth itself goes down with the current of that join. */
function toEarth(id: string, [from = EARTH]: readonly string[], loose: readonly Loose[]): Drop {
  const terms = loose.flatMap(({ branch, ends: [a, b] }): Term[] =>
    b.unit === id ? [{ branch, sign: 1 }] : a.unit === id ? [{ branch, sign: -1 }] : [],
  );
  return { from, terms };
}

/** Which boxes are wired to which. */
function besideOf(loose: readonly Loose[]): ReadonlyMap<string, readonly string[]> {
  const beside = new Map<string, string[]>();
  for (const { ends } of loose) {
    const [a, b] = ends.map(({ unit }) => unit) as [string, string];
    beside.set(a, [...(beside.get(a) ?? []), b]);
    beside.set(b, [...(beside.get(b) ?? []), a]);
  }
  return beside;
}

/** Fewest live wires from the first source; people and electrodes are no way on. What hangs on no source begins anew. */
function depthsOf(boxes: readonly Draft[], loose: readonly Loose[]): ReadonlyMap<string, number> {
  const passes = new Set(
    boxes.flatMap(({ id, kind }) => (kind === 'person' || formOf(kind) === 'electrode' ? [] : [id])),
  );
  const lines = besideOf(loose.filter(({ role }) => role === 'line' || role === 'load'));
  const beside = besideOf(loose.filter(({ role }) => role !== 'fault' && role !== 'link'));
  const depths = new Map<string, number>();
  const spread = (open: string[], along: ReadonlyMap<string, readonly string[]>): void => {
    for (let next = open.shift(); next !== undefined; next = open.shift())
      for (const other of along.get(next) ?? [])
        if (passes.has(other) && !depths.has(other)) {
          depths.set(other, (depths.get(next) ?? 0) + 1);
          open.push(other);
        }
  };
  const roots = boxes.toSorted((a, b) => Number(isSource(b)) - Number(isSource(a)));
  for (const { id: root } of roots.filter(({ id }) => passes.has(id))) {
    if (depths.has(root)) continue;
    depths.set(root, 0);
    spread([root], lines);
    spread([...depths.keys()], beside);
  }
  for (const { id } of boxes)
    if (!depths.has(id))
      depths.set(id, 1 + Math.max(0, ...(beside.get(id) ?? []).map((other) => depths.get(other) ?? 0)));
  return depths;
}

function isSource({ kind }: Draft): boolean {
  return formOf(kind) === 'source' || kind === 'source';
}
