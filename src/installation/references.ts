import { conditionSchema } from './conditions.ts';
import { targetDiagnostics } from './conditionTargets.ts';
import type { Diagnostic } from './diagnostic.ts';
import { terminalFinder, terminalsOf } from './directory.ts';
import type { WrittenDocument } from './document.ts';
import type { DocumentPath } from './documentPlaces.ts';
import { joinSchema } from './installation.ts';
import { nearest } from './nearest.ts';
import { partKind, partKindNames, partSchema, sourceKinds, type Part } from './parts/index.ts';
import { pairKey, sameTerminal, type Say, type Survey } from './survey.ts';
import { EARTH, partOf, type TerminalName } from './terminal.ts';

const MOST_COMPARED = 3e5; // pairs of names; a file with more to guess at is answered without guesses

/** What a file says about things that are not there: terminals, joins, parts, sources, targets of conditions. */
export function referenceDiagnostics(document: WrittenDocument): readonly Diagnostic[] {
  const file = document.value;
  if (!isMap(file)) return [];
  const found: Diagnostic[] = [];
  const say: Say = (code, path, message, options) => {
    found.push(document.diagnostic(code, path, message, options));
  };
  let compared = 0;
  const rawParts = isMap(file.parts) ? file.parts : {};
  const rawConditions = isMap(file.conditions) ? file.conditions : {};

  const parts = new Map<string, Part>();
  const broken = new Set<string>();
  for (const [name, raw] of Object.entries(rawParts)) {
    const part = partSchema.safeParse(raw);
    if (part.success) parts.set(name, part.data);
    else broken.add(name);
  }
  const terminals = terminalsOf(parts);
  const at = terminalFinder(terminals);
  const used = new Set<number>();
  const joins = new Set<string>();
  const neighbours = new Map<number, number[]>();
  const survey: Survey = {
    region: file.region === 'iec' ? 'iec' : 'north-america',
    parts,
    names: [...parts.keys(), ...broken],
    broken,
    terminals,
    joins,
    neighbours,
    conductors: conductorNames(parts),
    say,
    guess(written, names) {
      compared += names.length;
      return compared > MOST_COMPARED ? undefined : nearest(written, names);
    },
    find(terminal, path) {
      const index = at(terminal);
      if (index === undefined) sayUnknown(terminal, path, survey);
      else used.add(index);
      return index;
    },
  };

  checkNames(rawParts, rawConditions, say);
  if (isMap(file.parts)) checkSource(rawParts, say);
  for (const [name, part] of parts) checkTouches(name, part, survey);
  checkFloors(survey);
  if (Array.isArray(file.joins))
    file.joins.forEach((raw: unknown, index) => checkJoin(raw, index, survey, joins, neighbours));
  for (const [name, raw] of Object.entries(rawConditions)) {
    const condition = conditionSchema.safeParse(raw);
    if (condition.success) targetDiagnostics(name, condition.data, survey);
  }
  checkLooseEnds(survey, used);
  return found;
}

function sayUnknown(
  terminal: TerminalName,
  path: DocumentPath,
  { parts, names, broken, terminals, say, guess }: Survey,
): void {
  const name = partOf(terminal);
  if (broken.has(name)) return;
  if (parts.has(name)) {
    const own = terminals.filter((other) => partOf(other) === name && other !== EARTH);
    const meant = terminalMeant(terminal, name, own);
    const has = own.length === 0 ? 'none' : own.join(', ');
    const message =
      terminal === name
        ? `${name} has several terminals: ${has}`
        : `${name} has no terminal "${terminal.slice(name.length + 1, 80)}"; it has ${has}`;
    return say('dangling-terminal', path, own.length === 0 ? `${name} has no terminals of its own` : message, {
      instead: meant ?? (own.length === 0 ? 'a terminal of another part' : `one of ${own.join(', ')}`),
    });
  }
  const meantPart = guess(name, names);
  const meant = meantPart === undefined ? guess(terminal, terminals) : meantPart + terminal.slice(name.length);
  say('unknown-name', path, `there is no part "${name.slice(0, 60)}"`, {
    instead: meant ?? 'a terminal of a part, such as panel.neutral bar',
  });
}

// Any two names of one or two letters are near: obeying such a guess could short a source.
function terminalMeant(written: TerminalName, part: string, own: readonly TerminalName[]): TerminalName | undefined {
  if (own.length === 1) return own[0];
  const inner = written.slice(part.length + 1);
  const names = own.map((terminal) => terminal.slice(part.length + 1));
  const meant =
    inner.length < 3 ? names.find((name) => name.toLowerCase() === inner.toLowerCase()) : nearest(inner, names);
  return meant === undefined ? undefined : `${part}.${meant}`;
}

