import type { Role } from './role.ts';
import type { Part } from './parts/index.ts';
import { partOf, type TerminalName } from './terminal.ts';

const EARTHED: ReadonlySet<string> = new Set<Part['kind']>([
  'rod',
  'rods',
  'strip',
  'ring',
  'plate',
  'grid',
  'soil',
  'pipe',
  'fitting',
]);
const PROTECTIVE = /\.(protective|armour|conduit|raceway|earth bar|case|frame)(\.|$)/;
const SCREEN = /\.screen(\.|$)/;
const NEUTRAL = /\.(neutral|neutral bar|PEN|x2)(\.|$)/;

/** What a join is for, told from what it joins: an electrode or metal thing makes it a bond, a protective conductor, earth bar
 *  or case a protective joint, a neutral a neutral one; everything else is a line. */
export function joinRole(ends: readonly TerminalName[], kindOf: (part: string) => Part['kind'] | undefined): Role {
  const kinds = ends.map((end) => kindOf(partOf(end)));
  if (kinds.some((kind) => kind !== undefined && EARTHED.has(kind))) return 'bond';
  if (ends.some((end) => SCREEN.test(end))) return 'bond';
  if (ends.some((end) => PROTECTIVE.test(end))) return 'protective';
  return ends.some((end) => NEUTRAL.test(end)) ? 'neutral' : 'line';
}
