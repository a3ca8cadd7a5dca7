import { compile, initialConditions, installationSchema } from '../../src/installation/index.ts';
import type { Build } from '../../src/installation/index.ts';
import { verdicts, type Verdict } from '../../src/explain/index.ts';
import type { z } from 'zod';

type Parts = z.input<typeof installationSchema>['parts'];

/** One circuit as a designer draws it: a 230 V source behind an outside loop, a breaker, a cable, a machine in a metal case.
 *  Its joins are the least resistance there is. */
export function designed({
  family = 'iec60898-b',
  rating_A = 16,
  outside_ohm = 0,
  line = '2.5 mm² Cu',
  protective = '1.5 mm² Cu',
  length_m = 20,
  temperature_C = 20,
  emf_V = 230,
  electrode_ohm,
  breaker,
  residual_A,
}: {
  readonly family?: 'ul489' | 'iec60898-b' | 'iec60898-c' | 'iec60898-d';
  readonly rating_A?: number;
  readonly outside_ohm?: number;
  readonly line?: string;
  readonly protective?: string;
  readonly length_m?: number;
  readonly temperature_C?: number;
  readonly emf_V?: number;
  /** A TT supply: the case goes to an electrode of its own. */
  readonly electrode_ohm?: number;
  readonly breaker?: Parts[string];
  /** A residual device of this rating before the run. */
  readonly residual_A?: number;
} = {}): Build {
  const parts: Parts = {
    source: { kind: 'source', emf_V, resistance_ohm: outside_ohm },
    breaker: breaker ?? { kind: 'breaker', family, rating_A, resistance_ohm: 0 },
    run: { kind: 'cable', length_m, temperature_C, cores: { line, neutral: line, protective } },
    machine: { kind: 'appliance', power_W: 1000, voltage_V: emf_V },
    ...(residual_A === undefined ? {} : { rcd: { kind: 'residual-device', family: 'iec61008', residual_A } as const }),
    ...(electrode_ohm === undefined ? {} : { 'own rod': { kind: 'rod', resistance_ohm: electrode_ohm } }),
  };
  const joins: readonly (readonly [string, string])[] = [
    ['source.minus', 'earth'],
    ['source.plus', 'breaker.line'],
    ...(residual_A === undefined
      ? ([
          ['breaker.load', 'run.line.supply'],
          ['source.minus', 'run.neutral.supply'],
        ] as const)
      : ([
          ['breaker.load', 'rcd.line.supply'],
          ['rcd.line.load', 'run.line.supply'],
          ['source.minus', 'rcd.neutral.supply'],
          ['rcd.neutral.load', 'run.neutral.supply'],
        ] as const)),
    electrode_ohm === undefined ? ['source.minus', 'run.protective.supply'] : ['own rod', 'run.protective.supply'],
    ['run.line.load', 'machine.line'],
    ['run.neutral.load', 'machine.neutral'],
    ['run.protective.load', 'machine.case'],
  ];
  return compile(
    installationSchema.parse({
      place: 'The bench',
      region: family === 'ul489' ? 'north-america' : 'iec',
      parts,
      joins: joins.map(([a, b]) => ({ between: [a, b], resistance_ohm: 0 })),
    }),
  );
}

/** The one verdict of a kind at a part. @throws RangeError if there is none */
export function verdictOf(build: Build, kind: Verdict['kind'], part?: string): Verdict {
  const found = verdicts(build, initialConditions(build.installation)).find(
    (one) => one.kind === kind && (part === undefined || one.part === part),
  );
  if (found === undefined) throw new RangeError(`verdictOf: no ${kind} at ${part ?? 'any part'}`);
  return found;
}