function checkNames(
  parts: Readonly<Record<string, unknown>>,
  conditions: Readonly<Record<string, unknown>>,
  say: Say,
): void {
  if (Object.hasOwn(parts, EARTH))
    say('bad-name', ['parts', EARTH], `"${EARTH}" is remote earth itself`, { of: 'key', instead: 'another name' });
  // A record leaves this one name out without a word.
  for (const [map, names] of Object.entries({ parts, conditions }))
    if (Object.hasOwn(names, '__proto__'))
      say('bad-name', [map, '__proto__'], '"__proto__" cannot be a name', {
        of: 'key',
        instead: 'a name in plain words',
      });
  for (const name of Object.keys(conditions))
    if (Object.hasOwn(parts, name))
      say('duplicate-name', ['conditions', name], `two things are called "${name}": a part and a condition`, {
        of: 'key',
        instead: 'another name',
      });
}

function checkSource(parts: Readonly<Record<string, unknown>>, say: Say): void {
  const kinds = Object.values(parts).flatMap((raw) => (isMap(raw) && typeof raw.kind === 'string' ? [raw.kind] : []));
  // A misspelt source is already reported as an unknown kind.
  const meant = kinds.map((kind) => nearest(kind, partKindNames) ?? kind);
  if (meant.some((kind) => sourceKinds.has(kind))) return;
  say('no-source', ['parts'], 'nothing here drives a current', {
    of: 'key',
    instead: 'supply: { kind: source, emf_V: 120 }',
  });
}

function checkTouches(name: string, part: Part, survey: Survey): void {
  const touched = partKind(part.kind).touches?.(part) ?? [];
  const found = touched.map(({ key, terminal }) => survey.find(terminal, ['parts', name, ...key]));
  if (part.kind !== 'person') sameTerminal(found[0], found[1], ['parts', name, 'between'], survey.say);
}

function checkFloors(survey: Survey): void {
  const stoodOn = new Map<string, string>();
  for (const [name, part] of survey.parts) {
    if (part.kind !== 'person' || part.feet === undefined) continue;
    const floor = partOf(part.feet);
    const path = ['parts', name, 'feet'];
    const kind = survey.parts.get(floor)?.kind;
    if (kind !== undefined && kind !== 'floor' && kind !== 'soil')
      survey.say('wrong-target', path, `${floor} is no floor`, { instead: 'feet: the name of a floor' });
    const first = stoodOn.get(floor);
    if (first === undefined) stoodOn.set(floor, name);
    else if (kind === 'floor')
      survey.say('wrong-target', path, `${first} already stands on ${floor}`, { instead: 'a floor of their own' });
  }
}

function checkJoin(
  raw: unknown,
  index: number,
  survey: Survey,
  joins: Set<string>,
  neighbours: Map<number, number[]>,
): void {
  const join = joinSchema.safeParse(raw);
  if (!join.success) return;
  const path: DocumentPath = Array.isArray(raw) ? ['joins', index] : ['joins', index, 'between'];
  const [from, to] = join.data.between;
  const [a, b] = [survey.find(from, [...path, 0]), survey.find(to, [...path, 1])];
  if (sameTerminal(a, b, path, survey.say) || a === undefined || b === undefined) return;
  const key = pairKey(a, b);
  if (joins.has(key))
    survey.say('joined-twice', path, `${from} and ${to} are joined already`, {
      instead: 'nothing: leave this join out',
    });
  else {
    joins.add(key);
    neighbours.set(a, [...(neighbours.get(a) ?? []), b]);
    neighbours.set(b, [...(neighbours.get(b) ?? []), a]);
  }
}

function checkLooseEnds({ parts, terminals, say }: Survey, used: ReadonlySet<number>): void {
  const index = new Map(terminals.map((terminal, at) => [terminal, at]));
  for (const [name, part] of parts)
    for (const end of partKind(part.kind).mustJoin?.(part) ?? []) {
      const terminal = `${name}.${end}`;
      if (!used.has(index.get(terminal) ?? -1))
        say('dangling-terminal', ['parts', name], `nothing is joined to ${terminal}`, {
          of: 'key',
          instead: `- [${terminal}, the terminal it belongs on]`,
        });
    }
}

// Conductors have the same names whatever the frequency; ohms are not looked at.
const ANYWHERE = { region: 'iec', frequency_Hz: 50 } as const;

function conductorNames(parts: ReadonlyMap<string, Part>): ReadonlySet<string> {
  const branches = [...parts].flatMap(([name, part]) => partKind(part.kind).plan(name, part, ANYWHERE).branches);
  const inside: ReadonlySet<string> = new Set(['insulation', 'winding', 'person']);
  return new Set(branches.flatMap(({ name, role }) => (inside.has(role) ? [] : [name])));
}

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
