import {
  isAlias,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  visit,
  type Document,
  type Pair,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Span } from './documentBounds.ts';

/** A path in a document: names in maps, positions in lists. */
export type DocumentPath = readonly PropertyKey[];

/** Finds where the key or value at a path stands; the nearest that exists if there is none. What is said of a whole map is
 *  said at its name. */
export function placeFinder(document: Document): (path: DocumentPath, of: 'key' | 'value') => Span {
  const indexed = new WeakMap<YAMLMap, ReadonlyMap<string, Pair>>();
  const pairsOf = (map: YAMLMap): ReadonlyMap<string, Pair> => {
    const known = indexed.get(map) ?? new Map(map.items.map((pair) => [keyOf(pair), pair]));
    indexed.set(map, known);
    return known;
  };
  return (path, of) => {
    let node: unknown = document.contents;
    // What is missing from the whole file is said at its beginning.
    const start = spanOf(node)?.start ?? 0;
    let span: Span = { start, end: start + 1 };
    for (const [depth, step] of path.entries()) {
      const last = depth === path.length - 1;
      const parent: unknown = isAlias(node) ? node.resolve(document) : node;
      if (isMap(parent)) {
        const pair = pairsOf(parent).get(String(step));
        if (pair === undefined) return span;
        const atName = last && (of === 'key' || isMap(pair.value));
        span = (atName ? undefined : spanOf(pair.value)) ?? spanOf(pair.key) ?? span;
        // Of a value that is missing below, the name is the better place than the whole value.
        if (!last && isMap(pair.value)) span = spanOf(pair.key) ?? span;
        node = pair.value;
      } else if (isSeq(parent)) {
        node = parent.items[Number(step)];
        span = spanOf(node) ?? span;
      } else return span;
    }
    return span;
  };
}

/** A name that a map has twice: the path, where it stands again, and where it stood first. */
export interface Duplicate {
  readonly path: DocumentPath;
  readonly name: string;
  readonly span: Span;
  readonly first: Span;
}

/** Every name that is written twice in one map, in the order of the text. */
export function duplicates(document: Document): readonly Duplicate[] {
  const found: Duplicate[] = [];
  const pathOf = pathFinder();
  visit(document, {
    Map(_, map, ancestors) {
      const seen = new Map<string, Span>();
      for (const pair of map.items) {
        const span = spanOf(pair.key);
        if (span === undefined) continue;
        const name = keyOf(pair);
        const first = seen.get(name);
        if (first === undefined) seen.set(name, span);
        else found.push({ path: [...pathOf(ancestors, map), name], name, span, first });
      }
    },
  });
  return found;
}

/** Where the aliases stand that stand for nothing. */
export function danglingAliases(document: Document): readonly { readonly name: string; readonly span: Span }[] {
  const found: { name: string; span: Span }[] = [];
  visit(document, {
    Alias(_, alias) {
      const span = spanOf(alias);
      if (alias.resolve(document) === undefined && span !== undefined) found.push({ name: alias.source, span });
    },
  });
  return found;
}

function keyOf({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : String(key);
}

function spanOf(node: unknown): Span | undefined {
  const range = isNode(node) ? node.range : undefined;
  return range ? { start: range[0], end: Math.max(range[1], range[0] + 1) } : undefined;
}

/** Finds the path of a node by those that hold it; a list is counted through once. */
function pathFinder(): (ancestors: readonly unknown[], map: unknown) => readonly string[] {
  const counted = new WeakMap<YAMLSeq, ReadonlyMap<unknown, number>>();
  const indexIn = (list: YAMLSeq, item: unknown): number => {
    const known = counted.get(list) ?? new Map(list.items.map((one, index) => [one, index]));
    counted.set(list, known);
    return known.get(item) ?? 0;
  };
  return (ancestors, map) => {
    const chain = [...ancestors, map];
    return chain.flatMap((ancestor, depth) => {
      const next = chain[depth + 1];
      if (isPair(ancestor)) return [keyOf(ancestor)];
      return isSeq(ancestor) && next !== undefined ? [String(indexIn(ancestor, next))] : [];
    });
  };
}
