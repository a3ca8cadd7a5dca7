import { EARTH, type Build } from '../installation/index.ts';
import type { Timeline } from '../scenario/index.ts';
import type { Vocabulary } from './vocabulary.ts';
import type { WayKind } from './finding.ts';
import { label, lookUp, name } from './name.ts';
import { capital, list, say } from './say.ts';
import { partOf } from './route.ts';
import { divide, type Way } from './ways.ts';

/** One road home to the winding: the paths that share what distinguishes them, worded. */
export interface WayHome {
  /** stable across runs of one installation */
  readonly name: string;
  readonly kind: WayKind;
  /** part names in order, from the fault or the load to the winding */
  readonly via: readonly string[];
  /** r.m.s., the part in phase with the whole; never negative */
  readonly amperes: number;
  /** indexes into the network's branches that this way uses, in order of the largest path, then the others */
  readonly branches: readonly number[];
  /** true if it is metal from the fault or the load to the winding */
  readonly metal: boolean;
  /** what this way is called, e.g. "Third wire" */
  readonly text: string;
  /** stations in words: case, cord, outlet, third wire, panel, bonding jumper, service neutral, winding */
  readonly hops: readonly string[];
}

/** How one current divides on its way home; the ways' amperes sum to the total within 1e-9 of it. */
export interface Ledger {
  readonly of: 'fault' | 'load';
  readonly total_A: number;
  readonly ways: readonly WayHome[];
  /** current that goes in circles without coming home to a winding, cancelled before dividing */
  readonly circulating_A: number;
}

/** Where the current of one interval goes home, in amperes and words; null if next to none leaves the windings.
 *  @throws RangeError if the timeline has no such interval */
export function ledger(timeline: Timeline, interval: number, vocabulary: Vocabulary): Ledger | null {
  const moment = timeline.intervals[interval];
  if (moment === undefined)
    throw new RangeError(`ledger: interval ${interval} does not exist; there are ${timeline.intervals.length}`);
  const division = divide(timeline.build, moment);
  if (division === null) return null;
  return {
    of: division.of,
    total_A: division.total_A,
    circulating_A: division.circulating_A,
    ways: division.ways.map((way) => worded(timeline.build, way, vocabulary)),
  };
}

function worded(build: Build, way: Way, vocabulary: Vocabulary): WayHome {
  return {
    name: way.key,
    kind: way.kind,
    via: partsOf(way.stations),
    amperes: way.amperes,
    branches: way.branches,
    metal: way.metal,
    text: wayText(way, vocabulary),
    hops: hopsOf(build, way.stations, vocabulary),
  };
}

/** What a way is called. */
export function wayText(way: Pick<Way, 'kind' | 'by'>, vocabulary: Vocabulary): string {
  const [by = '', ...more] = way.by;
  switch (way.kind) {
    case 'protective':
      if (by === 'leak') return say('way.leak.protective', vocabulary, { name: name(more[0] ?? '', vocabulary) });
      return say('way.protective', vocabulary);
    case 'neutral':
      return by === 'link' ? say('way.link', vocabulary) : say('way.neutral', vocabulary);
    case 'soil':
      return say(more.includes('feet') ? 'way.feet' : 'way.soil', vocabulary, { name: name(by, vocabulary) });
    case 'pipe':
      return say(more.includes(EARTH) ? 'way.pipe.soil' : 'way.pipe', vocabulary, { Name: label(by, vocabulary) });
    case 'person': {
      const key = more.includes('feet') ? 'way.person.feet' : more.length > 1 ? 'way.person.hands' : 'way.person';
      return say(key, vocabulary, { name: name(by, vocabulary) });
    }
    case 'load':
      if (by === 'relief') return say('way.relief', vocabulary, { name: name(more[0] ?? '', vocabulary) });
      if (by !== 'phase' && by !== 'leg') return say('way.load', vocabulary);
      return say(by === 'phase' ? 'way.phases' : 'way.legs', vocabulary, {
        loads: list(more.map((part) => name(part, vocabulary))),
      });
    case 'other':
      if (by === 'straight') return say('way.straight', vocabulary);
      if (by === 'leak' || by === 'screen')
        return say(`way.${by}`, vocabulary, { name: name(more[0] ?? '', vocabulary) });
      if (way.by.length > 0) return capital(way.by.map((part) => name(part, vocabulary)).join(', '));
      return say('way.other', vocabulary);
    default:
      return way.kind satisfies never;
  }
}

function partsOf(stations: readonly string[]): readonly string[] {
  return [...new Set(stations.map((station) => partOf(station)))];
}

/** Stations in words; a thing passed twice is named once. */
export function hopsOf(build: Build, stations: readonly string[], vocabulary: Vocabulary): readonly string[] {
  return [...new Set(stations.map((terminal) => hopOf(build, terminal, vocabulary)))];
}

function hopOf(build: Build, terminal: string, vocabulary: Vocabulary): string {
  if (terminal === EARTH) return say('hop.soil', vocabulary);
  const part = partOf(terminal);
  const inner = terminal.slice(part.length + 1).replace(/\.(supply|load)$/, '');
  const kind = build.installation.parts[part]?.kind;
  return (
    lookUp(`hop.${part}.${inner}`, vocabulary) ??
    (kind === undefined ? undefined : lookUp(`hop.${kind}.${inner}`, vocabulary)) ??
    (build.supplies.length === 1 && build.supplies[0]?.part === part
      ? say('hop.winding', vocabulary)
      : name(part, vocabulary))
  );
}
