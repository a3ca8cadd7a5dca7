import type { Build } from '../../installation/index.ts';
import { partOf } from '../route.ts';
import type { Roads } from './roads.ts';
import { across_V, type Standing } from './standing.ts';

/** One terminal of a point. */
export interface End {
  readonly terminal: string;
  readonly node: number;
}

/** A place in an installation where a live conductor and metal or another conductor come together: a winding's terminals,
 *  a panel, an outlet, an appliance. */
export interface Point {
  readonly part: string;
  /** Part of the source that feeds it. */
  readonly source: string;
  /** What its lines stand at against the earthed point of their source, V: rounding aside the nominal voltage. */
  readonly nominal_V: number;
  readonly lines: readonly End[];
  readonly neutral?: End;
  /** The case, the protective terminal or the earth bar. */
  readonly metal?: End;
}

/** A terminal stands for a line from this share of the highest voltage of its source on. */
const LINE_SHARE = 0.3;
/** An end of a winding is its earthed point if it stands no higher than this share of the highest. */
const STAR_SHARE = 0.1;
/** Names of terminals that are metal somebody can touch, or lead to it. */
const METAL = /(^|\.)(case|protective|earth bar|metal|pe)(\.|$)/i;
const NEUTRAL = /(^|\.)(neutral|neutral bar|x2|minus|pen)(\.|$)/i;

/** Every point that is fed, in the order of the file. */
export function pointsOf(standing: Standing, roads: Roads): readonly Point[] {
  const { build } = standing;
  const conducting = conductors(build);
  const ends = new Map<string, End[]>();
  build.network.nodes.forEach((terminal, node) => {
    const part = partOf(terminal);
    if (node === 0 || conducting.has(part)) return;
    const list = ends.get(part);
    if (list === undefined) ends.set(part, [{ terminal, node }]);
    else list.push({ terminal, node });
  });
  const references = referencesOf(standing, roads);
  return [...ends].flatMap(([part, own]) => {
    const sources = own.flatMap(({ node }) => roads.source(node) ?? []);
    // A transformer stands on two supplies: what counts is the one it gives.
    const source = sources.includes(part) ? part : sources[0];
    const reference = source === undefined ? undefined : references.get(source);
    if (source === undefined || reference === undefined) return [];
    const metal = own.find(({ terminal }) => METAL.test(terminal.slice(part.length)));
    const live = own.filter((end) => end !== metal && roads.source(end.node) === source);
    const volts = ({ node }: End) => across_V(standing, node, reference.node);
    const lines = live.filter((end) => volts(end) > LINE_SHARE * reference.highest_V);
    const neutral = reference.earthed
      ? live.find((end) => !lines.includes(end))
      : live.find(({ terminal }) => NEUTRAL.test(terminal.slice(part.length)));
    const away = lines.filter((end) => end !== neutral);
    if (away.length === 0 || (metal === undefined && neutral === undefined && away.length < 2)) return [];
    return [
      {
        part,
        source,
        nominal_V: Math.max(...away.map(volts)),
        lines: away,
        ...(neutral === undefined ? {} : { neutral }),
        ...(metal === undefined ? {} : { metal }),
      },
    ];
  });
}

/** Parts that only lead current on, or that nobody would test. */
function conductors({ branches, installation }: Build): ReadonlySet<string> {
  const joins = new Set(installation.joins.map(({ between: [from, to] }) => `${from} – ${to}`));
  const leading = new Set(['line', 'neutral', 'protective', 'device', 'bond', 'electrode', 'pipe', 'floor', 'person']);
  return new Set(branches.flatMap(({ name, part, role }) => (leading.has(role) && !joins.has(name) ? [part] : [])));
}

interface Reference {
  readonly node: number;
  readonly highest_V: number;
  /** Whether one end of the windings is the earthed or the middle point. */
  readonly earthed: boolean;
}

/** What the lines of each source are measured against: the end of its windings that stands lowest above earth; earth itself
 *  where no end does. */
function referencesOf(standing: Standing, roads: Roads): ReadonlyMap<string, Reference> {
  const { build } = standing;
  const ends = new Map<string, Set<number>>();
  for (const winding of build.sources) {
    const branch = build.network.branches[winding];
    if (branch === undefined) continue;
    for (const node of [branch.from, branch.to]) {
      const source = roads.source(node) ?? build.branches[winding]?.part ?? '';
      ends.set(source, (ends.get(source) ?? new Set()).add(node));
    }
  }
  return new Map(
    [...ends].map(([source, nodes]) => {
      const stood = [...nodes]
        .map((node) => ({ node, volts: across_V(standing, node, 0) }))
        .toSorted((one, other) => one.volts - other.volts);
      const lowest = stood[0] ?? { node: 0, volts: 0 };
      const highest_V = Math.max(...stood.map(({ node }) => across_V(standing, node, lowest.node)));
      const earthed = lowest.volts <= STAR_SHARE * highest_V;
      return [
        source,
        earthed
          ? { node: lowest.node, highest_V, earthed }
          : { node: 0, highest_V: Math.max(...stood.map(({ volts }) => volts)), earthed },
      ] as const;
    }),
  );
}
