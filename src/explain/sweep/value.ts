import type { Installation } from '../../installation/index.ts';

/** A number in an installation, named as its path in the file. */
export interface NamedValue {
  /** `mixer run.length_m`, `own rod.resistance_ohm`, `line touches the case.resistance_ohm.1 ohm` */
  readonly path: string;
  readonly value: number;
}

type Tree = { readonly [key: string]: unknown };

/** Keys whose numbers may be below zero. */
const SIGNED = /(_deg|_C|reactance_ohm)$/;

/** Numbers that are a choice rather than a quantity. */
const CHOICES = /\.(poles|percentile|phases)$/;

/** Every number written about a part or a condition, in the order of the file. */
export function numbersOf(installation: Installation): readonly NamedValue[] {
  return [installation.parts, installation.conditions]
    .flatMap((trees) => Object.entries(trees).flatMap(([name, made]) => numbersIn(name, made)))
    .filter(({ path }) => !CHOICES.test(path));
}

/** The same installation with one number changed.
 *  @param path as in the file: `mixer run.length_m`
 *  @throws RangeError naming a path that leads to no number, or a value that cannot be */
export function withValue(installation: Installation, path: string, value: number): Installation {
  const keys = path.split('.');
  const [name = ''] = keys;
  if (!Number.isFinite(value) || (value < 0 && !SIGNED.test(path)))
    throw new RangeError(`withValue: ${path} cannot be ${value}; write a number of zero or more`);
  const trees = Object.hasOwn(installation.parts, name) ? 'parts' : 'conditions';
  const changed = CHOICES.test(path) ? undefined : changedIn(installation[trees], keys, value);
  if (changed === undefined)
    throw new RangeError(`withValue: "${path}" leads to no number; write one such as ${exampleOf(installation)}`);
  // The shape is that of the tree it was made from: one number stands for another.
  return { ...installation, [trees]: changed };
}

function exampleOf(installation: Installation): string {
  return numbersOf(installation)[0]?.path ?? 'part.key';
}

function numbersIn(path: string, value: unknown): readonly NamedValue[] {
  if (typeof value === 'number') return [{ path, value }];
  if (!isTree(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(`${path}.${key}`, inner));
}

/** The tree with the number at these keys changed; undefined if there is none. */
function changedIn(tree: unknown, keys: readonly string[], value: number): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return typeof tree === 'number' ? value : undefined;
  if (!isTree(tree) || !Object.hasOwn(tree, key)) return undefined;
  const inner = changedIn(tree[key], rest, value);
  return inner === undefined ? undefined : { ...tree, [key]: inner };
}

function isTree(value: unknown): value is Tree {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
