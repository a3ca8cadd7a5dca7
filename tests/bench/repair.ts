/** The smallest repair, over all pairs of twenty. */
import { readFileSync } from 'node:fs';
import { smallestRepair } from '../../src/explain/index.ts';
import { compile, initialConditions, installationSchema } from '../../src/installation/index.ts';
import { median, type Row } from './row.ts';
import { parse } from 'yaml';

const FILE = 'lessons/places/bakery.yaml';
const ROUNDS = 15;

/** The bakery with joints in thirteen more places that can be loose, and everything at once the matter with it: no pair of
 *  repairs is enough, so all are judged; and the same with one break, where every pair is judged that could be smaller. */
export async function repair(): Promise<readonly Row[]> {
  const written = parse(readFileSync(FILE, 'utf8')) as {
    joins: [string, string][];
    conditions: Record<string, unknown>;
  };
  const loose = written.joins
    .filter(([from]) => /^(mixer|oven|lamp|cord|outlet)/.test(from))
    .slice(0, 13)
    .map(
      ([from, to], index) => [`loose ${index}`, { kind: 'loose', between: [from, to], resistance_ohm: 0.4 }] as const,
    );
  const build = compile(
    installationSchema.parse({ ...written, conditions: { ...written.conditions, ...Object.fromEntries(loose) } }),
  );
  const initial = initialConditions(build.installation);
  const departing = Object.entries(build.installation.conditions).filter(
    ([, { kind, group }]) =>
      (group === 'path' || group === 'device') && kind !== 'fitted' && kind !== 'swap' && kind !== 'jammed',
  );
  const conditions = {
    ...initial,
    ...Object.fromEntries(departing.map(([name]) => [name, 'yes'])),
    'line touches the case': 'solid',
    'baker touches': 'the case',
    'breaker oversized': 'no',
  };
  const given = { build, conditions };
  let tried = 0;
  let offered = 0;
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    const found = smallestRepair(given, { mostAtOnce: 2 });
    tried = found.tried;
    offered = found.offered.length;
    return performance.now() - start;
  });
  return [
    {
      name: `smallest repair, all pairs of ${offered}`,
      value: median(times.slice(ROUNDS / 3)),
      unit: 'ms',
      budget: 50,
      bound: 'at most',
      peer: `${tried} sets judged in the bakery, a person touching`,
    },
  ];
}
