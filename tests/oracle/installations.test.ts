import { beforeAll, expect, test } from 'vitest';
import { balance } from '../../src/electrics/index.ts';
import { installationJsonSchema } from '../../src/installation/index.ts';
import { drawn, installationsByNgspice, wrongByMathjs } from './installations.ts';
import type { Solved } from './solvedInstallation.ts';

/** More than a thousand, though a few are refused. Others without end: `npm run soak -- --only "installations by ngspice"`. */
const COUNT = 1040;

let all: readonly Solved[] = [];
beforeAll(() => {
  all = drawn(1, COUNT);
}, 120_000);

/** How often each of these was drawn. */
function tally(words: readonly string[]): ReadonlyMap<string, number> {
  const count = new Map<string, number>();
  for (const word of words) count.set(word, (count.get(word) ?? 0) + 1);
  return count;
}

test('there are a thousand, on every supply, earthed in every way, of every kind of part there is', () => {
  expect(all.length).toBeGreaterThanOrEqual(1000);
  const told = tally(all.flatMap((one) => one.told));
  for (const [supply, least] of [
    ...['split phase', '208Y/120', '480Y/277', '240 V high leg', '480 V delta', '400Y/230'].map(
      (one) => [one, 50] as const,
    ),
    ...['generator', 'inverter', 'plain source'].map((one) => [one, 50] as const),
    ...['TN-S', 'TN-C-S', 'TT', 'IT', 'high resistance', 'corner', 'nothing'].map((one) => [one, 50] as const),
    ...['two rods in one soil', 'doubled bond', 'direct current', 'two in parallel', 'two people'].map(
      (one) => [one, 10] as const,
    ),
    ...['single-phase', 'centre-tapped', 'delta-wye'].map((one) => [`derived: ${one}`, 20] as const),
    ...['ideal transformer', 'coupled windings'].map((one) => [`derived: ${one}`, 20] as const),
    ...['switched', 'solid'].map((one) => [`transfer: ${one} neutral`, 20] as const),
  ])
    expect(told.get(supply) ?? 0, supply).toBeGreaterThanOrEqual(least);
  const kinds = tally(all.flatMap(({ build }) => Object.values(build.installation.parts).map(({ kind }) => kind)));
  for (const kind of kindsOfPart()) expect(kinds.get(kind) ?? 0, kind).toBeGreaterThanOrEqual(5);
  const folded = all.filter(({ build, questions: [first] }) =>
    build.limits.some(
      ({ branch }) =>
        Math.abs(
          Math.hypot(first!.ours.amperes.re[branch]!, first!.ours.amperes.im[branch]!) / limitOf(build, branch) - 1,
        ) < 1e-6,
    ),
  );
  expect(folded.length, 'inverters at their limit').toBeGreaterThanOrEqual(10);
  expect(all.flatMap(({ questions }) => questions).length, 'with their harmonics').toBeGreaterThan(1200);
});

test('ngspice finds the same to a millionth in every branch that carries more than 1 µA', { timeout: 120_000 }, () => {
  const { compared, rounded, wrong } = installationsByNgspice(all);
  expect(wrong).toEqual([]);
  expect(compared).toBeGreaterThan(40_000);
  expect(rounded).toBeLessThan(compared / 1000);
});

test('LU by mathjs finds the same volts and currents to a thousand-millionth', { timeout: 120_000 }, () => {
  expect(all.flatMap(wrongByMathjs)).toEqual([]);
});

test('every one obeys Kirchhoff, Ohm and the conservation of power', () => {
  for (const { questions, seed } of all)
    for (const { network, values, ours } of questions) {
      const { kirchhoff, ohm, power } = balance(network, values, ours);
      expect(Math.max(kirchhoff, ohm, power), `installation ${seed}`).toBeLessThanOrEqual(1e-12);
    }
});

function limitOf(build: Solved['build'], branch: number): number {
  return build.limits.find((one) => one.branch === branch)?.limit_A ?? NaN;
}

/** Every kind of part that a file may hold, as its schema says. */
function kindsOfPart(): readonly string[] {
  const schema = JSON.stringify(installationJsonSchema());
  const { properties } = JSON.parse(schema) as {
    properties: { parts: { additionalProperties: { oneOf: readonly { properties: { kind: { const: string } } }[] } } };
  };
  return properties.parts.additionalProperties.oneOf.map((part) => part.properties.kind.const);
}
